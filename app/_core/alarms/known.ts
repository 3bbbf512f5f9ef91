/**
 * The second of four questions: what does a person know? Two facts are kept apart, whether what the alarm watches still
 * holds and whether somebody has said that they saw it, and its state is what follows from them (IEC 62682, ISA-18.2).
 */

/** What is known of one time that an alarm was raised. */
export interface Known {
  /** Whether it still holds. */
  active: boolean;
  acknowledged: boolean;
}

/** Raised and not acknowledged; acknowledged and still active; returned to normal and not acknowledged; over. */
export const ALARM_STATES = ['unacknowledged', 'acknowledged', 'returned', 'over'] as const;
export type AlarmState = (typeof ALARM_STATES)[number];

/** What happens to it. It is raised anew as another one, which hides nothing of this. */
export type Happening = 'acknowledged' | 'returned';

/** Just raised. */
export const RAISED: Known = { active: true, acknowledged: false };

/** The state that follows from what is known. */
export function stateOf({ active, acknowledged }: Known): AlarmState {
  if (active) return acknowledged ? 'acknowledged' : 'unacknowledged';
  return acknowledged ? 'over' : 'returned';
}

/** Whether it wants something still: it holds, or nobody has seen it. */
export function isOpen(known: Known): boolean {
  return stateOf(known) !== 'over';
}

/**
 * What is known after something happened. What was acknowledged stays so, whoever presses later and whatever returns.
 *
 * @returns   null when it changes nothing: it had happened already
 */
export function after(known: Known, happening: Happening): Known | null {
  if (happening === 'acknowledged') return known.acknowledged ? null : { ...known, acknowledged: true };
  return known.active ? { ...known, active: false } : null;
}
