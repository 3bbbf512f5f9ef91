import 'server-only';
import { CHANNEL_WORDS, CHANNELS, type Channel } from '#core/alarms/channels';
import type { SensorQuantity } from '#core/facility/system';
import type { Doer, TimelineLine } from '#core/incidents/timeline';
import type { AlarmCallRow, AlarmEventRow, NearAlarm } from '#data/incidents/near-alarms';
import { thingIn } from './definition';

type DoerOf = (id: string | null) => Doer | null;
type QuantityOf = (sensor: string) => SensorQuantity | undefined;

const EVENTS: Readonly<Record<string, string>> = {
  raised: 'raised',
  returned: 'returned to normal',
  acknowledged: 'acknowledged',
  'acknowledged-too': 'acknowledged by somebody else as well',
  noted: 'note',
  escalated: 'nobody had acknowledged it: the next people are told',
  'raised-again': 'raised again before it was reset',
  recalled: 'called again after it was acknowledged',
  reset: 'reset',
  'reset-refused': 'was not reset: what it watches still held',
  suppressed: 'calls nobody: shelved, suppressed by design or out of service',
  unsuppressed: 'calls again: what kept it from calling ended',
  unfolded: 'calls by itself: its first cause no longer does',
};
const WHY: Readonly<Record<string, string>> = {
  'on-site': 'on site',
  'on-call': 'on call',
  named: 'named for this alarm',
  lead: 'leads and managers',
  'nobody-on': 'nobody was on',
};

/** The alarms near an incident, with their life, and who was told. @param quantityOf of a sensor, by its key */
export function alarmLines(alarms: readonly NearAlarm[], doerOf: DoerOf, quantityOf: QuantityOf): TimelineLine[] {
  return alarms.flatMap((alarm) => [
    ...alarm.events.map((event) => eventLine(alarm, event, doerOf, quantityOf)),
    ...(alarm.events.some(({ kind }) => kind === 'raised') ? [] : [raisedLine(alarm, quantityOf)]),
    ...alarm.calls.flatMap((call) => callLines(alarm, call, doerOf)),
  ]);
}

function eventLine(alarm: NearAlarm, event: AlarmEventRow, doerOf: DoerOf, quantityOf: QuantityOf): TimelineLine {
  const { id, kind, at, by, from, note } = event;
  const isRaised = kind === 'raised';
  const said = [`Alarm “${alarm.alarm.name}” ${EVENTS[kind] ?? kind}`, from && `from ${from}`, note].filter(Boolean);
  return {
    id,
    atMs: at.getTime(),
    topic: 'alarm',
    what: said.join('. '),
    who: doerOf(by),
    source: by === null ? 'device' : 'witness',
    ...(isRaised ? { figures: figuresOf(alarm, quantityOf), isAbnormal: true } : {}),
  };
}

/** An occurrence whose raising is not told among its events. */
function raisedLine(alarm: NearAlarm, quantityOf: QuantityOf): TimelineLine {
  const event = { id: alarm.id, kind: 'raised', at: alarm.raisedAt, by: null, from: null, note: null };
  return eventLine(alarm, event, () => null, quantityOf);
}

function figuresOf({ definition, value }: NearAlarm, quantityOf: QuantityOf): TimelineLine['figures'] {
  const sensor = thingIn(definition, 'sensor');
  const quantity = sensor === undefined ? undefined : quantityOf(sensor);
  return quantity === undefined || value === null ? [] : [{ quantity, value }];
}

/** What a way is called, and what it says of a message it took. */
function wayOf(channel: string): string {
  return isChannel(channel) ? CHANNEL_WORDS[channel].name : channel;
}
function takenBy(channel: string): string {
  return isChannel(channel) ? CHANNEL_WORDS[channel].taken : 'it was taken';
}
function isChannel(channel: string): channel is Channel {
  return CHANNELS.some((one) => one === channel);
}

function callLines({ alarm }: NearAlarm, call: AlarmCallRow, doerOf: DoerOf): TimelineLine[] {
  const who = doerOf(call.accountId);
  const because = WHY[call.why] ?? call.why;
  const shared = { topic: 'call', who, source: 'device' } as const;
  const told = `by ${wayOf(call.channel)}, step ${call.step} (${because})`;
  return [
    { ...shared, id: call.id, atMs: call.madeAt.getTime(), what: `To be told of “${alarm.name}” ${told}` },
    ...call.attempts.map(({ id, at, result, detail }): TimelineLine => {
      const came = result === 'taken' ? takenBy(call.channel) : result === 'no-way' ? 'there was no way' : 'it failed';
      const what = `Call of “${alarm.name}”: ${came}${detail ? ` (${detail})` : ''}`;
      return { ...shared, id, atMs: at.getTime(), what, ...(result === 'taken' ? {} : { isAbnormal: true }) };
    }),
  ];
}
