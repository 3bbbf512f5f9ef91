/**
 * The second of four questions: what does a person know? Separate facts are kept, whether what the alarm watches still
 * holds, whether somebody has said that they saw it, whether it stays until it is reset and whether it is suppressed; its
 * state is what follows from them (IEC 62682, ISA-18.2).
 */
import { type AlarmChange, type AlarmState, stateAfter } from './life/machine';

/** What is known of one time that an alarm was raised. */
export interface Known {
  /** Whether it still holds. */
  active: boolean;
  /** Since it last called. */
  acknowledged: boolean;
  /** Whether it stays when it is back to normal, until somebody resets it. */
  latched: boolean;
  /** Whether its alarm is shelved, suppressed by design or out of service. */
  suppressed: boolean;
}

/** Facts of each state; of whether it is latched where the state does not tell, `null`. */
const FACTS: Readonly<Record<AlarmState, Omit<Known, 'latched'> & { latched: boolean | null }>> = {
  unacknowledged: { active: true, acknowledged: false, latched: null, suppressed: false },
  acknowledged: { active: true, acknowledged: true, latched: null, suppressed: false },
  returned: { active: false, acknowledged: false, latched: false, suppressed: false },
  'latched-unacknowledged': { active: false, acknowledged: false, latched: true, suppressed: false },
  'latched-acknowledged': { active: false, acknowledged: true, latched: true, suppressed: false },
  suppressed: { active: true, acknowledged: false, latched: null, suppressed: true },
  'suppressed-latched-unacknowledged': { active: false, acknowledged: false, latched: true, suppressed: true },
  'suppressed-latched-acknowledged': { active: false, acknowledged: true, latched: true, suppressed: true },
  over: { active: false, acknowledged: true, latched: false, suppressed: false },
};

/** Just raised. @param latched whether it stays until somebody resets it */
export function raised(latched: boolean): Known {
  return { ...FACTS.unacknowledged, latched };
}

/** The state that follows from what is known. */
export function stateOf({ active, acknowledged, latched, suppressed }: Known): AlarmState {
  if (suppressed) {
    if (active) return 'suppressed';
    return acknowledged ? 'suppressed-latched-acknowledged' : 'suppressed-latched-unacknowledged';
  }
  if (active) return acknowledged ? 'acknowledged' : 'unacknowledged';
  if (latched) return acknowledged ? 'latched-acknowledged' : 'latched-unacknowledged';
  return acknowledged ? 'over' : 'returned';
}

/** Whether it wants something still: it holds, nobody has seen it, or nobody has reset it. */
export function isOpen(known: Known): boolean {
  return stateOf(known) !== 'over';
}

/** Whether somebody is to be called for it: it is not acknowledged, and nothing suppresses it. */
export function isCalling({ acknowledged, suppressed }: Pick<Known, 'acknowledged' | 'suppressed'>): boolean {
  return !(acknowledged || suppressed);
}

/**
 * What is known after something happened.
 *
 * @returns   null when it cannot happen as it stands: it had happened already, or comes too late
 */
export function after(known: Known, change: AlarmChange): Known | null {
  const state = stateAfter(stateOf(known), change, known.latched);
  if (state === null) return null;
  const facts = FACTS[state];
  return { ...facts, latched: facts.latched ?? known.latched };
}
