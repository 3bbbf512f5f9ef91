import { beforeEach, describe, expect, test } from 'vitest';
import type { AlarmDefinition } from '#core/alarms/definition';
import { takeTurn } from '#data/alarms/turn';
import { inTransaction } from '#data/transaction';
import { verifyChain } from '#data/records/verify-chain';
import { judgeSite } from '#server/alarms/judge-site';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { keep } from '../../_support/stored';
import { after as at, alarmSite, type AlarmSite, SENSOR, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew, ofRecord } = describedSite(query);
let site: AlarmSite;

async function begin(...alarms: AlarmDefinition[]): Promise<void> {
  site = await alarmSite(query, withAlarms(alarms));
  await site.judge(0);
}
const kinds = async () => (await site.events()).map(({ kind }) => kind).filter((kind) => kind !== 'escalated');
const left = async () => (await query('SELECT count(*)::int AS n FROM reading_arrival')).rows[0].n;

beforeEach(anew);

describe('readings that arrive', () => {
  test('raise an alarm, end it, and are judged once', async () => {
    await begin(warm());
    await site.send([
      [10, 25],
      [20, 27],
    ]);
    await site.judge(21);
    expect(await site.open()).toMatchObject([{ active: true, acknowledged: false }]);
    expect(await left()).toBe(0);
    await site.judge(22);
    await site.send([[30, 26]]);
    await site.judge(31);
    expect(await kinds()).toEqual(['raised', 'returned']);
    // Nobody has seen it: it stays.
    expect(await site.open()).toMatchObject([{ active: false, acknowledged: false }]);
    expect(await ofRecord('alarm-raised')).toMatchObject([{ value: 27, began: at(20).toISOString() }]);
    expect(await ofRecord('alarm-returned')).toMatchObject([{ value: 26 }]);
    expect(await verifyChain(site.siteId)).toMatchObject({ isWhole: true });
  });

  test('wait for the delay, which the clock ends when no more come', async () => {
    await begin(warm({ delayS: 60 }));
    await site.send([[10, 27]]);
    await site.judge(11);
    expect(await kinds()).toEqual([]);
    await site.judge(69);
    expect(await kinds()).toEqual([]);
    await site.judge(70);
    expect(await kinds()).toEqual(['raised']);
  });

  test('raise a second alarm beside the first that nobody acknowledged', async () => {
    await begin(warm());
    await site.send([
      [10, 27],
      [20, 26],
      [30, 27],
    ]);
    await site.judge(31);
    expect(await kinds()).toEqual(['raised', 'returned', 'raised']);
    expect((await site.open()).map(({ active }) => active).sort()).toEqual([false, true]);
  });

  test('that wait are all read before the clock says what they do not: nothing is raised that had ended already', async () => {
    await begin(warm({ delayS: 60 }));
    for (let i = 1; i <= 220; i++) await site.send([[i / 10, i <= 205 ? 27 : 25]]);
    for (const atS of [1000, 1001]) await site.judge(atS);
    expect(await left()).toBe(0);
    expect(await kinds()).toEqual([]);
    expect((await query('SELECT judged_at AS "judgedAt" FROM alarm_turn')).rows[0].judgedAt).toEqual(at(1001));
  });

  test('of days ago are for the record and call nobody', async () => {
    await begin(warm());
    await site.send([
      [-100_000, 30],
      [10, 25],
    ]);
    await site.judge(11);
    expect(await kinds()).toEqual([]);
  });
});

describe('silence', () => {
  const silent = () => warm({ key: 'silent', on: { kind: 'silent-sensor', sensor: SENSOR }, delayS: 60 });

  test('is raised by the clock, and ends with the next reading', async () => {
    await begin(silent());
    await site.judge(30);
    await site.judge(60);
    expect(await kinds()).toEqual(['raised']);
    await site.send([[70, 25]]);
    await site.judge(70);
    expect(await kinds()).toEqual(['raised', 'returned']);
  });

  test('is counted anew when nobody listened meanwhile', async () => {
    await begin(silent());
    await site.judge(3600);
    expect(await kinds()).toEqual([]);
    await site.judge(3659);
    await site.judge(3660);
    expect(await kinds()).toEqual(['raised']);
  });
});

describe('silence with much waiting', () => {
  test('that nobody listened to is counted anew once all that waited is read', async () => {
    await begin(warm({ key: 'silent', on: { kind: 'silent-sensor', sensor: SENSOR }, delayS: 60 }));
    for (let i = 1; i <= 220; i++) await site.send([[i / 10, 25]]);
    for (const atS of [3600, 3601]) await site.judge(atS);
    expect(await left()).toBe(0);
    expect(await kinds()).toEqual([]);
    for (const atS of [3660, 3661]) await site.judge(atS);
    expect(await kinds()).toEqual(['raised']);
  });
});

describe('a definition', () => {
  test('that is changed ends the alarm and begins anew, and says so', async () => {
    await begin(warm());
    await site.send([[10, 27]]);
    await site.judge(11);
    await keep(withAlarms([warm({ on: { kind: 'sensor', sensor: SENSOR, above: 28 } })]));
    await site.judge(12);
    expect((await site.events()).find(({ kind }) => kind === 'returned')?.detail).toEqual({
      why: 'definition-changed',
    });
    expect(await site.open()).toMatchObject([{ active: false, next: null }]);
    await site.send([[20, 28.5]]);
    await site.judge(21);
    expect(await kinds()).toEqual(['raised', 'returned', 'raised']);
  });

  test('that is changed is held to the newest reading at once', async () => {
    await begin(warm());
    await site.send([[10, 26]]);
    await site.judge(11);
    await keep(withAlarms([warm({ on: { kind: 'sensor', sensor: SENSOR, above: 25.5 } })]));
    await site.judge(12);
    expect(await kinds()).toEqual(['raised']);
  });

  test('that is new is held to everything that waits, and not only to the newest of it', async () => {
    site = await alarmSite(query, withAlarms([warm()]));
    await site.send([
      [1, 25],
      [2, 27],
    ]);
    await site.send([[3, 26]]);
    await site.judge(4);
    expect(await kinds()).toEqual(['raised', 'returned']);
    expect(await ofRecord('alarm-raised')).toMatchObject([{ value: 27, began: at(2).toISOString() }]);
  });

  test('that is new is held to what waits in more batches than one turn takes', async () => {
    site = await alarmSite(query, withAlarms([warm()]));
    for (let i = 0; i < 210; i++) await site.send([[i, i === 100 ? 27 : 25]]);
    await site.judge(211);
    expect([await kinds(), await left()]).toEqual([['raised', 'returned'], 10]);
    await site.judge(212);
    expect([await kinds(), await left()]).toEqual([['raised', 'returned'], 0]);
  });

  test('whose name or answerers change goes on', async () => {
    await begin(warm());
    await site.send([[10, 27]]);
    await site.judge(11);
    await keep(withAlarms([warm({ name: 'Much too warm', answeredBy: 'nobody' })]));
    await site.judge(12);
    expect(await kinds()).toEqual(['raised']);
  });

  test('that is retired ends it', async () => {
    await begin(warm());
    await site.send([[10, 27]]);
    await site.judge(11);
    await keep(withAlarms([]));
    await site.judge(12);
    expect(await ofRecord('alarm-returned')).toMatchObject([{ why: 'retired' }]);
    expect((await query('SELECT 1 FROM alarm_watch')).rows).toEqual([]);
  });
});

describe('whatever breaks', () => {
  test('a turn that is broken off leaves everything for the next one', async () => {
    await begin(warm());
    await site.send([[10, 27]]);
    await query('ALTER TABLE alarm_turn ADD CONSTRAINT planted CHECK (judged_at < $$2026-03-04T10:00:11Z$$)');
    await expect(judgeSite(site.siteId, at(11))).rejects.toThrow();
    expect([await kinds(), await left(), await site.open()]).toEqual([[], 1, []]);
    await query('ALTER TABLE alarm_turn DROP CONSTRAINT planted');
    await site.judge(12);
    expect([await kinds(), await left()]).toEqual([['raised'], 0]);
  });

  test('a turn that somebody has is nobody else’s, and of ten at once each reading is judged once', async () => {
    await begin(warm());
    await inTransaction(async (tx) => {
      await takeTurn(tx, site.siteId, at(1));
      expect(await judgeSite(site.siteId, at(1))).toEqual({ isDone: false, batches: 0, isMore: false });
    });
    for (let i = 0; i < 10; i++) await site.send([[10 + i, i % 2 === 0 ? 27 : 25]]);
    await Promise.all(Array.from({ length: 10 }, () => site.judge(30)));
    await site.judge(31);
    expect(await kinds()).toEqual(Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? 'raised' : 'returned')));
  });
});
