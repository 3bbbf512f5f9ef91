import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SENSOR_QUANTITIES, type SensorQuantity } from '#core/facility/system';
import bounds from '#core/readings/bounds.json';
import manner from '#core/readings/manner.json';
import { type Coming, judgeAfter, judgeBeside, judgeClock, type Standing } from '#core/readings/judge-after';

const HOUR = 3_600_000;
const NOON = Date.UTC(2026, 5, 1, 12);

function coming(value: number, hours = 0, quantity: SensorQuantity = 'temperature'): Coming {
  return { quantity, atMs: NOON + hours * HOUR, value, quality: 'good' };
}

function stood(value: number, given: Partial<Standing> = {}): Standing {
  return { atMs: NOON, value, quality: 'good', sameSinceMs: NOON, ...given };
}

describe('a reading after another of its sensor', () => {
  test.each([
    ['that is a little warmer', 26, 1 / 60, 'good'],
    ['that jumps', 31, 1 / 60, 'too-fast'],
    ['that falls as fast', 19, 1 / 60, 'too-fast'],
    ['that is as much warmer hours later', 31, 4, 'good'],
  ])('%s is %s', (_name, value, hours, expected) => {
    const judged = judgeAfter(coming(value, hours), stood(25));
    expect(judged.reason ?? judged.quality).toBe(expected);
  });

  test('is held to the one before it, also a doubted one: what has changed is believed from the second on', () => {
    const jump = judgeAfter(coming(31, 0.01), stood(25));
    expect(jump.quality).toBe('suspect');
    const next = judgeAfter(coming(31.1, 0.02), stood(31, { atMs: NOON + 0.01 * HOUR, quality: jump.quality }));
    expect(next.quality).toBe('good');
  });

  test('is not held to a bad one, nor to one that was taken later', () => {
    expect(judgeAfter(coming(31, 0.01), stood(25, { quality: 'bad' })).quality).toBe('good');
    expect(judgeAfter(coming(31, -0.01), stood(25)).quality).toBe('good');
  });

  test('is frozen once it has been exactly the same for longer than the probe’s noise allows', () => {
    let standing: Standing | null = null;
    const verdicts: string[] = [];
    for (let hour = 0; hour <= 26; hour++) {
      const judged = judgeAfter(coming(25.1, hour), standing);
      verdicts.push(judged.reason ?? judged.quality);
      standing = { atMs: NOON + hour * HOUR, value: 25.1, quality: judged.quality, sameSinceMs: judged.sameSinceMs };
    }
    expect(verdicts.slice(0, 25)).toEqual(Array(25).fill('good'));
    expect(verdicts.slice(25)).toEqual(['frozen', 'frozen']);
    expect(judgeAfter(coming(25.2, 27), standing).quality).toBe('good');
  });

  test('that is the same after a long pause says nothing of what was between', () => {
    const long = stood(25, { sameSinceMs: NOON - 100 * HOUR });
    expect(judgeAfter(coming(25, 7), long)).toEqual({ quality: 'good', sameSinceMs: NOON + 7 * HOUR });
  });

  test('of what jumps and stands still of itself is never too fast and never frozen', () => {
    for (const quantity of ['level', 'flow', 'leak', 'watts'] as const) {
      const limit = { atMs: NOON, value: 1, quality: 'good' as const, sameSinceMs: NOON - 1000 * HOUR };
      expect(judgeAfter(coming(1, 1, quantity), limit).quality).toBe('good');
      expect(judgeAfter(coming(0, 0.001, quantity), limit).quality).toBe('good');
    }
  });

  test('is never less doubtful than it was', () => {
    const value = fc.double({ min: -10, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        value,
        value,
        fc.constantFrom('suspect' as const, 'bad' as const),
        fc.constantFrom(...SENSOR_QUANTITIES),
        (a, b, quality, quantity) => {
          const one: Coming = { ...coming(a, 0.1, quantity), quality, reason: 'unlikely' };
          expect(judgeAfter(one, stood(b))).toMatchObject({ quality, reason: 'unlikely' });
          expect(judgeBeside(one, stood(b), [])).toEqual({ quality, reason: 'unlikely' });
          expect(judgeClock(one, 0)).toEqual({ quality, reason: 'unlikely' });
        },
      ),
    );
  });
});

test('two probes of one tank that are further apart than both can be right are doubted, whichever came', () => {
  expect(judgeBeside(coming(25), stood(26.3), [0.2, 0.2])).toEqual({ quality: 'suspect', reason: 'disagrees' });
  expect(judgeBeside(coming(25), stood(26.1), [0.2, null])).toMatchObject({ quality: 'suspect' });
  // Less is known of these two: what each may be off by is more than that.
  expect(judgeBeside(coming(25), stood(26.1), [0.5, 0.5])).toEqual({ quality: 'good' });
  expect(judgeBeside(coming(25), stood(30, { atMs: NOON - 301_000 }), [])).toEqual({ quality: 'good' });
  expect(judgeBeside(coming(25), stood(30, { quality: 'bad' }), [])).toEqual({ quality: 'good' });
});

test('a reading from more than a minute ahead of its arrival is doubted', () => {
  expect(judgeClock(coming(25), NOON - 60_000)).toEqual({ quality: 'good' });
  expect(judgeClock(coming(25), NOON - 60_001)).toEqual({ quality: 'suspect', reason: 'clock-ahead' });
});

test('every manner is of a quantity that is read, with a source, and wider than nothing', () => {
  for (const [quantity, { source, ...figures }] of Object.entries(manner)) {
    expect(Object.keys(bounds)).toContain(quantity);
    expect(source).not.toBe('');
    expect(Math.min(...Object.values(figures))).toBeGreaterThan(0);
  }
});
