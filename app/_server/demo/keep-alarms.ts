import 'server-only';
import type { EventKind } from '#data/alarms/occurrences';
import { saveWatches, type StoredWatch } from '#data/alarms/watches';
import { addPastAlarms, type PastCallRow, type PastEventRow, type PastOccurrenceRow } from '#data/demo/past-alarms';
import { keepOpen, type OpenRow, UNTOLD } from '#data/alarms/occurrences';
import type { Life } from '../../../seed/past/lives';
import { idFor } from '../../../seed/past/seeded-id';
import { type DefinedAlarm, definedAlarms } from '../alarms/defined-alarms';
import { type Telling, tell } from './told';

/** Id of a time that an alarm was raised. */
export function occurrenceId({ past }: Telling, { raised }: Life): string {
  return idFor(raised.raisedMs, past.facility.site.key, raised.system, raised.alarm);
}

/**
 * Keeps each time that an alarm was raised, who was called and who acknowledged, and where every alarm stands now: whoever
 * judges what arrives next goes on from there.
 *
 * @param revision   of the site
 */
export async function keepAlarms(telling: Telling, revision: number): Promise<void> {
  const { tx, siteId, past, idOf } = telling;
  const defined = await definedAlarms(tx, siteId, revision);
  const alarmOf = (system: string, alarm: string): DefinedAlarm => {
    const found = defined?.alarms.get(idOf('alarm_definition', system, alarm));
    if (!found) throw new Error(`${system} has no alarm ${alarm}`);
    return found;
  };
  const lives = past.lives.map((life) => ({ life, alarm: alarmOf(life.raised.system, life.raised.alarm) }));
  const rows = lives.map(({ life, alarm }) => occurrenceRow(telling, life, alarm));
  const events = lives.flatMap(({ life, alarm }) => eventsOf(telling, life, alarm));
  await addPastAlarms(
    tx,
    siteId,
    rows,
    events,
    past.lives.flatMap((life) => callsOf(telling, life)),
  );
  await keepOpen(tx, siteId, lives.map(({ life, alarm }) => openRow(telling, life, alarm)).filter(isOpen));
  await saveWatches(tx, siteId, watchesOf(telling, alarmOf));
}

function isOpen({ active, acknowledged }: OpenRow): boolean {
  return active || !acknowledged;
}

function occurrenceRow(telling: Telling, life: Life, { id, systemId, kept }: DefinedAlarm): PastOccurrenceRow {
  const { beganMs, raisedMs, value } = life.raised;
  const [beganAt, raisedAt] = [new Date(beganMs), new Date(raisedMs)];
  return { id: occurrenceId(telling, life), alarmId: id, systemId, beganAt, raisedAt, value, definition: kept };
}

/** What became of it: an event each, with its line in the record. */
function eventsOf(telling: Telling, life: Life, { id: alarm, definition }: DefinedAlarm): PastEventRow[] {
  const { raised, calls, step, escalated, acknowledged } = life;
  const occurrence = occurrenceId(telling, life);
  const said = { alarm, occurrence };
  const events: PastEventRow[] = [];
  const add = (kind: EventKind & PastEventRow['kind'], atMs: number, detail: Record<string, unknown>, more = {}) => {
    const blank = { by: null, from: null, note: null, detail };
    events.push({
      id: idFor(atMs, occurrence, kind),
      occurrenceId: occurrence,
      kind,
      at: new Date(atMs),
      ...blank,
      ...more,
    });
  };
  const first = calls.filter((call) => call.madeMs === raised.raisedMs).length;
  add('raised', raised.raisedMs, definition.answeredBy === 'nobody' ? { answeredBy: 'nobody' } : { step, told: first });
  const began = new Date(raised.beganMs).toISOString();
  tell(telling, raised.raisedMs, 'alarm-raised', { ...said, began, value: raised.value });
  for (const { atMs, step: reached, told, ...more } of escalated) {
    const why = atMs === raised.raisedMs ? (calls[0]?.why ?? 'nobody-on') : 'lead';
    const detail = { step: reached, why, told, ...more };
    add('escalated', atMs, detail);
    tell(telling, atMs, 'alarm-escalated', { ...said, ...detail });
  }
  if (acknowledged) {
    const { atMs, person, from, note } = acknowledged;
    const by = telling.accountOf(person);
    add('acknowledged', atMs, {}, { by, from, note });
    tell(telling, atMs, 'alarm-acknowledged', { by, ...said, ...(note === null ? {} : { note }) });
  }
  if (raised.returned) {
    const detail = { at: new Date(raised.returned.atMs).toISOString(), value: raised.returned.value };
    add('returned', raised.returned.knownMs, detail);
    tell(telling, raised.returned.knownMs, 'alarm-returned', { ...said, ...detail });
  }
  return events;
}

function callsOf(telling: Telling, life: Life): PastCallRow[] {
  const occurrence = occurrenceId(telling, life);
  return life.calls.map(({ step, person, why, madeMs, takenMs }) => {
    const id = idFor(madeMs, occurrence, String(step), person);
    const times = { madeAt: new Date(madeMs), tryId: idFor(takenMs, id), takenAt: new Date(takenMs) };
    return { id, occurrenceId: occurrence, step, accountId: telling.accountOf(person), why, ...times };
  });
}

function openRow(telling: Telling, life: Life, { id, systemId }: DefinedAlarm): OpenRow {
  const { raised, escalated, step, nextStepMs } = life;
  return {
    occurrenceId: occurrenceId(telling, life),
    alarmId: id,
    systemId,
    raisedAt: new Date(raised.raisedMs),
    ...UNTOLD,
    active: raised.returned === null,
    acknowledged: life.acknowledged !== null,
    latched: false,
    suppressed: false,
    step: escalated.at(-1)?.step ?? step,
    nextStepAt: nextStepMs === null ? null : new Date(nextStepMs),
  };
}

function watchesOf(telling: Telling, alarmOf: (system: string, alarm: string) => DefinedAlarm): StoredWatch[] {
  const { watched, lives } = telling.past;
  return watched.map(({ system, alarm, watch, raised }) => {
    const last = raised.at(-1);
    const life = last && last.returned === null ? lives.find((one) => one.raised === last) : undefined;
    const { id, print } = alarmOf(system, alarm);
    return { alarmId: id, watch, occurrenceId: life ? occurrenceId(telling, life) : null, definition: print };
  });
}
