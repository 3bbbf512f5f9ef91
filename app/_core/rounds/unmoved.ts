import { fromCustom, toCustom } from '../readings/figures';
import type { SensorQuantity } from '../facility/system';

const DAY_MS = 86_400_000;
/** Days of entries that are held together. */
const DAYS = 7;
/** Days that the first of them lies back, at least: a shop may be shut on a day or two. Common practice, no source. */
const LEAST_DAYS = 5;
/** Entries within them, at least. Common practice, no source. */
const LEAST_ENTRIES = 5;
/** Quantities on one round that have to be so before anybody is asked: one may well be steady. Common practice, no source. */
const SEVERAL = 3;
/** Earlier stretches of as many entries that are looked at where no sensor of its own stands beside. Common practice, no source. */
const EARLIER = 2;
/** Steps by which what stands beside has to move: whoever rounds to the step moves by more than one of them then. */
const MOVED_STEPS = 2;
/** Digits after the point that are looked for in what was typed; more are the traces of a conversion. */
const MOST_DIGITS = 4;
/** How near a number lies to one of so many digits that it was typed as such: six are kept of what was converted. */
const NEAR = 5e-6;

/** Something that was noted by hand, in the facility file's unit. */
export interface Noted {
  atMs: number;
  value: number;
}

/** A quantity of a round with what was noted of it in the month before, this round's entry last. */
export interface Followed {
  /** Key of its line. */
  line: string;
  /** Null for a number that no sensor reads. */
  quantity: SensorQuantity | null;
  /** In order of time. */
  noted: readonly Noted[];
  /** What the sensor itself read beside an entry, by the entry's time; null where none reads it by itself. */
  beside: ReadonlyMap<number, number> | null;
}

/** A quantity that stood still in a week of entries. */
export interface Unmoved {
  line: string;
  quantity: SensorQuantity | null;
  /** Entries in that time, and the first of them. */
  many: number;
  fromMs: number;
}

/**
 * The quantities of a round that a week of entries shows within one step of their instrument, though they would be seen to move:
 * the sensor in the same place moved by more than two steps between these very entries, or, where none reads it by itself, as many
 * entries before moved by more than that, twice. Whoever reads and rounds is never among them where a sensor stands beside.
 * Exact zeros are left out, for what is not there is often measured as such.
 *
 * @param nowMs   when this round was walked
 * @returns       none where fewer than three are so
 */
export function unmovedOf(followed: readonly Followed[], nowMs: number): Unmoved[] {
  const found = followed.flatMap((one): Unmoved[] => {
    const week = one.noted.filter(({ atMs }) => atMs > nowMs - DAYS * DAY_MS && atMs <= nowMs);
    const first = week[0];
    if (!first || week.length < LEAST_ENTRIES || nowMs - first.atMs < LEAST_DAYS * DAY_MS) return [];
    if (week.every(({ value }) => value === 0)) return [];
    const step = stepOf(one);
    if (spread(week) > step + NEAR || !wouldMove(one, week, step)) return [];
    return [{ line: one.line, quantity: one.quantity, many: week.length, fromMs: first.atMs }];
  });
  return found.length >= SEVERAL ? found : [];
}

/** Whether something else says that a quantity moves by more than can be lost in rounding. */
function wouldMove({ noted, beside }: Followed, week: readonly Noted[], step: number): boolean {
  const least = MOVED_STEPS * step + NEAR;
  if (beside) {
    const read = week.flatMap(({ atMs }) => beside.get(atMs) ?? []);
    return read.length >= LEAST_ENTRIES && Math.max(...read) - Math.min(...read) > least;
  }
  const older = noted.slice(0, noted.length - week.length);
  return Array.from({ length: EARLIER }, (_, back) => {
    const end = older.length - back * week.length;
    return older.slice(Math.max(0, end - week.length), Math.max(0, end));
  }).every((stretch) => stretch.length === week.length && spread(stretch) > least);
}

/** The smallest step of what was typed, in whichever custom it was typed, in the facility file's unit. */
function stepOf({ quantity, noted }: Followed): number {
  const values = noted.map(({ value }) => value);
  const metric = digitsOf(values);
  if (quantity === null) return 10 ** -metric;
  const us = digitsOf(values.map((value) => toCustom(quantity, 'us', value)));
  if (metric <= us) return 10 ** -metric;
  return fromCustom(quantity, 'us', 10 ** -us) - fromCustom(quantity, 'us', 0);
}

function digitsOf(values: readonly number[]): number {
  const fits = (digits: number) => values.every((value) => Math.abs(value - Number(value.toFixed(digits))) < NEAR);
  for (let digits = 0; digits < MOST_DIGITS; digits += 1) if (fits(digits)) return digits;
  return MOST_DIGITS;
}

function spread(noted: readonly Noted[]): number {
  const values = noted.map(({ value }) => value);
  return Math.max(...values) - Math.min(...values);
}
