import type { Facility } from '../facility/facility';
import { type Cover, staffed } from '../rota/cover';
import { forward, WEEK, weekSecond } from '../time/week';
import type { Aspect } from './slot';

/** One round in the week: when (s since Monday 00:00) and what is looked at. */
export interface Walk {
  key: string;
  atS: number;
  sees: ReadonlySet<Aspect>;
}

/** The rounds that pass a system and find somebody on site to walk them. */
export function walksOf(facility: Facility, system: string, cover: Cover): Walk[] {
  return facility.rounds
    .filter((slot) => slot.systems === undefined || slot.systems.includes(system))
    .flatMap((slot) =>
      slot.days.map((day) => ({ key: slot.key, atS: weekSecond(day, slot.at), sees: new Set(slot.sees) })),
    )
    .filter((walk) => staffed(cover, walk.atS));
}

/** A round that meets some sign, s after the onset from which it does. */
interface Meeting {
  key: string;
  atS: number;
  fromS: number;
}

/** The rounds that meet one of several signs, so that they can be asked for many onsets. */
export function meetings(walks: readonly Walk[], signs: ReadonlyMap<Aspect, number>): Meeting[] {
  return walks.flatMap(({ key, atS, sees }) => {
    let fromS = Number.POSITIVE_INFINITY;
    for (const [aspect, s] of signs) if (sees.has(aspect) && s < fromS) fromS = s;
    return Number.isFinite(fromS) ? [{ key, atS, fromS }] : [];
  });
}

/**
 * First round that meets one of several signs.
 * @param onsetS s since Monday 00:00 at which the fault begins
 * @param signs for each aspect, s after the onset from which it shows
 * @param untilS s after the onset within which to look
 * @returns s after the onset, and the round; null when none does
 */
export function firstSeen(
  walks: Walk[],
  onsetS: number,
  signs: Map<Aspect, number>,
  untilS: number,
): { afterS: number; key: string } | null {
  return firstMeeting(meetings(walks, signs), onsetS, untilS);
}

/** First of some meetings after an onset; see `firstSeen`. */
export function firstMeeting(
  list: readonly Meeting[],
  onsetS: number,
  untilS: number,
): { afterS: number; key: string } | null {
  let first: { afterS: number; key: string } | null = null;
  for (const { key, atS, fromS } of list) {
    // The first time this weekly round comes by with the sign already there. One at the very onset has just gone past:
    // hours stand for all that begins within them.
    let afterS = forward(onsetS, atS) || WEEK;
    if (afterS < fromS) afterS += Math.ceil((fromS - afterS) / WEEK) * WEEK;
    if (afterS <= untilS && (first === null || afterS < first.afterS)) first = { afterS, key };
  }
  return first;
}
