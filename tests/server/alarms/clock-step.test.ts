import { describe, expect, test } from 'vitest';
import { isDue } from '#core/alarms/told';
import { findSitesToJudge } from '#data/alarms/turn';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { after as at, alarmSite, type AlarmSite, always, SENSOR, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;
const kinds = async () => (await site.events()).map(({ kind }) => kind).filter((kind) => kind !== 'escalated');

async function begin(...alarms: Parameters<typeof withAlarms>[0]): Promise<void> {
  await anew();
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  site = await alarmSite(query, withAlarms(alarms, [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  await site.judge(0);
}

describe('a clock that is set back', () => {
  test('an hour and forward again misses no alarm and raises none twice', async () => {
    await begin(warm({ deadBand: 0 }));
    await site.send([[10, 27]]);
    await site.judge(11);
    // Set back: what comes now is older than the newest held to, and the alarm goes on.
    await site.send([[-3580, 27]]);
    await site.judge(-3579);
    await site.judge(-3000);
    expect(await kinds()).toEqual(['raised']);
    // Right again: it returns, and is raised anew.
    await site.send([[600, 25]]);
    await site.judge(601);
    await site.send([[900, 27]]);
    await site.judge(901);
    expect(await kinds()).toEqual(['raised', 'returned', 'raised']);
    expect((await site.calls()).filter(({ step }) => step === 1)).toHaveLength(2);
  });

  test('puts off no alarm that was waited for', async () => {
    await begin(warm({ deadBand: 0, delayS: 60 }));
    await site.send([[1800, 27]]);
    await site.judge(1801);
    for (const s of [10, 71]) await site.send([[s, 27]]);
    await site.judge(72);
    expect(await kinds()).toEqual(['raised']);
  });

  test('puts off nobody who is called next', async () => {
    await begin(warm({ deadBand: 0 }));
    await site.send([[1860, 27]]);
    await site.judge(1860);
    const [first] = await site.open();
    const leftS = ((first?.next?.getTime() ?? 0) - at(1860).getTime()) / 1000;
    expect(leftS).toBeGreaterThan(0);
    // Half an hour back: a worker looks at once, and the next are called when they would have been.
    expect(await findSitesToJudge(at(60), at(0), at(120))).toEqual([site.siteId]);
    await site.judge(60);
    await site.judge(60 + leftS - 1);
    expect((await site.open())[0]?.step).toBe(first?.step);
    await site.judge(60 + leftS);
    expect((await site.open())[0]?.step).toBeGreaterThan(first?.step ?? 0);
  });

  test('puts off no silence', async () => {
    await begin(warm({ key: 'silent', on: { kind: 'silent-sensor', sensor: SENSOR }, delayS: 60 }));
    await site.send([[1800, 25]]);
    await site.judge(1800);
    await site.judge(0);
    await site.judge(59);
    expect(await kinds()).toEqual([]);
    await site.judge(60);
    expect(await kinds()).toEqual(['raised']);
  });

  test('puts off no attempt to tell somebody', () => {
    const minute = 60_000;
    expect(isDue(30 * minute, [], 0)).toBe(true);
    expect(isDue(0, [{ atMs: 30 * minute, result: 'failed' }], 0)).toBe(true);
    expect(isDue(0, [{ atMs: 1000, result: 'failed' }], 1000)).toBe(false);
    expect(isDue(0, [{ atMs: 30 * minute, result: 'taken' }], 0)).toBe(false);
  });
});

test('a clock that is set forward and back again misses no alarm and raises none twice', async () => {
  await begin(warm({ deadBand: 0 }));
  await site.send([[10, 27]]);
  await site.judge(11);
  // Half an hour ahead; the source’s own clock is right, so what it sends was taken before it came.
  await site.send([[20, 25]], 'good', 1820);
  await site.judge(1821);
  await site.send([[30, 27]], 'good', 1830);
  await site.judge(1831);
  expect(await kinds()).toEqual(['raised', 'returned', 'raised']);
  await site.send([[40, 25]]);
  await site.judge(41);
  await site.send([[50, 27]]);
  await site.judge(51);
  expect(await kinds()).toEqual(['raised', 'returned', 'raised', 'returned', 'raised']);
});
