import 'server-only';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { LayoutDraft } from '#core/readings/file/layout';
import { findSite } from '#data/sites';
import { layoutsAt } from '#data/readings/file-layouts';
import type { Result } from '#core/result';
import { takeInRequest } from '#shape/readings/file-requests';
import type { Refusal } from '../gate/refusal';
import { faultWords, refusalWords } from '../gate/refusal-words';
import { faultOf } from '../gate/use-case';
import { LOCAL_PERSON } from '../gate/who';
import { lookAtFile } from '../readings/file/look-at-file';
import { takeInFile } from '../readings/file/take-in-file';
import { asDraft } from '../readings/file/layout-fits';
import { printLook } from './print-look';
import { printTakenIn } from './print-taken-in';
import { fail } from './said';
import { cannot, withDatabase } from './with-database';
import { wordsGiven } from './words-given';

const USAGE = `npm run -s take-in -- FILE --site KEY --layout NAME [--says LAYOUT.json]
npm run -s take-in -- FILE --site KEY --look [--layout NAME] [--says LAYOUT.json] [--json]`;

const { values, positionals } = wordsGiven(
  {
    allowPositionals: true,
    options: {
      site: { type: 'string' },
      layout: { type: 'string' },
      says: { type: 'string' },
      look: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
    },
  },
  USAGE,
);
const [path] = positionals;
const { site, layout, says, look, json } = values;
if (path === undefined || positionals.length > 1 || site === undefined)
  fail(`Give the file of one logger and the site: ${USAGE}`);
if (!look && layout === undefined) fail(`Give the name of the layout, or only look: ${USAGE}`);

const file = { name: basename(path), bytes: new Uint8Array(load(path)) };
const said = says === undefined ? undefined : load(says).toString('utf8');
void withDatabase(async () => await (look ? lookOnly(site) : takeIn(site, layout ?? '')));

async function lookOnly(key: string): Promise<void> {
  const draft = await draftGiven(key);
  const given = { site: key, file, ...(draft ? { draft } : {}) };
  const as = draft ? { encoding: draft.encoding, delimiter: draft.delimiter } : {};
  answer(await lookAtFile(LOCAL_PERSON, { ...given, ...as }), (seen) => printLook(seen, json));
}

async function takeIn(key: string, name: string): Promise<void> {
  const draft = await draftGiven(key);
  if (!draft) return cannot(`No layout is called ${name}: look at the file, and say with --says how it is laid out.`);
  answer(await takeInFile(LOCAL_PERSON, { site: key, file, draft, name }), printTakenIn);
}

/** What is said of the file: by a file of its own, else by a layout that is remembered. */
async function draftGiven(key: string): Promise<LayoutDraft | undefined> {
  if (said !== undefined) {
    const read = takeInRequest.shape.draft.safeParse(said);
    if (read.success) return read.data;
    return fail(read.error.issues.map((issue) => `${says}: ${faultWords(faultOf(issue))}`).join('\n'));
  }
  const entry = await findSite(key);
  const known = entry ? await layoutsAt(entry.id) : [];
  const found = known.find(({ name }) => name === layout);
  return found && asDraft(found.layout);
}

function load(from: string): Buffer {
  try {
    return readFileSync(from);
  } catch {
    return fail(`${from} cannot be read`);
  }
}

function answer<T>(result: Result<T, Refusal>, words: (value: T) => string): void {
  if (result.ok) process.stdout.write(words(result.value));
  else if (result.reason.why === 'invalid') cannot(result.reason.faults.map(faultWords).join('\n'));
  else cannot(refusalWords(result.reason));
}
