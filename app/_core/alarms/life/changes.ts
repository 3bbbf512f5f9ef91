/** What happens to an alarm, and what becomes of the times it was raised by that. */
import { after, type Known } from '../known';
import type { AlarmChange } from './machine';

/** What can happen to an alarm by itself: its condition holds or no longer does; the first suppression begins, the last ends. */
export type Happening = 'condition-true' | 'condition-false' | 'suppressed' | 'unsuppressed';

/** A time that an alarm was raised and that still wants something. */
export interface OpenTime extends Known {
  id: string;
}

/** What becomes of one time it was raised; `new`: of one that begins. */
export interface Becomes {
  id: string;
  changes: AlarmChange[];
}

/** Stands for a time that is only now raised. */
export const NEW = 'new';

/**
 * What follows from something that happens to an alarm.
 *
 * A condition that comes back raises a new time, so that the earlier one does not vanish; of an alarm that is latched and was
 * not reset it raises the same one again. While the alarm is suppressed all of it is kept, and nobody is called.
 *
 * @param open        the times it was raised that still want something, the oldest first
 * @param suppressed  whether it is shelved, suppressed by design or out of service, as it is before this happens
 */
export function changesOf(happening: Happening, open: readonly OpenTime[], suppressed: boolean): Becomes[] {
  switch (happening) {
    case 'condition-true': {
      if (open.some(({ active }) => active)) return [];
      const latched = open.findLast((one) => after(one, 'raised-again') !== null);
      if (latched) return [{ id: latched.id, changes: ['raised-again'] }];
      return [{ id: NEW, changes: suppressed ? ['raised', 'suppressed'] : ['raised'] }];
    }
    case 'condition-false':
      return eachThatCan(open, 'returned');
    case 'suppressed':
      return eachThatCan(open, 'suppressed');
    case 'unsuppressed':
      return eachThatCan(open, 'unsuppressed');
  }
}

function eachThatCan(open: readonly OpenTime[], change: AlarmChange): Becomes[] {
  return open.filter((one) => after(one, change) !== null).map(({ id }) => ({ id, changes: [change] }));
}
