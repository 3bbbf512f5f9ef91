import { judge } from '#core/readings/judge';
import type { Check, NumberCheck } from '#core/rounds/check';
import type { Entry, EntryValue } from '#core/rounds/entry';
import type { HandReader } from './hand';
import { inSteps } from './instrument';
import { type Random, randomOf } from './random';
import { idFor } from './seeded-id';

/** What somebody who walks a round needs to know of the site. */
export interface Walking {
  site: string;
  /** Key of the round: its slot and day. */
  round: string;
  person: string;
  begunMs: number;
  signedMs: number | null;
  reader: (system: string, sensor: string) => HandReader | undefined;
  /** Id of a test of a safeguard that was made on the day, and what came of it. */
  tested: (system: string | null, safeguard: string) => { id: string; result: 'worked' | 'failed' } | null;
  /** A number that was written down without looking, by line; null: none. */
  copied: (line: string) => number | null;
  /** What was seen other than usual, by line. */
  seen: (line: string) => { value: EntryValue; note: string } | null;
}

/** An entry with the moment it was received. */
export type PastEntry = Entry & { recordedMs: number };

/** Why a line is left out now and then. */
const REASONS = [
  'Visitors stood before it; the next round.',
  'Probe was in its cleaning solution.',
  'Test kit is empty, a new one is ordered.',
  'Hands full with a delivery.',
];
const NOT_DONE = 0.004;
const TEST_REASON = 'Not on this round: it needs two of us and a quiet hour.';
/** How often a number is mistyped, and put right before long; of what no alarm watches, so that it calls nobody. */
const MISTYPED = 0.02;
const UNWATCHED: readonly string[] = ['ph', 'nitrate', 'alkalinity'];

/** What somebody recorded on a round, line by line, in order. */
export function entriesOf(checks: readonly Check[], walking: Walking): PastEntry[] {
  const random = randomOf(walking.site, walking.round, 'entries');
  const endMs = walking.signedMs ?? walking.begunMs + 1_800_000;
  return checks.flatMap((check, i) => {
    const atMs = Math.round(walking.begunMs + ((endMs - walking.begunMs) * (i + 1)) / (checks.length + 2));
    return entryOf(check, walking, atMs, random);
  });
}

function entryOf(check: Check, walking: Walking, atMs: number, random: Random): PastEntry[] {
  const id = idFor(atMs, walking.site, walking.round, check.key);
  const blank = { id, check: check.key, atMs, recordedMs: atMs + 1000, by: walking.person };
  const entry: PastEntry = { ...blank, value: null, notDone: null, note: null, supersedes: null, reason: null };
  const particular = walking.seen(check.key);
  if (particular) return [{ ...entry, ...particular }];
  if (random.happens(NOT_DONE)) return [{ ...entry, notDone: random.one(REASONS) }];
  const value = seenValue(check, walking, atMs, random);
  if (value === null) return [{ ...entry, notDone: check.kind === 'test' ? TEST_REASON : random.one(REASONS) }];
  const mayErr = 'quantity' in check && UNWATCHED.includes(check.quantity);
  if (value.kind === 'number' && mayErr && random.happens(MISTYPED)) return mistyped(entry, check, value, walking);
  return [{ ...entry, value }];
}

/** A point in the wrong place, seen at once, and corrected. */
function mistyped(
  entry: PastEntry,
  check: Check,
  value: EntryValue & { kind: 'number' },
  { site, round }: Walking,
): PastEntry[] {
  const wrong = numberValue(check, inSteps(value.value * 10, 0.01));
  const recordedMs = entry.recordedMs + 40_000;
  const id = idFor(recordedMs, site, round, check.key, 'corrected');
  return [
    { ...entry, value: wrong },
    { ...entry, id, value, recordedMs, supersedes: entry.id, reason: 'The point was in the wrong place.' },
  ];
}

function seenValue(check: Check, walking: Walking, atMs: number, random: Random): EntryValue | null {
  const { system, key } = check.about;
  switch (check.kind) {
    case 'number': {
      const read = walking.reader(system ?? '', key)?.(atMs) ?? null;
      const value = walking.copied(check.key) ?? read;
      return value === null ? null : numberValue(check, value);
    }
    case 'yes-no':
      return { kind: 'yes-no', asUsual: true };
    case 'head-count':
      return { kind: 'head-count', count: check.expected <= 30 && random.happens(0.3) ? check.expected : null };
    case 'used':
      return { kind: 'used', litres: inSteps(random.between(2, 9), 0.5) };
    case 'test': {
      const test = walking.tested(system, key);
      return test && { kind: 'test', result: test.result, test: test.id };
    }
    // The invented sites walk the sheets that follow from their description, on which no such line stands.
    case 'calibration':
    case 'choice':
    case 'doses':
    case 'figure':
    case 'photo':
    case 'text':
    case 'water-test':
      return null;
  }
}

/** A number with how far it can be trusted, judged as one that is typed. */
function numberValue(check: Pick<NumberCheck, 'kind'> | Check, value: number): EntryValue & { kind: 'number' } {
  const quantity = 'quantity' in check ? check.quantity : 'temperature';
  return { kind: 'number', value, ...judge(quantity, value, { value }) };
}
