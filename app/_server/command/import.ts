import 'server-only';
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Result } from '#core/result';
import { importFacility } from '#server/facility/import-facility';
import { previewImport } from '#server/facility/preview-import';
import type { Fault, Refusal } from '#server/gate/refusal';
import { refusalWords } from '#server/gate/refusal-words';
import { LOCAL_PERSON } from '#server/gate/who';
import { printDifference } from './print-difference';
import { counted, fail, printErrors } from './said';
import { cannot, withDatabase } from './with-database';

const USAGE = 'npm run -s import -- FILE [--dry-run]';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { 'dry-run': { type: 'boolean', default: false } },
});
const [file] = positionals;
if (file === undefined || positionals.length > 1) fail(`Give one facility file: ${USAGE}`);

const text = load(file);
const isDry = values['dry-run'];
void withDatabase(async () => {
  if (isDry) answer(file, await previewImport(LOCAL_PERSON, { text }), printDifference);
  else
    answer(file, await importFacility(LOCAL_PERSON, { text }), ({ site, isNew, systems, changes }) => {
      if (isNew) return `${site.name} (${site.key}) is stored: ${counted(systems, 'system')}.\n`;
      return changes === 0
        ? `${site.name} (${site.key}) was stored as the file says already.\n`
        : `${site.name} (${site.key}) is changed: ${counted(changes, 'difference')}.\n`;
    });
});

function load(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return fail(`${path} cannot be read`);
  }
}

function answer<T>(path: string, result: Result<T, Refusal>, words: (value: T) => string): void {
  if (result.ok) process.stdout.write(words(result.value));
  else if (result.reason.why === 'invalid') printErrors(path, result.reason.faults.map(placed), 'imported');
  else cannot(refusalWords(result.reason));
}

function placed({ line = 1, column = 1, ...fault }: Fault) {
  return { ...fault, line, column };
}
