import type { AlarmView } from './alarm-view';

/** A time that an alarm was raised, as a page showed it. */
export type FoldedTime = Pick<AlarmView, 'id' | 'again'>;

/** Those of a list that can be acknowledged with their first cause. */
export function toAcknowledge<T extends FoldedTime & Pick<AlarmView, 'state'>>(under: readonly T[]): T[] {
  return under.filter(({ state }) => UNSEEN.has(state));
}

const UNSEEN: ReadonlySet<AlarmView['state']> = new Set(['unacknowledged', 'latched-unacknowledged', 'returned']);
