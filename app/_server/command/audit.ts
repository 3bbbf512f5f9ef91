import 'server-only';
import { appendFileSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { refusalWords } from '#server/gate/refusal-words';
import { pass } from '#server/gate/use-case';
import { LOCAL_PERSON } from '#server/gate/who';
import { type Audit, auditRecords, auditRecordsShape } from '#server/record/audit-records';
import { type Anchor, readAnchors, writeAnchor } from '#shape/record/anchor';
import { auditWords, isWhole } from './print-audit';
import { counted, fail } from './said';
import { cannot, withDatabase } from './with-database';

const USAGE = 'npm run -s audit [-- --against FILE] [--anchor-to FILE]';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { against: { type: 'string' }, 'anchor-to': { type: 'string' } },
});
if (positionals.length > 0) fail(`"${positionals[0]}" is not understood: ${USAGE}`);

const anchors = values.against === undefined ? [] : load(values.against);
const { 'anchor-to': anchorTo } = values;

void withDatabase(async () => {
  const audited = await pass(auditRecordsShape, auditRecords, LOCAL_PERSON, { anchors });
  if (!audited.ok) return cannot(refusalWords(audited.reason));
  process.stdout.write(auditWords(audited.value, anchors.length));
  if (!isWhole(audited.value)) process.exitCode = 1;
  // What is broken gets no anchor: it would vouch for it.
  else if (anchorTo !== undefined) keep(anchorTo, audited.value);
});

function load(path: string): Anchor[] {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return fail(`${path} cannot be read`);
  }
  const read = readAnchors(text);
  for (const { line, message } of read.faults) process.stderr.write(`${path}:${line}: ${message}\n`);
  if (read.faults.length > 0) fail(`${path}: ${counted(read.faults.length, 'error')}; nothing was verified`);
  if (read.anchors.length === 0) fail(`${path} holds no anchor`);
  return read.anchors;
}

function keep(path: string, { sites }: Audit): void {
  const lines = sites.flatMap(({ anchor }) => (anchor ? [writeAnchor(anchor)] : []));
  try {
    appendFileSync(path, lines.join(''));
    const kept = counted(lines.length, 'anchor');
    process.stdout.write(`${kept} added to ${path}: keep it where whoever runs the database cannot write.\n`);
  } catch {
    cannot(`${path} cannot be written; no anchor was kept`);
  }
}
