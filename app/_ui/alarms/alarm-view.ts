import type { AlarmDefinition, RaisedBy } from '#core/alarms/definition';
import type { Channel } from '#core/alarms/channels';
import type { Priority } from '#core/alarms/design/priority';
import { callsWhen, workedSaid } from '#core/alarms/design/words';
import type { AlarmState } from '#core/alarms/life/machine';
import type { CallState } from '#core/alarms/told';
import type { ToTell } from '#core/alarms/to-tell';
import type { SensorQuantity } from '#core/facility/system';
import { readingSaid } from '#core/readings/figures';
import type { Quality } from '#core/readings/reading';
import type { Custom } from '#core/units/shown';
import { siteAddress } from '../frame/site-address';

/** What an alarm watched when it was raised. */
export interface WatchedView extends Pick<AlarmDefinition, 'name' | 'delayS' | 'deadBand' | 'answeredBy'> {
  on: RaisedBy;
  offDelayS?: number | undefined;
  whatToDo?: string | undefined;
  priority?: AlarmDefinition['priority'] | undefined;
  /** What the review proposed when it was raised. */
  proposed?: Priority | undefined;
  escalateAfterMin?: number | undefined;
  quantity?: SensorQuantity | undefined;
  limits?: { above?: number | undefined; below?: number | undefined } | undefined;
}

/** Somebody who was to be told, and how that went; repeats that ended alike are one. Instants in ISO, UTC. */
export interface ToldView {
  names: string[];
  why: ToTell['why'];
  /** How often the alarm had called anew by then. */
  again: number;
  channel: Channel;
  state: CallState;
  /** What was said of the last attempt; null where nothing was. */
  detail: string | null;
  /** Whether the same person was called since in the same way. */
  isCalledSince: boolean;
  from: string;
  to: string;
  times: number;
}

/** One time that an alarm was raised, as a list shows it. Instants in ISO, UTC. */
export interface AlarmView {
  id: string;
  /** Id of the alarm. */
  alarm: string;
  name: string;
  system: { key: string; name: string };
  state: AlarmState;
  /** How often it has called anew since it was raised, and by what last. */
  again: number;
  calledBy: { kind: string; detail: Record<string, unknown> };
  /** The time another alarm was raised that explains it: its first cause. */
  causeId: string | null;
  /** Name of whoever called for help; null where readings raised it. */
  caller: string | null;
  definition: WatchedView;
  beganAt: string;
  raisedAt: string;
  returnedAt: string | null;
  endedBy: 'definition-changed' | 'retired' | null;
  value: number | null;
  latest: { value: number; quality: Quality; at: string; isStale: boolean } | null;
  acknowledged: { by: string; at: string; from: string | null; note: string | null } | null;
  told: ToldView[];
  isRetired: boolean;
  newer: string | null;
}

/** A site as the pages of its alarms need it. */
export interface SiteView {
  key: string;
  name: string;
  /** IANA zone. */
  zone: string;
}

/** Address of the page of an alarm. */
export function alarmAddress(site: string, occurrence: string): string {
  return siteAddress(site, 'alarms', occurrence);
}

/** A value of what an alarm watches, with its unit. */
export function valueSaid({ on, quantity }: WatchedView, value: number, units: Custom): string {
  return workedSaid(on, quantity, value, units) ?? plainSaid(quantity, value, units);
}

function plainSaid(quantity: SensorQuantity | undefined, value: number, units: Custom): string {
  if (quantity === undefined) return String(value);
  return readingSaid(quantity, units, value);
}

/** What an alarm watches that is no reading; null where it is one. */
export function watchedElse({ on }: WatchedView): string | null {
  if (on.kind === 'silent' || on.kind === 'silent-sensor') return 'it watches for silence';
  return on.kind === 'state-outstayed' ? 'it watches how long a state lasts' : null;
}

/** The priority of an alarm, and who says so; null where nobody does. */
export function prioritySaid({ priority, proposed }: WatchedView): string | null {
  if (priority) return `${priority.level} priority`;
  return proposed ? `${proposed} priority, by the review` : null;
}

/** What an alarm calls for: "calls above 26.5 °C". */
export function limitSaid({ on, limits, quantity }: WatchedView, units: Custom): string {
  return `calls ${callsWhen(on, { quantity, limits, custom: units })}`;
}

/** Why somebody is told, as an aside to their name. */
export const WHY_TOLD: Readonly<Record<ToTell['why'], string>> = {
  'on-site': 'on site',
  'on-call': 'on call',
  named: 'named by the alarm',
  lead: 'after nobody acknowledged',
  'nobody-on': 'nobody was on',
  'no-account': 'nobody who was to answer has an account',
};

/** How it stands with telling somebody. */
export const CALL_WORDS: Readonly<Record<CallState, string>> = {
  waiting: 'being told',
  taken: 'sent',
  failing: 'failed, tried again',
  'no-way': 'could not be told',
  'not-needed': 'not needed: acknowledged first',
  'given-up': 'could not be told before it was acknowledged',
};
