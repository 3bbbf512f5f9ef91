import type { Instant } from '../time/zone';
import { type Standing, standing } from './due';
import type { SheetDue } from './sheet-due';

/** A round of a kept sheet that was begun, as far as its standing goes. */
export interface BegunSheet {
  /** Key of its sheet. */
  sheet: string;
  dueAt: Instant;
  begunAt: Instant;
  signedAt: Instant | null;
}

/** A time at which a sheet is due, and how it stands. */
export interface SheetStanding<R extends BegunSheet> extends SheetDue {
  sheet: string;
  standing: Standing;
  round: R | null;
}

/**
 * How the due times of sheets stand, in order. What was kept when it came counts before what follows from the sheets as they
 * are now: a sheet that was changed since was due as it was then.
 * @param kept      due times that were kept
 * @param derived   those that follow from the sheets as they are
 * @param rounds    rounds that were begun
 */
export function sheetStandings<R extends BegunSheet>(
  kept: readonly (SheetDue & { sheet: string })[],
  derived: readonly (SheetDue & { sheet: string })[],
  rounds: readonly R[],
  now: Instant,
): SheetStanding<R>[] {
  const nameOf = ({ sheet, dueAt }: { sheet: string; dueAt: Instant }) => `${sheet} ${dueAt}`;
  const begun = new Map(rounds.map((round) => [nameOf(round), round]));
  const past = kept.filter(({ dueAt }) => dueAt <= now);
  const dues = new Map([...derived, ...past].map((due) => [nameOf(due), due]));
  return [...dues.values()]
    .sort((a, b) => a.dueAt - b.dueAt)
    .map((due) => {
      const round = begun.get(nameOf(due)) ?? null;
      return { ...due, round, standing: standing(due, round?.begunAt ?? null, round?.signedAt ?? null, now) };
    });
}
