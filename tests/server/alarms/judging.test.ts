import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { storeReadings } from '#data/readings/store-readings';
import { type Judging, judgeAlarms } from '#server/worker/judge-alarms';
import { freshDatabase } from '../../_support/database';
import { keep, stored } from '../../_support/stored';
import { SENSOR, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
let siteId: string;
let sensorId: string;
let judging: Judging[] = [];

beforeAll(async () => {
  const facility = withAlarms([warm()]);
  await keep(facility);
  ({ siteId } = await stored(facility.site.key));
  const { rows } = await query('SELECT id FROM sensor WHERE key = $1', [SENSOR]);
  sensorId = rows[0]?.id;
});

afterEach(async () => {
  await Promise.all(judging.map(({ stop }) => stop()));
  judging = [];
});

async function send(value: number): Promise<void> {
  const at = new Date();
  await storeReadings(siteId, [{ sensorId, at, value, quality: 'good', origin: 'device' }], { receivedAt: at });
}

async function kinds(): Promise<string[]> {
  const { rows } = await query("SELECT kind FROM alarm_event WHERE kind IN ('raised', 'returned') ORDER BY id");
  return rows.map(({ kind }) => kind);
}

/** Waits until so many turns were had. @returns ms it took */
async function until(count: number, ms = 10_000): Promise<number> {
  const began = performance.now();
  for (;;) {
    if ((await kinds()).length >= count) return performance.now() - began;
    if (performance.now() - began > ms) throw new Error(`${(await kinds()).length} turns instead of ${count}`);
    await wait(5);
  }
}

describe('whoever judges', () => {
  test('hears of readings as they arrive, finds those that came before, and comes back when its connection is cut', async () => {
    await send(27);
    judging = [judgeAlarms()];
    await until(1);
    await send(25);
    await until(2);
    await query(
      "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE query LIKE 'LISTEN %' AND datname = current_database()",
    );
    await send(27);
    await until(3);
  });

  test('is one of three at most for each turn: no reading is judged twice and none is left', async () => {
    const before = (await kinds()).length;
    judging = [judgeAlarms(), judgeAlarms(), judgeAlarms()];
    for (let i = 0; i < 40; i++) {
      await send(i % 2 === 0 ? 25 : 27);
      await wait(3);
    }
    await until(before + 40);
    await wait(50);
    const now = await kinds();
    expect(now).toHaveLength(before + 40);
    expect(now.every((kind, i) => kind === (i % 2 === 0 ? 'raised' : 'returned'))).toBe(true);
    const { rows } = await query('SELECT count(*)::int AS left FROM reading_arrival');
    expect(rows).toEqual([{ left: 0 }]);
  });
});
