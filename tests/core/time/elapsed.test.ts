import { elapsedTimes } from '#core/time/elapsed';
import { instantOf, wallClock } from '#core/time/zone';
import { describe, expect, test } from 'vitest';

const ZONE = 'America/New_York';
const first = instantOf(ZONE, '1997-09-02', '09:00');
const clocks = (times: number[]) => times.map((at) => wallClock(ZONE, at).time);

describe('every so many minutes', () => {
  test('ninety minutes from nine, four times', () => {
    // Source: RFC 5545 section 3.8.5.3, FREQ=MINUTELY;INTERVAL=90;COUNT=4.
    const times = elapsedTimes({ first, everyMin: 90 }, first, first + 4 * 90 * 60_000);
    expect(clocks(times)).toEqual(['09:00', '10:30', '12:00', '13:30']);
  });

  test('keeps its spacing when the clocks change, and what they show moves', () => {
    // New York went forward on 8 March 2026 at 02:00 (IANA time zone database).
    const begin = instantOf(ZONE, '2026-03-07', '20:00');
    const times = elapsedTimes({ first: begin, everyMin: 240 }, begin, begin + 16 * 3_600_000);
    expect(clocks(times)).toEqual(['20:00', '00:00', '05:00', '09:00']);
  });

  test('is cut at both ends of what is asked, and has nothing before its first', () => {
    const every = { first: 600_000, everyMin: 10 };
    expect(elapsedTimes(every, -5_000_000, 1_200_000)).toEqual([600_000]);
    expect(elapsedTimes(every, 1_200_000, 1_800_001)).toEqual([1_200_000, 1_800_000]);
    expect(elapsedTimes(every, 1_200_001, 1_800_000)).toEqual([]);
  });

  test('is refused when it is no spacing', () => {
    for (const everyMin of [0, -1, Number.NaN])
      expect(() => elapsedTimes({ first, everyMin }, first, first + 1)).toThrow(RangeError);
  });
});
