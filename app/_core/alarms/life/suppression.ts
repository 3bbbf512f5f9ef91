/**
 * What it knows: what keeps an alarm from calling though it is true (shelved by a person, suppressed by design in an
 * operating state, out of service with an owner), for how long that may be, and of which alarms never or hardly.
 * What it leaves out: who may do it, which the gate knows.
 * Where the numbers come from: common practice, no source; the database holds the longest of them as well.
 */
import type { StateName, System } from '../../facility/system';
import type { AlarmDefinition } from '../definition';

/** The one that is shown when there are several stands first. */
export const SUPPRESSIONS = ['out-of-service', 'shelved', 'by-design'] as const;
export type SuppressionKind = (typeof SUPPRESSIONS)[number];

/** What harms animals or people within minutes or hours, by the name of what is measured. */
const NEVER: ReadonlySet<string> = new Set(['oxygen', 'oxygen-saturation', 'oxidant', 'redox', 'leak']);

/**
 * Whether an alarm is one that is never suppressed by design nor folded under another: oxygen, high temperature, oxidant and
 * leak, by limit or by rate. It may be shelved or out of service by a lead alone, and for a short time.
 */
export function isNeverSuppressed({ sensors }: Pick<System, 'sensors'>, { on }: Pick<AlarmDefinition, 'on'>): boolean {
  if (on.kind !== 'sensor' && on.kind !== 'rate') return false;
  const quantity = sensors.find(({ key }) => key === on.sensor)?.quantity;
  // A series that is worked out of others is known by its key alone.
  if (quantity === undefined) return [...NEVER].some((name) => on.sensor.includes(name));
  if (NEVER.has(quantity)) return true;
  return quantity === 'temperature' && (on.kind === 'sensor' ? on.above !== undefined : on.risesPerHour !== undefined);
}

/** Hours an alarm may be shelved at most, by its priority; a shift where it has none. */
const SHELF_H = { high: 4, medium: 8, low: 24 } as const;
const SHIFT_H = 8;
/** Hours one that is never suppressed may be shelved, and out of service. */
const NEVER_SHELF_H = 1;
const NEVER_OUT_H = 8;
/** Hours any other may be out of service: two weeks. */
const OUT_H = 336;

/**
 * Hours after which shelving or being out of service ends by itself at the latest; it may be asked for again then.
 *
 * @param isNever   whether the alarm is one that is never suppressed
 */
export function longestH(
  kind: Exclude<SuppressionKind, 'by-design'>,
  { priority }: Pick<AlarmDefinition, 'priority'>,
  isNever: boolean,
): number {
  if (kind === 'out-of-service') return isNever ? NEVER_OUT_H : OUT_H;
  if (isNever) return NEVER_SHELF_H;
  return priority === undefined ? SHIFT_H : SHELF_H[priority.level];
}

/** An operating state a system is in, and when it is meant to be over. */
export interface StateNow {
  state: StateName;
  run: string;
  untilMs: number;
}

/**
 * The operating state that suppresses an alarm by design now. One that has outstayed its end suppresses nothing any more:
 * what is suppressed must end by itself.
 *
 * @param states   those its system is in
 * @param nowMs    ms since 1970
 * @returns        the one that lasts longest; null when none does
 */
export function suppressedBy(
  system: Pick<System, 'sensors'>,
  alarm: Pick<AlarmDefinition, 'on' | 'suppressedIn'>,
  states: readonly StateNow[],
  nowMs: number,
): StateNow | null {
  if (isNeverSuppressed(system, alarm)) return null;
  const within = states.filter(
    ({ state, untilMs }) => untilMs > nowMs && alarm.suppressedIn?.some((name) => name === state),
  );
  return within.sort((a, b) => b.untilMs - a.untilMs)[0] ?? null;
}
