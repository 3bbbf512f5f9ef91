import { DAYS, type Day } from '../facility/site';
import type { RoundSlot } from './slot';

/** Days of a week on which something may be looked at and still count as seldom. Common practice, no source. */
const SELDOM_DAYS = 3;

/** Whether a round looks at all that another one looks at, in every system that it walks. */
export function covers(one: RoundSlot, other: RoundSlot): boolean {
  const systems =
    one.systems === undefined || (other.systems?.every((system) => one.systems?.includes(system)) ?? false);
  return systems && other.sees.every((aspect) => one.sees.includes(aspect));
}

/**
 * By which rule a round is late on a day: `shift` when it, or one that looks at the same, is walked more than once that day;
 * `week` when what it looks at is looked at on three days of the week or fewer; `day` otherwise.
 */
export function lateness(slot: RoundSlot, day: Day, slots: readonly RoundSlot[]): 'shift' | 'day' | 'week' {
  const others = slots.filter((other) => other.key !== slot.key);
  const isTwice = others.some((other) => other.days.includes(day) && (covers(other, slot) || covers(slot, other)));
  if (isTwice) return 'shift';
  const seen = [slot, ...others.filter((other) => covers(other, slot))];
  const days = DAYS.filter((one) => seen.some((round) => round.days.includes(one)));
  return days.length <= SELDOM_DAYS ? 'week' : 'day';
}
