import { type Plant, plant, prop } from './plant';
import type { Complaint } from './report';

const core = (name: string, rule: string, expression: string): Plant =>
  plant(rule, `app/_core/breach/types-${name}.ts`, `export const value = () => ${expression};`);

/** What must not even compile in the core. The numbers are those of the compiler for a name it does not know. */
export const CORE_TYPE_PLANTS: Plant[] = [
  core('fetch', 'TS2304', "fetch('/')"),
  core('timer', 'TS2304', 'setTimeout(String, 1)'),
  core('crypto', 'TS2304', 'crypto.randomUUID()'),
  core('process', 'TS2591', 'process.version'),
  core('console', 'TS2584', "console.log('wet')"),
  core('document', 'TS2584', 'document.title'),
];

/** What nobody uses: a file, an export. */
export const KNIP_PLANTS: Plant[] = [
  plant('files', 'app/_core/breach/unused-file.ts', 'export const value = 1;'),
  plant(
    'exports',
    'app/_core/breach/half-used.ts',
    'export const used = 1;',
    'export const unused = 2;',
    'export type Unused = 3;',
  ),
];

export const KNIP_PROPS = [
  prop(
    'tests/core/half-used.test.ts',
    "import { used } from '#core/breach/half-used';",
    "import { expect, test } from 'vitest';",
    '',
    "test('one of two is used', () => expect(used).toBe(1));",
  ),
];

/** A package claimed in package.json that no file imports. */
export const IDLE_PACKAGES = { 'd3-array': '3.2.5' };

/** What must be said of it, and of the type nobody uses beside an export nobody uses. */
export const KNIP_ALSO: Complaint[] = [
  { rule: 'dependencies', file: 'package.json' },
  { rule: 'types', file: 'app/_core/breach/half-used.ts' },
];
