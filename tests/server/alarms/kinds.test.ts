import { beforeEach, expect, test } from 'vitest';
import type { AlarmDefinition } from '#core/alarms/definition';
import { newId } from '#data/new-id';
import { beginState, endState } from '#data/states/change-state';
import { inTransaction } from '#data/transaction';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { after as at, alarmSite, type AlarmSite, SENSOR, warm } from './alarm-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;

async function begin(on: AlarmDefinition['on'], delayS = 0): Promise<void> {
  const states = [{ name: 'water-change', endsBy: 'person' } as const];
  const system = { ...smallSystem(), states, alarms: [warm({ on, delayS })] };
  site = await alarmSite(query, smallFacility(system));
  await site.judge(0);
}
const kinds = async () => (await site.events()).map(({ kind }) => kind).filter((kind) => kind !== 'escalated');
const memory = async () => (await query('SELECT memory FROM alarm_watch')).rows[0]?.memory;

beforeEach(anew);

test('a rate is told over many turns of whoever judges, each with a reading of its own', async () => {
  await begin({ kind: 'rate', sensor: SENSOR, risesPerHour: 1, overMin: 20 });
  for (let min = 1; min <= 10; min++) {
    await site.send([[min * 60, 25]]);
    await site.judge(min * 60 + 1);
  }
  expect(await kinds()).toEqual([]);
  expect(await memory()).toMatchObject({ mean: 25 });
  for (let min = 11; min <= 40; min++) {
    await site.send([[min * 60, 25 + (min - 10) * 0.03]]);
    await site.judge(min * 60 + 1);
  }
  // 1.8 °C an hour, against a running mean of ten minutes: 1 °C an hour is passed after 8.1 minutes (−10 ln(1 − 1/1.8)).
  const [raised] = (await query('SELECT began_at, value FROM alarm_occurrence')).rows;
  expect(raised.began_at).toEqual(at(19 * 60));
  expect(raised.value).toBeCloseTo(1.8 * (1 - Math.exp(-0.9)), 2);
  expect(await kinds()).toEqual(['raised']);
});

test('a sensor that stands still is told from the reading it has kept to', async () => {
  await begin({ kind: 'frozen', sensor: SENSOR, within: 0 }, 600);
  for (let min = 0; min <= 11; min++) await site.send([[min * 60, 25.3]]);
  await site.judge(700);
  await site.send([[720, 25.4]]);
  await site.judge(721);
  expect(await kinds()).toEqual(['raised', 'returned']);
});

test('a state that is not ended in time is called, and is over with the state', async () => {
  await begin({ kind: 'state-outstayed', state: 'water-change' }, 60);
  const [{ id: systemId }] = (await query('SELECT system_id AS id FROM alarm_definition WHERE retired_at IS NULL'))
    .rows;
  const run = newId();
  const act = { id: run, run, systemId, state: 'water-change' as const, by: 'local', note: null };
  await inTransaction((tx) => beginState(tx, site.siteId, { ...act, at: at(10), until: at(600), endsItself: false }));
  for (const atS of [30, 601, 659]) await site.judge(atS);
  expect(await kinds()).toEqual([]);
  await site.judge(660);
  expect(await kinds()).toEqual(['raised']);
  await inTransaction((tx) => endState(tx, site.siteId, { ...act, id: newId(), at: at(700) }));
  await site.judge(710);
  expect(await kinds()).toEqual(['raised', 'returned']);
});
