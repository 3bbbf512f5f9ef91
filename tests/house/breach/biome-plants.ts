import { type Plant, plant } from './plant';

const GLOBAL = 'lint/style/noRestrictedGlobals';
const IMPORT = 'lint/style/noRestrictedImports';
const PROPERTY = 'lint/nursery/noJsRestrictedProperties';
const CLOCK = 'plugin';

const core = (name: string, expression: string, rule = GLOBAL): Plant =>
  plant(rule, `app/_core/breach/${name}.ts`, `export const value = () => ${expression};`);

const imports = (file: string, from: string): Plant => plant(IMPORT, file, `export { value } from '${from}';`);

/** The core has no clock, no chance, no machine and no browser. */
const pure = [
  core('date', 'new Date(0)'),
  core('clock', 'Date.now()'),
  core('fetch', "fetch('/')"),
  core('process', 'process.version'),
  core('console', "console.log('wet')"),
  core('timer', 'setTimeout(String, 1)'),
  core('interval', 'setInterval(String, 1)'),
  core('performance', 'performance.now()'),
  core('crypto', 'crypto.randomUUID()'),
  core('global', 'globalThis'),
  core('window', 'window.innerWidth'),
  core('chance', 'Math.random()', PROPERTY),
];

/** Doors that are shut to a room, told at once in the editor; the cruiser says the same by resolved path. */
const doors = [
  imports('app/_core/breach/door.ts', '#data/systems'),
  imports('app/_core/breach/node.ts', 'node:fs'),
  imports('app/_core/time/breach-zod.ts', 'zod'),
  imports('app/_shape/breach-door.ts', '#server/clock'),
  imports('app/_data/breach-door.ts', '#server/clock'),
  imports('app/_server/breach-door.ts', '#ui/frame'),
  imports('app/_ui/breach-door.ts', '#shape/system'),
  imports('app/breach-door.ts', '#data/systems'),
  imports('seed/breach-door.ts', '#data/systems'),
  imports('e2e/breach-door.ts', '#core/time/day'),
];

/** The clock, the environment and the console each have one reader. */
const readers = [
  plant(CLOCK, 'app/_server/breach-clock.ts', 'export const value = () => Date.now();'),
  plant(CLOCK, 'app/breach-clock.ts', 'export const value = () => new Date().toISOString();'),
  plant(CLOCK, 'seed/breach-clock.ts', 'export const value = new Date();'),
  plant(PROPERTY, 'seed/breach-chance.ts', 'export const value = Math.random();'),
  plant(PROPERTY, 'tests/core/breach-chance.ts', 'export const value = Math.random();'),
  plant('lint/style/noProcessEnv', 'app/_data/breach-env.ts', 'export const value = process.env.DATABASE_URL;'),
  plant('lint/suspicious/noConsole', 'app/_server/breach-console.ts', "console.error('wet');"),
  plant('lint/suspicious/noConsole', 'app/_ui/breach-console.tsx', "console.log('wet');"),
];

const habits = [
  plant('lint/suspicious/noExplicitAny', 'app/_shape/breach-any.ts', 'export const value: any = 1;'),
  plant('lint/suspicious/noExplicitAny', 'tests/core/breach-any.ts', 'export const value = (given: any) => given;'),
  plant(
    'lint/style/noNonNullAssertion',
    'app/_core/breach/bang.ts',
    'export const value = (all: number[]) => all[0]!;',
  ),
  plant('lint/correctness/noUnusedImports', 'app/_core/breach/idle.ts', "import { DAY_S } from '../time/day';"),
  plant('lint/performance/noBarrelFile', 'app/_core/breach/barrel.ts', "export { DAY_S } from '../time/day';"),
  plant('lint/style/useFilenamingConvention', 'app/_core/breach/returnPump.ts', 'export const value = 1;'),
  plant('format', 'app/_core/breach/untidy.ts', 'export  const value = "1"'),
  plant('format', 'app/_ui/breach.css', 'a{color:red}'),
];

const screens = [
  plant('lint/a11y/useAltText', 'app/_ui/breach-alt.tsx', 'export const Value = () => <img src="/tank.svg" />;'),
  plant('lint/a11y/useButtonType', 'app/_ui/breach-button.tsx', 'export const Value = () => <button>Go</button>;'),
  plant(
    'lint/a11y/useKeyWithClickEvents',
    'app/breach-click.tsx',
    'export const Value = () => <div onClick={() => undefined}>Go</div>;',
  ),
];

const tests = [
  plant(
    'lint/suspicious/noSkippedTests',
    'tests/core/breach-skipped.test.ts',
    "import { test } from 'vitest';",
    "test.skip('holds', () => {});",
  ),
  plant(
    'lint/suspicious/noFocusedTests',
    'tests/core/breach-focused.test.ts',
    "import { test } from 'vitest';",
    "test.only('holds', () => {});",
  ),
  plant(
    'lint/suspicious/noPlaywrightWaitForTimeout',
    'e2e/breach-sleep.spec.ts',
    "import { test } from '@playwright/test';",
    "test('waits', ({ page }) => page.waitForTimeout(1000));",
  ),
];

/** Every breach that Biome must catch. */
export const BIOME_PLANTS: Plant[] = [...pure, ...doors, ...readers, ...habits, ...screens, ...tests];
