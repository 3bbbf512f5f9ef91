import { fromCustom, readingSaid } from '../../readings/figures';
import { judge } from '../../readings/judge';
import reasons from '../../readings/reasons.json';
import { ok, type Result, refused } from '../../result';
import { beyondLimit } from '../abnormal';
import type { WaterAsked, WaterQuantity, WaterTestCheck } from '../check';
import type { Measured } from '../entry';
import { isFar } from '../questions';
import { type Read, readAs, tidy, type TypedFault, type TypedLine, typedNumber, wrong } from './typed';

/**
 * Reads the figures of a water test. Those left empty were not measured; at least one has to be there.
 * @param lasts   the last figure known of each, in the facility file's unit
 */
export function readWaterTest(
  { asks }: WaterTestCheck,
  typed: TypedLine,
  lasts: Readonly<Partial<Record<WaterQuantity, number>>> = {},
): Read {
  const figures: Partial<Record<WaterQuantity, Measured>> = {};
  const faults: TypedFault[] = [];
  const questions: (string | null)[] = [];
  for (const asked of asks) {
    const text = typed.figures[asked.quantity];
    if (text === undefined) continue;
    const read = readOne(asked, text, typed.units);
    if (!read.ok) {
      faults.push(...read.reason);
      continue;
    }
    figures[asked.quantity] = read.value;
    questions.push(questionOf(asked, read.value, typed.units, lasts[asked.quantity] ?? null));
  }
  if (faults.length > 0) return refused(faults);
  if (Object.keys(figures).length === 0) return wrong('figure', 'type what was measured, one figure at least');
  return readAs({ kind: 'water-test', figures }, questions);
}

function readOne({ quantity }: WaterAsked, text: string, units: TypedLine['units']): Result<Measured, TypedFault[]> {
  const number = typedNumber(text, `figure.${quantity}`);
  if (!number.ok) return number;
  const value = tidy(fromCustom(quantity, units, number.value));
  const isFahrenheit = units === 'us' && quantity === 'temperature';
  const judged = judge(quantity, value, { value: number.value, ...(isFahrenheit && { unit: 'degF' }) });
  return ok({ value, ...judged });
}

function questionOf(
  asked: WaterAsked,
  { value, reason }: Measured,
  units: TypedLine['units'],
  last: number | null,
): string | null {
  const { quantity } = asked;
  const said = (figure: number) => readingSaid(quantity, units, figure);
  const why = Object.entries(reasons).find(([key]) => key === reason)?.[1];
  if (why) return `${why} Is ${said(value)} what you read (${quantity})?`;
  const beyond = beyondLimit(asked, value);
  if (beyond)
    return `${said(value)} (${quantity}) is ${beyond} the limit of its alarm, ${said(asked.alarm?.[beyond] ?? value)}. What was done?`;
  if (last !== null && isFar(quantity, value, last))
    return `The last one (${quantity}) was ${said(last)}. Is ${said(value)} what you read?`;
  return null;
}
