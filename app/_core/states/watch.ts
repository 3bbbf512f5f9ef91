import type { System } from '../facility/system';
import { type Rota, turnsOf } from '../rota/turns';
import { isOzoneTouched } from './proofs';
import type { Begun } from './state-end';
import table from './watch.json';

const HOUR_MS = 3_600_000;
/** How far ahead shifts are looked for, ms. */
const AHEAD_MS = 8 * 24 * HOUR_MS;

/** What is watched after a state, and how. */
export interface Watch {
  key: string;
  title: string;
  /** Shifts it goes on through, beside the one there is now. */
  shifts: number;
  /** It lasts no shorter than this, h. */
  atLeastH: number;
  /** A look is due this often, h. */
  lookEveryH: number;
  look: string;
  source: string;
}

/** What is watched once a state has ended: as long as what it may leave behind needs to show. */
export function watchesAfter({ equipment }: Pick<System, 'equipment'>, state: Begun): Watch[] {
  const isOzone = equipment.some((piece) => isOzoneTouched(piece, state));
  return table.filter(({ states, ozone }) => (ozone && isOzone) || states.includes(state));
}

/**
 * Until when it is watched: through the shifts that begin next, and no shorter than its hours. Shifts on site count; where nobody is
 * ever on site, those on call.
 *
 * @param endedMs   when the state ended
 * @returns         ms since 1970
 */
export function watchedUntil(rota: Rota, { shifts, atLeastH }: Watch, endedMs: number): number {
  const least = endedMs + atLeastH * HOUR_MS;
  if (shifts === 0) return least;
  const turns = turnsOf(rota, endedMs, endedMs + AHEAD_MS).filter(({ start }) => start > endedMs);
  const onSite = turns.filter(({ kind }) => kind === 'on-site');
  const each = new Map((onSite.length > 0 ? onSite : turns).map((turn) => [`${turn.shift} ${turn.date}`, turn]));
  const next = [...each.values()].slice(0, shifts);
  return Math.max(least, ...next.map(({ end }) => end));
}

/** When a look is due next: so long after the latest one, or after the end of the state. @returns null when none is due any more */
export function nextLookMs(watch: Watch, untilMs: number, endedMs: number, looksMs: readonly number[]): number | null {
  const due = Math.max(endedMs, ...looksMs) + watch.lookEveryH * HOUR_MS;
  return due > untilMs && looksMs.length > 0 ? null : Math.min(due, untilMs);
}
