import { describe, expect, test } from 'vitest';
import type { AlarmState } from '#core/alarms/life/machine';
import { beginWatch, excuse } from '#core/alarms/is-true';
import { acknowledge, follow, limits, open, reading, see, silence, state, tick } from './run-alarm';

/** The letters of the published table. */
const LETTERS: Readonly<Partial<Record<AlarmState, string>>> = {
  over: 'NORM',
  unacknowledged: 'UNACK',
  acknowledged: 'ACK',
  returned: 'RTN',
} as const;

describe('published vectors', () => {
  // "16 - Alarms, Diagnostics and Fault Handling", open PLC course: non-latching, on-delay 3 s, a column a second; the
  // condition is true at 1, 4 to 10 and 13 to 17, acknowledged at 9 and 20.
  test('an on-delay of 3 s: the blip never counts, and each state comes at its second', () => {
    const condition = limits({ delayS: 3, deadBand: 0 });
    const alarm = follow(condition);
    const isTrue = (s: number) => s === 1 || (s >= 4 && s <= 10) || (s >= 13 && s <= 17);
    const columns = Array.from({ length: 23 }, (_, s) => {
      // What was there when the button was pressed is acknowledged before anything new.
      if (s === 9 || s === 20) acknowledge(alarm);
      see(condition, alarm, reading(s, isTrue(s) ? 27 : 25));
      return { letters: LETTERS[state(alarm)], active: alarm.watch.phase === 'active' };
    });
    const expected = [
      [0, 6, 'NORM'],
      [7, 8, 'UNACK'],
      [9, 10, 'ACK'],
      [11, 15, 'NORM'],
      [16, 17, 'UNACK'],
      [18, 19, 'RTN'],
      [20, 22, 'NORM'],
    ] as const;
    expect(columns.map(({ letters }) => letters)).toEqual(
      expected.flatMap(([from, to, letters]) => Array.from({ length: to - from + 1 }, () => letters)),
    );
    expect(columns.flatMap(({ active }, s) => (active ? [s] : []))).toEqual([7, 8, 9, 10, 16, 17]);
  });

  // OPC 10000-9 B.1.5 and BACnet's Deadband: it applies to returning alone; return needs value < High_Limit − Deadband. Guidance
  // differs on equality; here it fires beyond the limit and clears at the edge of the band.
  test.each([
    [26.5, false],
    [26.500001, true],
  ])('at %f, with a limit of 26.5, it is raised: %s', (value, raised) => {
    const condition = limits();
    const alarm = follow(condition);
    see(condition, alarm, reading(0, value));
    expect(alarm.raised.length > 0).toBe(raised);
  });

  test.each([
    [26.5, 'unacknowledged'],
    [26.21, 'unacknowledged'],
    [26.2, 'returned'],
  ])('once raised, at %f it is %s', (value, expected) => {
    const condition = limits();
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 27));
    see(condition, alarm, reading(1, value));
    expect(state(alarm)).toBe(expected);
  });

  test('a low limit is the same the other way round', () => {
    const condition = limits({ above: undefined, below: 23.5 });
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 23.5));
    expect(alarm.raised).toEqual([]);
    see(condition, alarm, reading(1, 23.49));
    see(condition, alarm, reading(2, 23.7));
    expect(state(alarm)).toBe('unacknowledged');
    see(condition, alarm, reading(3, 23.8));
    expect(state(alarm)).toBe('returned');
  });
});

describe('the delays', () => {
  test('a pending alarm whose readings stop is raised by the clock, since when it began', () => {
    const condition = limits({ delayS: 120 });
    const alarm = follow(condition);
    see(condition, alarm, reading(10, 27));
    tick(condition, alarm, 129);
    expect(alarm.raised).toEqual([]);
    tick(condition, alarm, 130);
    expect(alarm.raised.map(({ beganS }) => beganS)).toEqual([10]);
  });

  test('whoever asks late finds the same: what was due before the next reading came about before it', () => {
    const condition = limits({ delayS: 120 });
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 27));
    see(condition, alarm, reading(300, 25));
    expect(alarm.raised.map(({ beganS }) => beganS)).toEqual([0]);
    expect(state(alarm)).toBe('returned');
  });

  test('a value between limit and dead band breaks the on-delay, and starts the off-delay anew', () => {
    const condition = limits({ delayS: 60, offDelayS: 60 });
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 27));
    see(condition, alarm, reading(30, 26.4));
    see(condition, alarm, reading(40, 27));
    see(condition, alarm, reading(99, 27));
    expect(alarm.raised).toEqual([]);
    see(condition, alarm, reading(100, 27));
    expect(alarm.raised.length).toBe(1);
    see(condition, alarm, reading(110, 26));
    see(condition, alarm, reading(160, 26.4));
    see(condition, alarm, reading(171, 26));
    expect(alarm.watch.phase).toBe('clearing');
    see(condition, alarm, reading(230, 26));
    expect(state(alarm)).toBe('unacknowledged');
    see(condition, alarm, reading(231, 26));
    expect(state(alarm)).toBe('returned');
  });

  test('no time alone clears anything: a probe that died is not a probe that cooled', () => {
    const condition = limits({ offDelayS: 60 });
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 27));
    see(condition, alarm, reading(10, 25));
    tick(condition, alarm, 100_000);
    expect(state(alarm)).toBe('unacknowledged');
  });
});

describe('readings that are not to be trusted', () => {
  test('a suspect one calls, and neither clears nor breaks a delay', () => {
    const condition = limits({ delayS: 60 });
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 27, { quality: 'suspect' }));
    see(condition, alarm, reading(30, 25, { quality: 'suspect' }));
    see(condition, alarm, reading(60, 27, { quality: 'suspect' }));
    expect(alarm.raised.length).toBe(1);
    see(condition, alarm, reading(90, 25, { quality: 'suspect' }));
    expect(state(alarm)).toBe('unacknowledged');
  });

  test('a bad one does neither', () => {
    const condition = limits();
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 85, { quality: 'bad' }));
    expect(alarm.raised).toEqual([]);
    see(condition, alarm, reading(1, 27));
    see(condition, alarm, reading(2, 0, { quality: 'bad' }));
    expect(state(alarm)).toBe('unacknowledged');
  });

  test('one by hand of a sensor that reports by itself calls, and never silences; without a gateway it does both', () => {
    for (const isCarried of [true, false]) {
      const condition = limits({ isCarried });
      const alarm = follow(condition);
      see(condition, alarm, reading(0, 27, { isByHand: true }));
      see(condition, alarm, reading(1, 25, { isByHand: true }));
      expect(state(alarm)).toBe(isCarried ? 'unacknowledged' : 'returned');
    }
  });

  test('a late one undoes nothing, and begins nothing', () => {
    const condition = limits();
    const alarm = follow(condition);
    see(condition, alarm, reading(100, 27));
    see(condition, alarm, reading(50, 25));
    expect(state(alarm)).toBe('unacknowledged');
    see(condition, alarm, reading(110, 25));
    see(condition, alarm, reading(60, 27));
    expect(state(alarm)).toBe('returned');
    expect(alarm.raised.length).toBe(1);
  });
});

describe('silence', () => {
  test('is called by the clock when nothing came, and ends with the next word', () => {
    const condition = silence();
    const alarm = follow(condition);
    see(condition, alarm, reading(30, 25));
    tick(condition, alarm, 89);
    expect(alarm.raised).toEqual([]);
    tick(condition, alarm, 90);
    expect(alarm.raised.map(({ beganS }) => beganS)).toEqual([30]);
    see(condition, alarm, reading(200, 25));
    expect(state(alarm)).toBe('returned');
    tick(condition, alarm, 260);
    expect(alarm.raised.map(({ beganS }) => beganS)).toEqual([30, 200]);
  });

  test('a sensor that gives only bad readings is silent; its gateway is not', () => {
    for (const anyWord of [true, false]) {
      const condition = silence({ anyWord });
      const alarm = follow(condition);
      for (let s = 0; s <= 120; s += 10) {
        see(condition, alarm, reading(s, -127, { quality: 'bad' }));
        tick(condition, alarm, s);
      }
      expect(alarm.raised.length).toBe(anyWord ? 0 : 1);
    }
  });

  test('goes by when readings came, and by those that came by themselves', () => {
    const condition = silence();
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 25, { cameMs: 50_000 }));
    see(condition, alarm, reading(60, 25, { isByHand: true }));
    tick(condition, alarm, 109);
    expect(alarm.raised).toEqual([]);
    tick(condition, alarm, 110);
    expect(alarm.raised.length).toBe(1);
  });

  test('within the off-delay is the same silence', () => {
    const condition = silence({ offDelayS: 300 });
    const alarm = follow(condition);
    tick(condition, alarm, 60);
    see(condition, alarm, reading(100, 25));
    expect(alarm.watch.phase).toBe('clearing');
    tick(condition, alarm, 160);
    expect([alarm.watch.phase, open(alarm).length]).toEqual(['active', 1]);
  });

  test('that nobody listened to is not counted', () => {
    const condition = silence();
    const begun = beginWatch(condition, 0);
    expect(excuse(condition, begun, 1_000_000).dueMs).toBe(1_060_000);
    expect(excuse(limits(), beginWatch(limits(), 0), 1_000_000).dueMs).toBeNull();
  });
});
