/**
 * What it knows: the states that one time an alarm was raised can be in, and what leads from one to another
 * (IEC 62682, ISA-18.2). The table beside it is the machine; the database holds every event to the same one.
 * What it leaves out: whether what is watched is true, and who is called.
 * Where it comes from: the model of the standard as published digests give it. Where these leave a choice it is said below.
 */
import table from './transitions.json';

/**
 * Raised and not acknowledged; latched, which a person resets, and not acknowledged; acknowledged and still active; latched and
 * acknowledged; back to normal and not acknowledged; the same while the alarm is shelved, suppressed by design or out of
 * service; over. In the order in which they are listed.
 */
export const ALARM_STATES = [
  'unacknowledged',
  'latched-unacknowledged',
  'acknowledged',
  'latched-acknowledged',
  'returned',
  'suppressed',
  'suppressed-latched-unacknowledged',
  'suppressed-latched-acknowledged',
  'over',
] as const;
export type AlarmState = (typeof ALARM_STATES)[number];

/** What leads from one state to another. `raised-again`: a latched alarm whose condition came back before anybody reset it. */
export const ALARM_CHANGES = [
  'raised',
  'acknowledged',
  'returned',
  'raised-again',
  'recalled',
  'reset',
  'suppressed',
  'unsuppressed',
] as const;
export type AlarmChange = (typeof ALARM_CHANGES)[number];

/** Changes after which it has to be acknowledged afresh: each calls anew, and an acknowledgement of before says nothing of it. */
export const CALLING_CHANGES: readonly AlarmChange[] = ['raised', 'raised-again', 'recalled', 'unsuppressed'];

interface Row {
  from: string;
  event: string;
  latched: boolean | null;
  to: string;
}

const rows = new Map<string, AlarmState>(
  (table as Row[]).flatMap(({ from, event, latched, to }) =>
    (latched === null ? [true, false] : [latched]).map((is) => [keyOf(from, event, is), to as AlarmState] as const),
  ),
);

function keyOf(from: string, event: string, latched: boolean): string {
  return `${from} ${event} ${latched}`;
}

/**
 * The state after something happened.
 *
 * Choices where the standard leaves one: a latched alarm whose condition comes back has to be acknowledged afresh; what was
 * back to normal and not acknowledged when its alarm was suppressed is over with that, as the suppression ends in normal;
 * what ends a suppression while it is active has to be acknowledged afresh, whether or not it was before.
 *
 * @param before   null when it has not been raised yet
 * @param latched  whether the alarm is one that stays until somebody resets it
 * @returns        null when it cannot happen in that state
 */
export function stateAfter(before: AlarmState | null, change: AlarmChange, latched: boolean): AlarmState | null {
  return rows.get(keyOf(before ?? 'none', change, latched)) ?? null;
}
