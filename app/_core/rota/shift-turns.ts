import { addDays } from '../time/add-days';
import { type Instant, instantOf } from '../time/zone';
import type { Shift } from './rota';
import { shiftDays } from './shift-days';

/** One turn of a shift, whoever has it: from its start up to, and without, its end. */
export interface ShiftTurn {
  shift: string;
  /** Day on which it begins at the site, "YYYY-MM-DD". */
  date: string;
  start: Instant;
  end: Instant;
}

/**
 * The turns of shifts that begin within some days, each with its true length: a night shift from 22:00 to 06:00 lasts seven
 * hours when the clocks go forward and nine when they go back. Where one ends on the wall and another begins, there is never
 * a hole between them. A shift that lies wholly within hours that are leapt over has no length on that day and is not given.
 * @param zone IANA zone of the site
 * @param from first day, "YYYY-MM-DD"
 * @param to the day after the last one, "YYYY-MM-DD"
 * @returns turns in order of their start, and of the shifts as given
 * @throws RangeError when there is no such zone or day
 */
export function shiftTurns(shifts: readonly Shift[], zone: string, from: string, to: string): ShiftTurn[] {
  const all = shifts.flatMap((shift) =>
    shiftDays(shift, from, to).flatMap((date): ShiftTurn[] => {
      const start = instantOf(zone, date, shift.from);
      const end = instantOf(zone, shift.to <= shift.from ? addDays(date, 1) : date, shift.to);
      return start < end ? [{ shift: shift.key, date, start, end }] : [];
    }),
  );
  return all.sort((a, b) => a.start - b.start);
}
