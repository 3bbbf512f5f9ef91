import { ok } from '../../result';
import { fromCubicMetres } from '../../units/volume';
import type { DosesCheck, UsedCheck } from '../check';
import { beyondRate, type NotedValue, UNUSUAL_FACTOR, usedRate } from '../rate';
import type { Read, TypedLine } from './typed';

const LITRES = 1000;

/**
 * What was read on a line of what is used, and what its rate asks.
 *
 * @param noted   what was noted on it before, the latest first, and the time of this entry; null where that is not known
 */
export function askedOfRate(
  check: UsedCheck | DosesCheck,
  { units }: Pick<TypedLine, 'units'>,
  read: Read,
  noted: { before: readonly NotedValue[]; atMs: number } | null,
): Read {
  if (!read.ok || read.value.value === null || read.value.question !== null || noted === null) return read;
  const { value } = read.value;
  const rate = usedRate(check, [{ value, atMs: noted.atMs }, ...noted.before]);
  const beyond = beyondRate(rate);
  if (!rate || beyond === null) return read;
  const said = (perDay: number) => rateSaid(check, units, perDay);
  const middle = check.perDay
    ? `, ${beyond} what is usual`
    : beyond === 'above'
      ? `, more than ${UNUSUAL_FACTOR} times what the rounds before make of it (${said((rate.usual?.to ?? 0) / UNUSUAL_FACTOR)})`
      : `, less than 1/${UNUSUAL_FACTOR} of what the rounds before make of it (${said((rate.usual?.from ?? 0) * UNUSUAL_FACTOR)})`;
  return ok({ value, question: `That is ${said(rate.perDay)}${middle}. What was seen, and what was done?` });
}

/** A rate in words: "13 L a day", "3 doses a day"; of several the unit once: "8, 9, 9 L a day". */
export function rateSaid(
  { kind }: Pick<UsedCheck | DosesCheck, 'kind'>,
  units: TypedLine['units'],
  perDay: number | readonly number[],
  between = ', ',
): string {
  const inUnits = (rate: number) =>
    kind === 'used' && units === 'us' ? fromCubicMetres(rate / LITRES, 'galUS') : rate;
  const numbers = [perDay].flat().map((rate) => String(Number(inUnits(rate).toPrecision(2))));
  const unit = kind === 'doses' ? ' doses' : units === 'us' ? '\u00a0US\u00a0gal' : '\u00a0L';
  return `${numbers.join(between)}${unit} a day`;
}
