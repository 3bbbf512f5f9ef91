import { describe, expect, test } from 'vitest';
import { passSite, type SeenOf } from '#core/alarms/pass-site';
import { beginWatch } from '#core/alarms/is-true';
import { isLate, LATE_MS } from '#core/readings/late';
import { follow, limits, reading, see, silence, state, still, tick } from './run-alarm';

/** s that are later than a reading may come. */
const LATE_S = LATE_MS / 1000 + 1;
const late = (atS: number, value: number, cameS = atS + LATE_S) => reading(atS, value, { cameMs: cameS * 1000 });

test('a reading is late from an hour on its way on, which is common practice and has no source', () => {
  expect([isLate(0, 3_600_000), isLate(0, 3_600_001), isLate(5000, 0)]).toEqual([false, true, false]);
});

describe('a reading that came late', () => {
  test('begins what calls, and ends nothing', () => {
    const condition = limits();
    const alarm = follow(condition);
    see(condition, alarm, late(10, 27));
    expect(state(alarm)).toBe('unacknowledged');
    see(condition, alarm, late(20, 25));
    expect(state(alarm)).toBe('unacknowledged');
    see(condition, alarm, reading(30, 25));
    expect(state(alarm)).toBe('returned');
  });

  test('does not hide that its sensor is silent, and shows that its gateway is there', () => {
    for (const anyWord of [true, false]) {
      const condition = silence({ anyWord });
      const alarm = follow(condition);
      for (let s = 0; s <= 120; s += 10) {
        see(condition, alarm, late(s - LATE_S, 25, s));
        tick(condition, alarm, s);
      }
      expect(alarm.raised.length).toBe(anyWord ? 0 : 1);
    }
  });

  test('ends no silence that was called; one that comes in time does', () => {
    const condition = silence();
    const alarm = follow(condition);
    tick(condition, alarm, 60);
    see(condition, alarm, late(100 - LATE_S, 25, 100));
    expect(state(alarm)).toBe('unacknowledged');
    see(condition, alarm, reading(110, 25));
    expect(state(alarm)).toBe('returned');
  });

  test('that moved ends no alarm of a frozen sensor', () => {
    const condition = still();
    const alarm = follow(condition);
    for (const s of [0, 30, 60]) see(condition, alarm, reading(s, 25));
    see(condition, alarm, late(70, 26));
    expect(state(alarm)).toBe('unacknowledged');
  });
});

describe('an alarm raised by what came late', () => {
  const turnsOf = (seen: SeenOf[], nowS: number, given = {}) => {
    const condition = limits(given);
    const watched = { alarm: 'a', condition, watch: beginWatch(condition, 0) };
    return passSite([watched], seen, nowS * 1000, false).turns.map(({ turn }) => turn);
  };
  const of = (seen: ReturnType<typeof late>): SeenOf => ({ ...seen, sensor: 'probe' });

  test('is said to be, also where the clock did it', () => {
    expect(turnsOf([of(late(10, 27, 9000))], 9000)).toMatchObject([{ kind: 'raised', atMs: 10_000, isLate: true }]);
    expect(turnsOf([of(late(10, 27, 9000))], 9000, { delayS: 60 })).toMatchObject([{ atMs: 10_000, isLate: true }]);
  });

  test('is as any other once something that came in time says so as well', () => {
    const now = of(reading(8990, 27, { cameMs: 9_000_000 }));
    const [turn, ...more] = turnsOf([of(late(10, 27, 9000)), now], 9000);
    expect([turn?.kind, turn?.isLate, more]).toEqual(['raised', undefined, []]);
    const back = of(reading(8990, 25, { cameMs: 9_000_000 }));
    expect(turnsOf([of(late(10, 27, 9000)), back], 9000)).toMatchObject([
      { kind: 'raised', isLate: true },
      { kind: 'returned', atMs: 8_990_000 },
    ]);
  });
});

describe('a reading that came by a clock that was set back', () => {
  test('counts though one taken later was held to, and one that is merely older does not', () => {
    const condition = limits();
    const alarm = follow(condition);
    see(condition, alarm, reading(1800, 25));
    see(condition, alarm, reading(1750, 27, { cameMs: 1_810_000 }));
    expect(state(alarm)).toBe('over');
    see(condition, alarm, reading(10, 27));
    expect(state(alarm)).toBe('unacknowledged');
  });

  test('is a word of its sensor', () => {
    const condition = silence();
    const alarm = follow(condition);
    see(condition, alarm, reading(1800, 25));
    see(condition, alarm, reading(10, 25));
    expect(alarm.watch).toMatchObject({ lastMs: 10_000, dueMs: 70_000 });
  });
});
