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
  /** Where they are on site at another site meanwhile, the way from there, s: see `away.ts`. */
  apartS?: number;
}

interface Stretch {
  start: Instant;
  end: Instant;
}

/** Somebody in a stretch of a turn, and for whom. */
interface Holding extends Stretch {
  person: string;
  insteadOf?: string;
}

/**
 * The duties of a rota that begin within some days, as they really are: swaps are carried out in the order given, then leave
 * takes away what lies within it, to the second. A swap of a turn in which its giver does not stand changes nothing; whoever
 * is given a turn, or a part of one, that they have already has it once.
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
    return holdingsOf(turn, shift, exceptions).flatMap((holding) =>
      present(holding, exceptions).map((stretch): Duty => ({ ...turn, ...holding, ...stretch, kind: shift.kind })),
    );
  });
  return all.sort((a, b) => a.start - b.start);
}

function holdingsOf(turn: ShiftTurn, { people }: Shift, exceptions: readonly DutyException[]): Holding[] {
  const { start, end } = turn;
  let holdings: Holding[] = [...new Set(people)].map((person) => ({ person, start, end }));
  for (const one of exceptions)
    if (one.kind === 'swap' && one.shift === turn.shift && one.date === turn.date) holdings = swapped(holdings, one);
  return holdings;
}

/** What a swap makes of a turn: who gives keeps what lies before and after; who takes has each moment of it once. */
function swapped(holdings: readonly Holding[], swap: Extract<DutyException, { kind: 'swap' }>): Holding[] {
  const { gives, takes, from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY } = swap;
  const has = holdings.filter(({ person }) => person === takes);
  return holdings.flatMap((holding): Holding[] => {
    const [start, end] = [Math.max(holding.start, from), Math.min(holding.end, to)];
    if (holding.person !== gives || start >= end) return [holding];
    const first = holding.insteadOf ?? gives;
    const taken: Pick<Holding, 'person' | 'insteadOf'> =
      first === takes ? { person: takes } : { person: takes, insteadOf: first };
    return [
      ...without([holding], { start, end: Number.POSITIVE_INFINITY }),
      ...has.reduce<Holding[]>(without, [{ ...taken, start, end }]),
      ...without([holding], { start: Number.NEGATIVE_INFINITY, end }),
    ];
  });
}

/** What leave lets stand of a stretch of somebody. */
function present(holding: Holding, exceptions: readonly DutyException[]): Holding[] {
  let left: Holding[] = [holding];
  for (const one of exceptions)
    if (one.kind === 'leave' && one.person === holding.person) left = without(left, { start: one.from, end: one.to });
  return left;
}

/** Stretches without another one. */
function without(stretches: readonly Holding[], { start, end }: Stretch): Holding[] {
  return stretches.flatMap((one) =>
    one.end <= start || one.start >= end
      ? [one]
      : [
          { ...one, end: Math.min(one.end, start) },
          { ...one, start: Math.max(one.start, end) },
        ].filter((part) => part.start < part.end),
  );
}
