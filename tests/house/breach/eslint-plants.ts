import { type Plant, plant } from './plant';

const FLOATING = '@typescript-eslint/no-floating-promises';
const MISUSED = '@typescript-eslint/no-misused-promises';
const SWITCH = '@typescript-eslint/switch-exhaustiveness-check';

const EQUIPMENT = "type Kind = 'heater' | 'chiller' | 'skimmer';";

/** Every breach that typescript-eslint must catch. */
export const ESLINT_PLANTS: Plant[] = [
  plant(
    FLOATING,
    'app/_server/breach/floating.ts',
    "import { rm } from 'node:fs/promises';",
    "export const value = () => { rm('nothing'); };",
  ),
  plant(
    FLOATING,
    'tests/core/breach-floating.ts',
    'const later = async () => 1;',
    'export const value = () => { later(); };',
  ),
  plant(
    FLOATING,
    'app/_start/breach-floating.mjs',
    "import { rm } from 'node:fs/promises';",
    "export const value = () => { rm('nothing'); };",
  ),
  plant(
    MISUSED,
    'app/_server/breach/misused.ts',
    'const later = async () => true;',
    "export const value = () => (later() ? 'yes' : 'no');",
  ),
  plant(
    MISUSED,
    'seed/breach-misused.ts',
    'export const value = (all: number[]) => all.forEach(async (one) => { await Promise.resolve(one); });',
  ),
  plant(
    SWITCH,
    'app/_core/breach/missing-case.ts',
    EQUIPMENT,
    'export function value(kind: Kind): number {',
    "  switch (kind) { case 'heater': return 1; case 'chiller': return 2; }",
    '  return 3;',
    '}',
  ),
  plant(
    SWITCH,
    'app/_core/breach/hidden-case.ts',
    EQUIPMENT,
    'export function value(kind: Kind): number {',
    "  switch (kind) { case 'heater': return 1; default: return 2; }",
    '}',
  ),
  plant(
    FLOATING,
    'app/_server/breach/silenced.ts',
    `/* ${'eslint'}-disable */`,
    'const later = async () => 1;',
    'export const value = () => { later(); };',
  ),
];
