import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { storeReadings } from '#data/readings/store-readings';
import { statesBegun, statesInForce } from '#data/states/states';
import { listTimed } from '#data/states/timed';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { answerAskedOf } from '#server/states/answer-asked';
import { askBegun } from '#server/states/ask-begun';
import { beginStateOf } from '#server/states/begin-state';
import { callEnds } from '#server/states/call-ends';
import { listStates } from '#server/states/list-states';
import { endTimedState, timeState } from '#server/states/time-state';
import { wallClock } from '#core/time/zone';
import { beginRequest } from '#shape/states/requests';
import { timedRequest } from '#shape/states/asked-request';
import { airBlower, plan } from '../../_support/build-equipment';
import { sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { entered } from '../../_support/given';
import { letIn } from '../../_support/people';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const PLACE = { site: 'harbour', system: 'tank-1' };
const MINUTE = 60_000;
const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
let siteId = '';
let meter = '';
let ada: Who;
let lea: Who;
let zone = '';

const asked = async () => {
  const page = await listStates(ada, { site: 'harbour' });
  if (!page.ok) throw new Error('no page');
  return page.value.asked;
};

beforeAll(async () => {
  const small = smallSystem();
  const states = [{ state: 'feeding' as const, then: 'off' as const, by: 'controller' as const }];
  await keep(
    smallFacility({
      ...small,
      states: [{ name: 'feeding', lastsMin: entered(10), endsBy: 'controller' }],
      equipment: [
        ...small.equipment.filter(({ type }) => type !== 'air-blower'),
        airBlower({
          ...{ key: 'air', name: 'Air', tank: 'display', stones: [{ tank: 'display', count: 2 }] },
          plan: plan({ states, regulation: { kind: 'always', by: 'controller' } }),
        }),
      ],
      sensors: [
        ...small.sensors,
        sensor({ key: 'air-watts', name: 'Air meter', quantity: 'watts', equipment: 'air', tank: undefined }),
      ],
    }),
  );
  const site = await stored('harbour');
  siteId = site.siteId;
  zone = String((await query('SELECT zone FROM site')).rows[0]?.zone);
  meter = String((await query(`SELECT id FROM sensor WHERE key = 'air-watts'`)).rows[0]?.id);
  ada = await letIn(query, siteId, 'harbour', 'Ada', 'aquarist');
  lea = await letIn(query, siteId, 'harbour', 'Lea', 'lead');
});

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM state_event; DELETE FROM state_open;
    DELETE FROM state_answered; DELETE FROM state_asked; DELETE FROM state_call; DELETE FROM state_timed;
    DELETE FROM reading; DELETE FROM reading_latest`);
});

describe('a state that nobody said had begun', () => {
  test('is told by the watts, asked once, and counts from then once somebody says so', async () => {
    const at = now();
    const readings = Array.from({ length: 12 }, (_, i) => ({
      ...{ sensorId: meter, at: new Date(at.getTime() - (11 - i) * MINUTE), value: i < 6 ? 30 : 0 },
      ...{ quality: 'good' as const, origin: 'device' as const },
    }));
    await storeReadings(siteId, readings, { receivedAt: at });
    await askBegun(at);
    await askBegun(new Date(at.getTime() + MINUTE));
    const [one, ...more] = await asked();
    expect(more).toEqual([]);
    expect(one).toMatchObject({ state: 'feeding', why: 'watts', equipment: ['Air'] });
    expect(one?.since).toBe(new Date(at.getTime() - 5 * MINUTE).toISOString());
    const answer = { ...PLACE, asked: one?.asked ?? '', entry: newId(), isSo: true };
    expect(await answerAskedOf(ada, answer)).toMatchObject({ ok: true });
    expect(await asked()).toEqual([]);
    const [run] = await statesInForce(siteId, at);
    expect(run).toMatchObject({ state: 'feeding', begunAt: new Date(at.getTime() - 5 * MINUTE) });
    expect(await answerAskedOf(lea, { ...answer, entry: newId() })).toMatchObject({ reason: { why: 'conflict' } });
  });
});

describe('a state by the clock', () => {
  const timedNow = async (state: string) => {
    const { time } = wallClock(zone, now().getTime());
    const from = wallClock(zone, now().getTime() - 86_400_000).date;
    const schedule = { rule: 'FREQ=DAILY', from, times: [{ at: time }] };
    const form = { ...PLACE, entry: newId(), state, lastsMin: '15', schedule: JSON.stringify(schedule) };
    const request = timedRequest.parse(form);
    expect(await timeState(ada, request)).toMatchObject({ reason: { why: 'not-allowed' } });
    expect(await timeState(lea, request)).toMatchObject({ ok: true });
    return request.entry;
  };

  test('begins once without hands in the water, and no more once that is ended', async () => {
    const timed = await timedNow('feeding');
    await askBegun(now());
    await askBegun(now());
    expect(await statesBegun([siteId])).toMatchObject([{ state: 'feeding', begunBy: lea.id }]);
    expect((await query(`SELECT FROM state_event`)).rowCount).toBe(1);
    expect(await endTimedState(lea, { ...PLACE, timed })).toMatchObject({ ok: true });
    await query(
      'SET session_replication_role = replica; DELETE FROM state_open; DELETE FROM state_answered; DELETE FROM state_asked',
    );
    await askBegun(now());
    expect(await statesBegun([siteId])).toEqual([]);
  });

  test('is only asked with hands in the water', async () => {
    await timedNow('water-change');
    await askBegun(now());
    expect(await statesBegun([siteId])).toEqual([]);
    expect(await asked()).toMatchObject([{ state: 'water-change', why: 'clock' }]);
  });

  test('that was kept by days and a time before there were schedules begins as it did', async () => {
    const { date, time } = wallClock(zone, now().getTime());
    await query(
      `INSERT INTO state_timed (site_id, id, system_id, state, days, at, lasts_min, made_at, by)
       VALUES ($1, $2, (SELECT id FROM system WHERE site_id = $1 AND key = $3), 'feeding', $4, $5, 15, now() - interval '3 days', $6)`,
      [siteId, newId(), PLACE.system, DAYS, time, lea.id],
    );
    expect(await listTimed([siteId])).toMatchObject([
      { schedule: { rule: `FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA,SU`, times: [{ at: time }] } },
    ]);
    expect(date >= ((await listTimed([siteId]))[0]?.schedule.from ?? '')).toBe(true);
    await askBegun(now());
    expect(await statesBegun([siteId])).toMatchObject([{ state: 'feeding' }]);
  });

  test('is refused with the field when its rule is none of RFC 5545', () => {
    const schedule = JSON.stringify({ rule: 'FREQ=HOURLY', from: '2026-11-01', times: [{ at: '08:00' }] });
    const read = timedRequest.safeParse({ ...PLACE, entry: newId(), state: 'feeding', lastsMin: '5', schedule });
    expect(read.error?.issues[0]?.path).toEqual(['schedule', 'rule']);
  });
});

describe('a state that outstays its end', () => {
  test('calls whoever began it and those of the site, again with each turn, and nobody once it is put off', async () => {
    const form = { ...PLACE, entry: newId(), state: 'water-change', lasts: '60', unit: 'minutes' };
    await beginStateOf(ada, beginRequest.parse(form));
    const calls = async () =>
      (await query('SELECT account_id, turn, channel FROM state_call ORDER BY at, id')).rows.map((r) => [
        r.account_id === ada.id ? 'Ada' : r.account_id === lea.id ? 'Lea' : 'other',
        r.turn,
      ]);
    const end = now().getTime() + 60 * MINUTE;
    await callEnds(new Date(end - MINUTE));
    expect(await calls()).toEqual([]);
    await callEnds(new Date(end + MINUTE));
    expect(await calls()).toContainEqual(['Ada', 0]);
    await callEnds(new Date(end + 16 * MINUTE));
    expect((await calls()).some(([, turn]) => turn === 1)).toBe(true);
    const before = (await calls()).length;
    await query(`SET session_replication_role = replica; UPDATE state_open SET until = now() + interval '5 hours'`);
    await callEnds(new Date(end + 20 * MINUTE));
    expect(await calls()).toHaveLength(before);
  });
});
