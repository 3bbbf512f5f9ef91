import type { Instant } from '../time/zone';
import type { DutyException, Shift } from './rota';
import { type ShiftTurn, shiftTurns } from './shift-turns';

/** Somebody's duty in one turn of a shift, or what leave lets stand of it: from its start up to, and without, its end. */
export interface Duty extends ShiftTurn {
  /** Key of the person. */
  person: string;
  kind: Shift['kind'];
  /** In whose place they stand: key of the person that the shift names. Absent: it is their own. */
  insteadOf?: string;
}

/** Somebody in a turn, and for whom. */
interface Holder {
  person: string;
  insteadOf?: string;
}

interface Stretch {
  start: Instant;
  end: Instant;
}

/**
 * The duties of a rota that begin within some days, as they really are: swaps are carried out in the order given, then leave
 * takes away what lies within it, to the second. A swap of a turn in which its giver does not stand changes nothing; whoever
 * is given a turn they have already has it once.
 * @param exceptions what was approved, in the order in which it was
 * @param zone IANA zone of the site
 * @param from first day, "YYYY-MM-DD", of the shift's own beginning
 * @param to the day after the last one, "YYYY-MM-DD"
 * @returns duties in order of their start, then of the shifts and their people as given
 * @throws RangeError when there is no such zone or day
 */
export function duties(
  shifts: readonly Shift[],
  exceptions: readonly DutyException[],
  zone: string,
  from: string,
  to: string,
): Duty[] {
  const byKey = new Map(shifts.map((shift) => [shift.key, shift]));
  const all = shiftTurns(shifts, zone, from, to).flatMap((turn) => {
    const shift = byKey.get(turn.shift);
    if (!shift) return [];
    return holdersOf(turn, shift, exceptions).flatMap((holder) =>
      present(holder.person, turn, exceptions).map(
        (stretch): Duty => ({
          ...turn,
          ...stretch,
          ...holder,
          kind: shift.kind,
        }),
      ),
    );
  });
  return all.sort((a, b) => a.start - b.start);
}

function holdersOf(turn: ShiftTurn, { people }: Shift, exceptions: readonly DutyException[]): Holder[] {
  let holders: Holder[] = [...new Set(people)].map((person) => ({ person }));
  for (const one of exceptions) {
    if (one.kind !== 'swap' || one.shift !== turn.shift || one.date !== turn.date) continue;
    const { gives, takes } = one;
    if (!holders.some(({ person }) => person === gives)) continue;
    const has = holders.some(({ person }) => person === takes);
    holders = holders.flatMap((holder): Holder[] => {
      if (holder.person !== gives) return [holder];
      if (has) return [];
      const first = holder.insteadOf ?? gives;
      return [first === takes ? { person: takes } : { person: takes, insteadOf: first }];
    });
  }
  return holders;
}

/** What leave lets stand of a turn of somebody. */
function present(person: string, { start, end }: ShiftTurn, exceptions: readonly DutyException[]): Stretch[] {
  let left: Stretch[] = [{ start, end }];
  for (const one of exceptions) {
    if (one.kind !== 'leave' || one.person !== person || one.to <= start || one.from >= end) continue;
    left = left.flatMap((stretch) =>
      [
        { start: stretch.start, end: Math.min(stretch.end, one.from) },
        { start: Math.max(stretch.start, one.to), end: stretch.end },
      ].filter((part) => part.start < part.end),
    );
  }
  return left;
}
