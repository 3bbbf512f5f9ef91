import type { Condition, Limits, Silence, Still } from '#core/alarms/condition';
import { beginWatch, hold, pass, type Seen, type Turn, type Watch } from '#core/alarms/is-true';
import type { AlarmState } from '#core/alarms/life/machine';
import { after, isOpen, type Known, raised, stateOf } from '#core/alarms/known';

/** Above 26.5, back at 26.2, without delays. */
export function limits(given: Partial<Limits> = {}): Limits {
  return {
    kind: 'limits',
    sensor: 'probe',
    above: 26.5,
    deadBand: 0.3,
    delayS: 0,
    offDelayS: 0,
    isCarried: true,
    ...given,
  };
}

/** Nothing from one probe for a minute. */
export function silence(given: Partial<Silence> = {}): Silence {
  return {
    kind: 'silence',
    sensors: ['probe'],
    anyWord: false,
    delayS: 60,
    offDelayS: 0,
    isCarried: true,
    ...given,
  };
}

/** The same from one probe for a minute. */
export function still(given: Partial<Still> = {}): Still {
  return { kind: 'still', sensor: 'probe', within: 0, delayS: 60, offDelayS: 0, isCarried: true, ...given };
}

/** A good reading of a device at a second. */
export function reading(atS: number, value: number, given: Partial<Seen> = {}): Seen {
  return { atMs: atS * 1000, cameMs: atS * 1000, value, quality: 'good', isByHand: false, ...given };
}

/** One time that it was raised. */
export interface Raised {
  beganS: number;
  known: Known;
}

/** An alarm as a test follows it. */
export interface Followed {
  watch: Watch;
  /** Every time that it was raised, oldest first. */
  raised: Raised[];
}

export function follow(condition: Condition): Followed {
  return { watch: beginWatch(condition, 0), raised: [] };
}

function take(followed: Followed, turn: Turn | null): void {
  if (turn?.kind === 'raised') followed.raised.push({ beganS: turn.atMs / 1000, known: raised(false) });
  const last = followed.raised.at(-1);
  if (turn?.kind === 'returned' && last) last.known = after(last.known, 'returned') ?? last.known;
}

/** A reading comes. */
export function see(condition: Condition, followed: Followed, seen: Seen): void {
  for (const { watch, turn } of hold(condition, followed.watch, seen)) {
    followed.watch = watch;
    take(followed, turn);
  }
}

/** The clock shows a second. */
export function tick(condition: Condition, followed: Followed, atS: number): void {
  const { watch, turn } = pass(condition, followed.watch, atS * 1000);
  followed.watch = watch;
  take(followed, turn);
}

/** Somebody acknowledges the time it was raised that they see: the newest one, or another. */
export function acknowledge({ raised }: Followed, which = raised.length - 1): void {
  const seen = raised[which];
  if (seen) seen.known = after(seen.known, 'acknowledged') ?? seen.known;
}

/** The state of the newest time it was raised, as the four-state tables have it. */
export function state({ raised }: Followed): AlarmState {
  const last = raised.at(-1);
  return last ? stateOf(last.known) : 'over';
}

/** Times it was raised that still want something. */
export function open({ raised }: Followed): Raised[] {
  return raised.filter(({ known }) => isOpen(known));
}
