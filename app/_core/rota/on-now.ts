import type { Instant } from '../time/zone';
import type { Shift } from './rota';
import { type Rota, type Turn, turnsOf } from './turns';

/** Somebody who is on, or will be. */
export interface OnDuty {
  /** Key of the person. */
  person: string;
  kind: Shift['kind'];
  /** Key of the shift they are in. */
  shift: string;
  /** Until when they are on in this way without a break; null when no end comes within the eight days looked at. */
  until: Instant | null;
}

/** Somebody who comes on, and when. */
export interface ComesOn extends OnDuty {
  from: Instant;
}

/** How far ahead is looked: a week, and a day for the change of the clocks. */
const AHEAD_MS = 8 * 86_400_000;

/**
 * Who is on at a moment, and until when: on site before on call, then in the order of the shifts. Whoever is on site and
 * on call at once is on site. Turns of one person that follow one another without a break, of the same kind, are one.
 * @returns nobody when nobody is on
 * @throws RangeError when the site's zone is unknown
 */
export function onNow(rota: Rota, at: Instant): OnDuty[] {
  const turns = turnsOf(rota, at, at + AHEAD_MS);
  const on = inOrder(rota, turns).filter(({ start, end }) => start <= at && at < end);
  return oneEach(on).map((turn) => told(turn, turns, at));
}

/**
 * Who comes on next: everybody who begins at the soonest moment after this one at which somebody begins who was not on in
 * that way until then.
 * @returns nobody when nobody comes on within eight days
 * @throws RangeError when the site's zone is unknown
 */
export function nextOn(rota: Rota, at: Instant): ComesOn[] {
  const turns = turnsOf(rota, at, at + AHEAD_MS);
  const begins = turns.filter((turn) => turn.start > at && !turns.some((other) => runsInto(other, turn)));
  const first = Math.min(...begins.map(({ start }) => start));
  const soonest = inOrder(rota, begins).filter(({ start }) => start === first);
  return oneEach(soonest).map((turn) => ({ ...told(turn, turns, at), from: first }));
}

function told(turn: Turn, turns: readonly Turn[], at: Instant): OnDuty {
  const { person, kind, shift } = turn;
  return { person, kind, shift, until: endOf(turn, turns, at + AHEAD_MS) };
}

/** The first turn of each person. */
function oneEach(turns: readonly Turn[]): Turn[] {
  const seen = new Set<string>();
  return turns.filter(({ person }) => !seen.has(person) && seen.add(person));
}

/** Whether a turn of the same person and kind was under way when another began, and did not only begin with it. */
function runsInto(other: Turn, turn: Turn): boolean {
  return (
    other.person === turn.person && other.kind === turn.kind && other.start < turn.start && other.end >= turn.start
  );
}

/** On site before on call, then as the file has the shifts. */
function inOrder({ shifts }: Rota, turns: readonly Turn[]): Turn[] {
  const place = new Map(shifts.map(({ key }, index) => [key, index]));
  const rank = ({ kind, shift }: Turn) => (kind === 'on-site' ? 0 : shifts.length) + (place.get(shift) ?? 0);
  return [...turns].sort((a, b) => rank(a) - rank(b) || a.start - b.start);
}

/** When a person's turns of a kind first stop following one another. */
function endOf(turn: Turn, turns: readonly Turn[], limit: Instant): Instant | null {
  let end = turn.end;
  for (const next of turns)
    if (next.person === turn.person && next.kind === turn.kind && next.start <= end) end = Math.max(end, next.end);
  return end >= limit ? null : end;
}
