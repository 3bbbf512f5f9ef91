import type { Facility } from '../../facility/facility';
import type { Stretch } from '../../rota/answering';
import { HORIZON } from '../context';
import type { Aspect } from '../../rounds/slot';
import { WEEK, weekSecond } from '../../time/week';

/** A round that passes a system, on a line of time, and finds somebody on site to walk it. */
export interface Look {
  key: string;
  /** s from the line's beginning. */
  atS: number;
  sees: ReadonlySet<Aspect>;
  /** Keys of those on site then. */
  walkers: string[];
}

/** Weeks after the hours of a line in which a round can still meet a fault of the last hour, with the week of the hours itself. */
const WEEKS = 2;

/** The rounds of the usual week that pass a system, as often as faults of the week ask for them; in order. */
export function usualLooks(facility: Pick<Facility, 'rounds'>, system: string, stretches: readonly Stretch[]): Look[] {
  const weeks = Array.from({ length: WEEKS }, (_, week) => week * WEEK);
  return walked(
    roundsOf(facility, system).flatMap(({ key, days, at, sees }) =>
      weeks.flatMap((s) => days.map((day) => ({ key, atS: s + weekSecond(day, at), sees: new Set(sees) }))),
    ),
    stretches,
  );
}

/** Rounds that pass a system. */
export function roundsOf({ rounds }: Pick<Facility, 'rounds'>, system: string): Facility['rounds'] {
  return rounds.filter(({ systems }) => systems === undefined || systems.includes(system));
}

/** Those that find somebody to walk them, in order. */
export function walked(all: readonly Omit<Look, 'walkers'>[], stretches: readonly Stretch[]): Look[] {
  const onSite = stretches.filter(({ kind }) => kind === 'on-site');
  return all
    .map((look) => ({ ...look, walkers: peopleAt(onSite, look.atS) }))
    .filter(({ walkers }) => walkers.length > 0)
    .sort((a, b) => a.atS - b.atS);
}

function peopleAt(onSite: readonly Stretch[], atS: number): string[] {
  return [...new Set(onSite.filter(({ fromS, toS }) => fromS <= atS && atS < toS).map(({ person }) => person))];
}

/** A look that would show a course, and how long after the onset it begins to. */
interface Meeting {
  look: Look;
  fromS: number;
}

/** The looks that would show any of some signs. */
export function meetingsOf(looks: readonly Look[], signs: readonly [Aspect, number][]): Meeting[] {
  return looks.flatMap((look) => {
    const fromS = Math.min(...signs.filter(([aspect]) => look.sees.has(aspect)).map(([, s]) => s));
    return Number.isFinite(fromS) ? [{ look, fromS }] : [];
  });
}

/** The first look after an onset at which the course shows; one at the very onset has just gone past. */
export function firstLook(
  meetings: readonly Meeting[],
  onsetS: number,
  fits: (look: Look) => boolean = () => true,
): { look: Look; afterS: number } | null {
  for (let at = firstAfter(meetings, onsetS); at < meetings.length; at++) {
    const { look, fromS } = meetings[at] as Meeting;
    const afterS = look.atS - onsetS;
    if (afterS < fromS || !fits(look)) continue;
    return afterS <= HORIZON ? { look, afterS } : null;
  }
  return null;
}

/** Index of the first meeting after an onset; they stand in order. */
function firstAfter(meetings: readonly Meeting[], onsetS: number): number {
  let [low, high] = [0, meetings.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((meetings[middle] as Meeting).look.atS <= onsetS) low = middle + 1;
    else high = middle;
  }
  return low;
}
