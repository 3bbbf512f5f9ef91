import type { ReadRecord } from '#core/readings/arrived';
import { ok, refused } from '#core/result';
import { z } from 'zod';

/** RFC 3339: with its zone, to the second or finer. */
const time = z.iso.datetime({ offset: true });
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,4})?$/i;
/** Words for wet or dry. */
const SWITCH: Readonly<Record<string, boolean>> = { true: true, false: false, wet: true, dry: false };
const LONGEST = { name: 200, unit: 40, value: 80 };

/** Cells of a line by the name of their column. */
export interface CsvCells {
  name: string;
  time: string;
  value: string;
  unit: string;
}

/** What a line of `name,time,value[,unit]` says. @param cells   trimmed */
export function readCsvRecord({ name, time: at, value: written, unit }: CsvCells): ReadRecord {
  if (name === '' || name.length > LONGEST.name || !isPlain(name))
    return refused({ field: 'name', why: `must be a text of at most ${LONGEST.name} characters` });
  if (unit.length > LONGEST.unit || !isPlain(unit))
    return refused({ field: 'unit', why: `must have at most ${LONGEST.unit} characters`, name });
  const instant = time.safeParse(at.toUpperCase());
  if (!instant.success)
    return refused({ field: 'time', why: 'must be an instant with its zone, such as 2026-05-01T08:30:00Z', name });
  const value = figureSaid(written);
  if (value === null) return refused({ field: 'value', why: 'must be a number', name });
  return ok({ name, atMs: Date.parse(instant.data), value, ...(unit === '' ? {} : { unit }) });
}

/**
 * A number as it is written, or a word for wet or dry.
 *
 * @returns   null for anything else
 */
export function figureSaid(written: string): number | boolean | null {
  const word = written.toLowerCase();
  if (Object.hasOwn(SWITCH, word)) return SWITCH[word] ?? null;
  // What is longer is no number, and not looked through: that takes the square of its length.
  const value = written.length <= LONGEST.value && NUMBER.test(written) ? Number(written) : Number.NaN;
  return Number.isFinite(value) ? value : null;
}

/** Whether a database and a screen can hold it: no control characters, no half of a pair. */
function isPlain(text: string): boolean {
  return !/[\p{Cc}\p{Cs}]/u.test(text);
}
