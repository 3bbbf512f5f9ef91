import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { Sensor } from '#core/facility/system';
import type { Facility } from '#core/facility/facility';
import { listRaises } from '#data/alarms/raises';
import { storeReadings } from '#data/readings/store-readings';
import { acknowledgeAlarm, acknowledgeAlarmShape } from '#server/alarms/acknowledge-alarm';
import { shelveAlarm } from '#server/alarms/shelve-alarm';
import type { Who } from '#server/gate/who';
import { sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { type AlarmSite, alarmSite, always, after as at, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew, ofRecord } = describedSite(query);
let site: AlarmSite;
let robin: Who;

beforeAll(() => vi.useFakeTimers({ toFake: ['Date'], now: at(0) }));
afterAll(() => vi.useRealTimers());
beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; UPDATE account SET email = id || $$@gone.example$$');
});

/** A blower that has a meter, flow that follows it in name, and warmth. */
function described(alarms: AlarmDefinition[], more: Sensor[] = []): Facility {
  const whole = withAlarms(alarms, [always('robin')]);
  const [system] = whole.systems;
  if (!system) throw new Error('no system');
  return { ...whole, systems: [{ ...system, sensors: [...system.sensors, ...more] }] };
}
const FLOW = sensor({ key: 'flow', name: 'Flow', quantity: 'flow', tank: 'display' });
const LEVEL = sensor({ key: 'level', name: 'Level', quantity: 'level', tank: 'display' });
const lowFlow = warm({ key: 'flow-low', name: 'Flow low', on: { kind: 'sensor', sensor: 'flow', below: 100 } });
const lowLevel = warm({ key: 'level-low', name: 'Level low', on: { kind: 'sensor', sensor: 'level', below: -20 } });

async function begin(alarms: AlarmDefinition[], more: Sensor[] = []): Promise<void> {
  site = await alarmSite(query, described(alarms, more));
  robin = await site.member('Robin', 'aquarist', 'robin');
  await judge(0);
}
async function judge(second: number): Promise<void> {
  vi.setSystemTime(at(second));
  await site.judge(second);
}
async function send(key: string, second: number, value: number): Promise<void> {
  const { rows } = await query('SELECT id FROM sensor WHERE site_id = $1 AND key = $2 AND retired_at IS NULL', [
    site.siteId,
    key,
  ]);
  const one = { sensorId: rows[0].id, at: at(second), value, quality: 'good', origin: 'device' } as const;
  await storeReadings(site.siteId, [one], { receivedAt: at(second) });
  await judge(second);
}
/** `alarm kind`, oldest first; those of calls with who was told. */
async function told(): Promise<string[]> {
  const { rows } = await query(
    `SELECT d.key || ' ' || e.kind AS said, e.detail FROM alarm_event e
       JOIN alarm_occurrence o ON o.id = e.occurrence_id JOIN alarm_definition d ON d.id = o.alarm_id
      WHERE e.kind <> 'escalated' ORDER BY e.at, e.id`,
  );
  return rows.map(({ said, detail }) => (detail.folded === undefined ? said : `${said}, folded`));
}
const calls = async () => (await site.calls()).length;
const acknowledge = async (which: number) => {
  const id = (await site.open())[which]?.id ?? '';
  return await acknowledgeAlarm(robin, { site: site.siteKey, occurrence: id, page: 'alarm' });
};

describe('a cascade', () => {
  test('calls once, for its first cause, and what is folded calls by itself when that no longer does', async () => {
    await begin([lowFlow, lowLevel], [FLOW, LEVEL]);
    await send('flow', 10, 50);
    await send('level', 20, -30);
    expect(await told()).toEqual(['flow-low raised', 'level-low raised, folded']);
    expect(await calls()).toBe(1);
    await send('flow', 30, 300);
    expect(await told()).toContain('level-low unfolded');
    expect(await calls()).toBe(2);
    const { rows } = await query('SELECT cause_id AS cause FROM alarm_occurrence ORDER BY id');
    expect(rows.map(({ cause }) => cause === null)).toEqual([true, false]);
  });

  test('is acknowledged with its first cause by one press, each alarm by an event and a record of its own', async () => {
    await begin([lowFlow, lowLevel], [FLOW, LEVEL]);
    await send('flow', 10, 50);
    await send('level', 20, -30);
    const { rows } = await query('SELECT id FROM alarm_occurrence WHERE site_id = $1 ORDER BY id', [site.siteId]);
    const [cause, under] = rows.map(({ id }) => String(id));
    const place = { site: site.siteKey, occurrence: cause };
    const press = async (folded: string) =>
      await acknowledgeAlarm(robin, acknowledgeAlarmShape.parse({ ...place, again: 0, note: 'on my way', folded }));
    // Another alarm's id, and its own, are none of those folded under it.
    expect(await press(`${cause}:0`)).toMatchObject({ value: { kind: 'first', folded: { acknowledged: 0, left: 1 } } });
    expect(await press(`${under}:0`)).toMatchObject({ value: { kind: 'again', folded: { acknowledged: 1, left: 0 } } });
    expect(await site.open()).toMatchObject([{ acknowledged: true }, { acknowledged: true }]);
    const said = (await query(`SELECT occurrence_id AS id, by, note FROM alarm_event WHERE kind = 'acknowledged'`))
      .rows;
    expect(said).toEqual([cause, under].map((id) => ({ id, by: robin.id, note: 'on my way' })));
    expect((await ofRecord('alarm-acknowledged')).map(({ occurrence }) => occurrence)).toEqual([cause, under]);
    expect(acknowledgeAlarmShape.safeParse({ ...place, folded: 'all of them' }).success).toBe(false);
  });

  test('that begins with what is shelved folds nothing: whoever was silenced must not silence the rest', async () => {
    await begin([lowFlow, lowLevel], [FLOW, LEVEL]);
    const { rows } = await query(`SELECT id FROM alarm_definition WHERE key = 'flow-low' AND site_id = $1`, [
      site.siteId,
    ]);
    await shelveAlarm(robin, { site: site.siteKey, alarm: rows[0].id, hours: 1, reason: 'cleaning the sensor' });
    await send('flow', 10, 50);
    expect(await calls()).toBe(0);
    await send('level', 20, -30);
    expect(await told()).toEqual(['flow-low raised', 'flow-low suppressed', 'level-low raised']);
    expect(await calls()).toBe(1);
  });
});

describe('shelved', () => {
  test('an alarm calls nobody until its time is up, and then calls when it is still active', async () => {
    await begin([lowFlow], [FLOW]);
    const { rows } = await query(`SELECT id FROM alarm_definition WHERE key = 'flow-low' AND site_id = $1`, [
      site.siteId,
    ]);
    const shelve = (hours: number) =>
      shelveAlarm(robin, { site: site.siteKey, alarm: rows[0].id, hours, reason: 'cleaning the sensor' });
    await send('flow', 10, 50);
    await acknowledge(0);
    expect(await shelve(9)).toMatchObject({ ok: false, reason: { why: 'invalid', faults: [{ path: 'hours' }] } });
    expect(await shelve(0.5)).toMatchObject({ ok: true });
    expect(await shelve(0.5)).toMatchObject({ ok: false, reason: { why: 'conflict' } });
    expect(await calls()).toBe(1);
    // Acknowledged before or not: what is still there when the shelf ends has to be acknowledged afresh.
    await judge(10 + 1799);
    expect(await calls()).toBe(1);
    await send('flow', 10 + 1800, 50);
    expect(await told()).toEqual([
      'flow-low raised',
      'flow-low acknowledged',
      'flow-low suppressed',
      'flow-low unsuppressed',
    ]);
    expect(await calls()).toBe(2);
    expect(await site.open()).toMatchObject([{ active: true, acknowledged: false }]);
    expect(await ofRecord('alarm-shelved')).toMatchObject([{ by: robin.id, reason: 'cleaning the sensor' }]);
    expect(await ofRecord('alarm-unshelved')).toMatchObject([{ why: 'time' }]);
  });

  test('high temperature only by a lead, and for an hour at most', async () => {
    await begin([warm()]);
    const lead = await site.member('Lee', 'lead');
    const { rows } = await query('SELECT id FROM alarm_definition WHERE site_id = $1 AND retired_at IS NULL', [
      site.siteId,
    ]);
    const shelve = (who: Who, hours: number) =>
      shelveAlarm(who, { site: site.siteKey, alarm: rows[0].id, hours, reason: 'changing the probe' });
    expect(await shelve(robin, 0.5)).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'alarm' }] },
    });
    expect(await shelve(lead, 2)).toMatchObject({ ok: false, reason: { why: 'invalid', faults: [{ path: 'hours' }] } });
    expect(await shelve(lead, 1)).toMatchObject({ ok: true });
  });
});

describe('the second clock', () => {
  const MIN = 60;
  test('calls again when the value has not turned in time, and goes on while it turns', async () => {
    await begin([warm()]);
    await site.send([[10, 28]]);
    await judge(11);
    await acknowledge(0);
    await site.send([[44 * MIN, 27.2]]);
    await judge(46 * MIN);
    expect(await calls()).toBe(1);
    await site.send([[90 * MIN, 27.2]]);
    await judge(92 * MIN);
    expect(await told()).toEqual([
      expect.stringContaining('raised'),
      expect.stringContaining('acknowledged'),
      expect.stringContaining('recalled'),
    ]);
    expect(await calls()).toBe(2);
    expect(await ofRecord('alarm-recalled')).toMatchObject([{ why: 'not-turned', value: 27.2 }]);
    // What was acknowledged was the first call: the second is not covered by a page that was drawn before it.
    const id = (await site.open())[0]?.id ?? '';
    const stale = await acknowledgeAlarm(robin, { site: site.siteKey, occurrence: id, page: 'alarm', again: 0 });
    expect(stale).toMatchObject({ ok: true, value: { kind: 'called-anew' } });
    expect(await acknowledge(0)).toMatchObject({ ok: true, value: { kind: 'first' } });
  });

  test('runs out sooner where the review leaves less time', async () => {
    await begin([warm({ key: 'warm' })]);
    await query(
      `INSERT INTO review_result (site_id, system_id, input_hash, engine_version, judged_on, computed_at, summary, body)
       SELECT site_id, system_id, 'a', '1', '2026-03-04', now(), '{}', $2 FROM alarm_definition
        WHERE site_id = $1 AND key = 'warm' AND retired_at IS NULL`,
      [site.siteId, JSON.stringify({ alarms: [{ alarm: 'warm', availableS: 1200, proposed: 'high' }] })],
    );
    await site.send([[10, 28]]);
    await judge(11);
    await acknowledge(0);
    const { rows } = await query('SELECT turn_by AS "turnBy", value_then AS "valueThen" FROM alarm_open');
    expect(rows).toEqual([{ turnBy: at(11 + 600), valueThen: 28 }]);
    // What the review proposed stands with the time it was raised, and counts where nobody chose a priority.
    const [raise] = await listRaises(site.siteId, at(0), at(60));
    expect(raise?.priority).toBe('high');
  });

  test('calls again when the backup in charge fails', async () => {
    const watts = (equipment: string) => warm({ key: equipment, on: { kind: 'watts', equipment } });
    const whole = described([watts('heater-1'), watts('heater-2')]);
    const [system] = whole.systems;
    const [heater] = system?.equipment ?? [];
    if (!(system && heater)) throw new Error('no heater');
    const two = ['heater-1', 'heater-2'].map((key) => ({ ...heater, key, wattsRange: { minW: 100, maxW: 300 } }));
    const meters = two.map(({ key }) =>
      sensor({ key: `${key}-w`, name: key, quantity: 'watts', equipment: key, tank: undefined }),
    );
    const equipment = [...two, ...system.equipment.slice(1)];
    site = await alarmSite(query, {
      ...whole,
      systems: [{ ...system, equipment, sensors: [...system.sensors, ...meters] }],
    });
    robin = await site.member('Robin', 'aquarist', 'robin');
    await judge(0);
    await send('heater-1-w', 10, 50);
    await acknowledge(0);
    await send('heater-2-w', 20, 50);
    expect(await told()).toEqual(['heater-1 raised', 'heater-1 acknowledged', 'heater-2 raised', 'heater-1 recalled']);
    expect(await calls()).toBe(3);
  });
});

test('an operating state suppresses what it is meant to bring about, and no longer than it is meant to last', async () => {
  await begin([{ ...lowFlow, suppressedIn: ['feeding'] }, warm()], [FLOW]);
  await query(
    `INSERT INTO state_open (site_id, system_id, state, run_id, begun_at, until, ends_itself)
     SELECT site_id, id, 'feeding', id, $1, $2, false FROM system WHERE site_id = $3 AND retired_at IS NULL`,
    [at(5), at(600), site.siteId],
  );
  await send('flow', 10, 50);
  await site.send([[11, 28]]);
  await judge(12);
  expect(await told()).toEqual(['flow-low raised', 'flow-low suppressed', expect.stringContaining('raised')]);
  expect(await calls()).toBe(1);
  // Nobody has ended it, and it has outstayed its end.
  await judge(600);
  expect(await told()).toContain('flow-low unsuppressed');
  expect(await calls()).toBe(2);
  expect(await ofRecord('alarm-suppressed-by-design')).toMatchObject([{ state: 'feeding' }]);
});
