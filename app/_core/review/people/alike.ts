import { MINUTE } from '../../time/week';
import type { WeakStretch } from './weakest';

/** Weak stretches of several days that say the same, told once. */
export interface AlikeStretches extends WeakStretch {
  /** Days of the week on which such a stretch begins, 0 = Monday; in order. */
  days: number[];
}

/**
 * Stretches of a usual week that differ by their day alone, put together: the same hours of the day, fault case, way and person, and
 * as much to spare, to the minute. In the order given.
 */
export function alikeStretches(stretches: readonly WeakStretch[]): AlikeStretches[] {
  const found = new Map<string, AlikeStretches>();
  for (const one of stretches) {
    const id = sameness(one);
    const day = Math.floor(one.from / 24);
    const known = found.get(id);
    if (known) known.days = [...known.days, day].sort((a, b) => a - b);
    else found.set(id, { ...one, days: [day] });
  }
  return [...found.values()];
}

function sameness({ system, from, worst, hours, spareS, case: { id }, way }: WeakStretch): string {
  const who = way ? [way.by, way.key, way.come?.kind, way.come?.person, ...way.walkers] : [];
  return [system, from % 24, worst % 24, hours, Math.round(spareS / MINUTE), id, ...who].join(' ');
}
