import { beforeEach, describe, expect, test } from 'vitest';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { alarmSite, type AlarmSite, always, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew, ofRecord } = describedSite(query);
/** s after the start at which a gateway comes back that was away for two hours. */
const BACK = 7200;
let site: AlarmSite;

beforeEach(async () => {
  await anew();
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  await site.judge(0);
});
const came = (readings: [number, number][], cameS: number) => site.send(readings, 'good', cameS);
const kinds = async () => (await site.events()).map(({ kind }) => kind);

describe('what a gateway held back for two hours', () => {
  test('is kept as an alarm where it was over by then, and wakes nobody', async () => {
    await came(
      [
        [10, 27],
        [600, 25],
        [BACK - 5, 25],
      ],
      BACK,
    );
    for (const s of [BACK, BACK + 61, BACK + 3600]) await site.judge(s);
    expect(await kinds()).toEqual(['raised', 'returned']);
    expect(await site.calls()).toEqual([]);
    // Somebody has to look at it all the same.
    expect(await site.open()).toMatchObject([{ active: false, acknowledged: false, next: null }]);
  });

  test('wakes nobody where what says that it is over comes a little after it', async () => {
    await came([[10, 27]], BACK);
    await site.judge(BACK);
    expect(await site.calls()).toEqual([]);
    await came([[BACK + 1, 25]], BACK + 2);
    for (const s of [BACK + 2, BACK + 61, BACK + 3600]) await site.judge(s);
    expect(await kinds()).toEqual(['raised', 'returned']);
    expect(await site.calls()).toEqual([]);
  });

  test('calls within a minute where nothing says that it is over, and goes on as any other', async () => {
    await came([[10, 27]], BACK);
    await site.judge(BACK);
    await site.judge(BACK + 59);
    expect(await site.calls()).toEqual([]);
    await site.judge(BACK + 60);
    expect(await site.calls()).toEqual([{ name: 'Robin', why: 'on-call', step: 1 }]);
    expect(await ofRecord('alarm-escalated')).toMatchObject([{ why: 'late', step: 1, told: 1 }]);
    await site.judge(BACK + 60 + 1800);
    expect((await site.open())[0]?.step).toBeGreaterThan(1);
  });

  test('calls at once where what is read now says the same', async () => {
    await came(
      [
        [10, 27],
        [BACK - 5, 27],
      ],
      BACK,
    );
    await site.judge(BACK);
    expect(await site.calls()).toEqual([{ name: 'Robin', why: 'on-call', step: 1 }]);
    expect(await kinds()).toEqual(['raised']);
  });
});

test('the same batch ten times and a day out of order raise one alarm, and what is there is there once', async () => {
  const batch: [number, number][] = [
    [10, 25],
    [20, 27],
    [30, 27.1],
  ];
  for (let i = 0; i < 10; i++) {
    await came(i % 2 === 0 ? batch : batch.toReversed(), 31 + i);
    await site.judge(31 + i);
  }
  // Of the day before, in both orders, warm and not: it is kept, and turns nothing.
  const before = batch.map(([s, value]): [number, number] => [s - 86_400, value + 1]);
  await came(before, 50);
  await came(before.toReversed(), 51);
  await site.judge(52);
  expect(await kinds()).toEqual(['raised']);
  expect(await site.calls()).toHaveLength(1);
  expect((await query('SELECT count(*)::int AS n FROM reading')).rows).toEqual([{ n: 6 }]);
});
