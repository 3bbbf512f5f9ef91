// @ts-check
// Writes the list of failure modes: every file of `app/_core/faults/modes`, by name. `npm run list-faults`.
import { readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const FAULTS = join(dirname(fileURLToPath(import.meta.url)), '../../app/_core/faults');
/** The list itself. */
const LIST = join(FAULTS, 'mode-list.ts');
const WIDTH = 110;

/** Names of the files that hold a mode. @returns {string[]} */
export function modeNames() {
  return readdirSync(join(FAULTS, 'modes'))
    .filter((name) => name.endsWith('.ts'))
    .map((name) => name.slice(0, -3))
    .sort();
}

/**
 * The list as it must be written.
 * @param {string[]} names
 */
export function listOf(names) {
  const called = (/** @type {string} */ name) => name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());
  const imports = names.map((name) => `import { fault as ${called(name)} } from './modes/${name}';`);
  const lines = [''];
  for (const name of names) {
    const last = lines.length - 1;
    if (`${lines[last]} ${called(name)},`.length > WIDTH) lines.push(`${called(name)},`);
    else lines[last] = `${lines[last]} ${called(name)},`.trimStart();
  }
  return `// Written by \`npm run list-faults\`: every file of the folder \`modes\`. Do not edit.
import type { Mode } from './fault';
${imports.join('\n')}

/** Every failure mode, by the name of its file. */
export const MODES: readonly Mode[] = [
${lines.map((line) => `  ${line}`).join('\n')}
];
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(LIST, listOf(modeNames()));
