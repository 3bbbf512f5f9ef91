import { fromCustom, readingSaid } from '../../readings/figures';
import { judge } from '../../readings/judge';
import reasons from '../../readings/reasons.json';
import { ok, type Result, refused } from '../../result';
import { toCubicMetres } from '../../units/volume';
import { beyondLimit, beyondUsual } from '../abnormal';
import type { Check, NumberCheck, TestCheck } from '../check';
import { isFar } from '../questions';
import type { NotedValue } from '../rate';
import { askedOfRate } from './used';
import { readCalibration } from './calibration';
import { readChoice, readDoses, readFigure, readPhotos, readText } from './plain';
import { type Read, tidy, type TypedFault, type TypedLine, typedNumber } from './typed';
import { readWaterTest } from './water-test';

/** What a person said of a line: what was typed, and the words that go with it. */
interface SaidOfLine extends TypedLine {
  /** Id of the entry, made by whoever makes it; a test has the same. */
  entry: string;
  notDone?: string | undefined;
  note?: string | undefined;
  steps?: string | undefined;
  expected?: string | undefined;
  found?: string | undefined;
  witness?: string | undefined;
}

const LITRES = 1000;

/**
 * Reads what was typed on a line.
 *
 * @param last   the last number known of the line, in the facility file's unit; null when none is
 * @param noted  what was noted before on a line of what is used, the latest first; and the time of this entry, ms since 1970
 * @returns      the value, null for a line that was not done; or what is wrong, by field
 */
export function readLine(
  check: Check,
  typed: SaidOfLine,
  last: number | null,
  noted: { before: readonly NotedValue[]; atMs: number } | null = null,
): Read {
  if (typed.notDone !== undefined) return ok({ value: null, question: null });
  switch (check.kind) {
    case 'number':
      return readNumber(check, typed, last);
    case 'yes-no':
      if (typed.seen === 'usual') return ok({ value: { kind: 'yes-no', asUsual: true }, question: null });
      if (typed.seen !== 'other') return missing('seen', 'choose whether it is as usual');
      if (typed.note === undefined) return missing('note', 'say what is other than usual');
      return ok({ value: { kind: 'yes-no', asUsual: false }, question: null });
    case 'head-count':
      return readCount(check.expected, typed);
    case 'used':
      return askedOfRate(check, typed, readUsed(typed), noted);
    case 'test':
      return readTest(check, typed);
    case 'figure':
      return readFigure(check, typed);
    case 'choice':
      return readChoice(check, typed);
    case 'text':
      return readText(typed);
    case 'photo':
      return readPhotos(typed);
    case 'doses':
      return askedOfRate(check, typed, readDoses(check, typed), noted);
    case 'water-test':
      return readWaterTest(check, typed);
    case 'calibration':
      return readCalibration(check, typed);
  }
}

function readNumber(check: NumberCheck, typed: SaidOfLine, last: number | null): Read {
  const { units } = typed;
  const number = typedNumber(typed.number);
  if (!number.ok) return number;
  const converted = inFacilityUnit(check, typed, number.value);
  if (!converted.ok) return converted;
  const value = converted.value;
  const isFahrenheit = units === 'us' && check.quantity === 'temperature';
  const judged = judge(check.quantity, value, { value: number.value, ...(isFahrenheit && { unit: 'degF' }) });
  const said = (figure: number) => readingSaid(check.quantity, units, figure);
  const beyond = beyondLimit(check, value);
  const questions = [
    judged.reason ? `${reasons[judged.reason]} Is ${said(value)} what you read?` : null,
    !judged.reason && last !== null && isFar(check.quantity, value, last)
      ? `The last one was ${said(last)}. Is ${said(value)} what you read?`
      : null,
    beyond
      ? `${said(value)} is ${beyond} the limit of its alarm, ${said(check.alarm?.[beyond] ?? value)}. What was done?`
      : null,
    !beyond && beyondUsual(check.usual, value)
      ? `${said(value)} is ${beyondUsual(check.usual, value)} what is usual. What was done?`
      : null,
  ].filter((one) => one !== null);
  return ok({
    value: { kind: 'number', value, ...judged },
    question: questions.length > 0 ? questions.join(' ') : null,
  });
}

function inFacilityUnit({ quantity }: NumberCheck, { units }: SaidOfLine, typed: number): Result<number, TypedFault[]> {
  try {
    return ok(tidy(fromCustom(quantity, units, typed)));
  } catch {
    return missing('number', 'is beyond belief');
  }
}

function readCount(expected: number, typed: SaidOfLine): Read {
  // "All as usual" pressed over a figure that was typed: one of the two is a slip, and which nobody can know.
  if (typed.seen === 'usual' && typed.number !== undefined)
    return missing('number', 'was typed as well: save what was counted, or clear it if all were seen');
  if (typed.seen === 'usual') return ok({ value: { kind: 'head-count', count: null }, question: null });
  const number = typedNumber(typed.number);
  if (!number.ok) return number;
  const count = number.value;
  if (!Number.isInteger(count) || count < 0 || count > 1e6)
    return missing('number', 'must be a whole number of animals');
  const question =
    count === expected
      ? null
      : `${expected} are described, and you counted ${count}. What was seen, and what was done?`;
  return ok({ value: { kind: 'head-count', count }, question });
}

function readUsed(typed: SaidOfLine): Read {
  const number = typedNumber(typed.number);
  if (!number.ok) return number;
  if (number.value < 0 || number.value > 1e6) return missing('number', 'must be 0 or more');
  const litres = typed.units === 'us' ? toCubicMetres(number.value, 'galUS') * LITRES : number.value;
  return ok({ value: { kind: 'used', litres: tidy(litres) }, question: null });
}

function readTest(_check: TestCheck, typed: SaidOfLine): Read {
  const faults: TypedFault[] = [];
  const needed = { steps: 'say what was done', expected: 'say what should have happened', found: 'say what was seen' };
  for (const [path, message] of Object.entries(needed))
    if (typed[path as keyof typeof needed] === undefined) faults.push({ path, message });
  if (typed.seen !== 'worked' && typed.seen !== 'failed')
    faults.unshift({ path: 'seen', message: 'choose whether it worked or failed' });
  if (faults.length > 0) return refused(faults);
  const result = typed.seen === 'failed' ? 'failed' : 'worked';
  return ok({
    value: { kind: 'test', result, test: typed.entry, ...(typed.witness && { witness: typed.witness }) },
    question: null,
  });
}

function missing(path: string, message: string): Result<never, TypedFault[]> {
  return refused([{ path, message }]);
}
