import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Limits, Still } from '#core/alarms/condition';
import { type Followed, follow, limits, reading, see, still, tick } from './run-alarm';

/** Readings at whole seconds: how long after the one before, and the value. */
const readings = (values: fc.Arbitrary<number>, most = 50) =>
  fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), values), { minLength: 1, maxLength: most }).map((list) => {
    return list.map(([, value], i) => ({ atS: sumTo(list, i), value }));
  });
const sumTo = (list: readonly [number, number][], to: number) =>
  list.slice(0, to + 1).reduce((sum, [after]) => sum + after, 0);
type Read = { atS: number; value: number };

/** Holds an alarm to readings and to the clock of every second. @returns seconds at which it was raised and came back */
function played(condition: Limits | Still, read: readonly Read[]): { atS: number; is: 'raised' | 'returned' }[] {
  const alarm = follow(condition);
  const turns: { atS: number; is: 'raised' | 'returned' }[] = [];
  const note = (was: Followed['watch']['phase'], atS: number) => {
    const stood = was === 'active' || was === 'clearing';
    const stands = alarm.watch.phase === 'active' || alarm.watch.phase === 'clearing';
    if (stood !== stands) turns.push({ atS, is: stands ? 'raised' : 'returned' });
  };
  const endS = (read.at(-1)?.atS ?? 0) + 100;
  for (let atS = 0; atS <= endS; atS++) {
    const one = read.find((r) => r.atS === atS);
    const was = alarm.watch.phase;
    if (one) see(condition, alarm, reading(atS, one.value));
    tick(condition, alarm, atS);
    note(was, atS);
  }
  return turns;
}

/**
 * The same by other means: second by second, with what the newest reading said held until the next. Counters are kept as a
 * controller would keep them, by IEC 62682: an on-delay that any break begins anew, a dead band and an off-delay for return.
 */
function reckoned({ above = Infinity, below = -Infinity, deadBand, delayS, offDelayS }: Limits, read: readonly Read[]) {
  const turns: { atS: number; is: 'raised' | 'returned' }[] = [];
  const endS = (read.at(-1)?.atS ?? 0) + 100;
  let [held, isUp, beyondFor, insideFor] = [Number.NaN, false, -1, -1];
  for (let atS = 0; atS <= endS; atS++) {
    const one = read.find((r) => r.atS === atS);
    if (one) held = one.value;
    const isBeyond = held > above || held < below;
    const isInside = held <= above - deadBand && held >= below + deadBand;
    beyondFor = isBeyond ? beyondFor + 1 : -1;
    insideFor = isInside ? insideFor + 1 : -1;
    if (!isUp && beyondFor >= delayS) {
      isUp = true;
      turns.push({ atS, is: 'raised' });
      insideFor = -1;
    } else if (isUp && one && insideFor >= offDelayS) {
      isUp = false;
      turns.push({ atS, is: 'returned' });
    }
  }
  return turns;
}

describe('a limit with its dead band and delays', () => {
  const condition = fc.record({
    above: fc.constant(26),
    below: fc.constantFrom(undefined, 22),
    deadBand: fc.constantFrom(0, 0.3, 1),
    delayS: fc.constantFrom(0, 1, 30, 90),
    offDelayS: fc.constantFrom(0, 1, 45),
  });
  const value = fc.constantFrom(20, 22, 22.3, 23, 25, 25.7, 26, 26.001, 27);

  test('turns at the seconds that a plain reckoning gives', () => {
    fc.assert(
      fc.property(condition, readings(value), ({ below, ...given }, read) => {
        const held = limits({ ...given, ...(below === undefined ? {} : { below }) });
        expect(played(held, read)).toEqual(reckoned(held, read));
      }),
      { numRuns: 150 },
    );
  });

  test('is never raised twice while the value only chatters within the dead band', () => {
    const chatter = fc.double({ min: 25.701, max: 26.5, noNaN: true });
    fc.assert(
      fc.property(readings(chatter), (read) => {
        const raised = played(limits({ above: 26, deadBand: 0.3 }), read).filter(({ is }) => is === 'raised');
        expect(raised.length).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a rate', () => {
  /** The running mean by small steps, with the value in a straight line between readings. */
  function rates(read: readonly Read[], meanS: number): number[] {
    const STEPS = 400;
    let mean = read[0]?.value ?? 0;
    return read.map(({ atS, value }, i) => {
      const before = read[i - 1];
      if (!before) return 0;
      const h = (atS - before.atS) / STEPS;
      for (let k = 0; k < STEPS; k++) {
        const v = before.value + ((value - before.value) * (k + 0.5)) / STEPS;
        mean += (h * (v - mean)) / meanS;
      }
      return ((value - mean) / meanS) * 3600;
    });
  }

  test('is what the running mean of small steps gives, at every reading', () => {
    const meanS = 120;
    fc.assert(
      fc.property(readings(fc.double({ min: 20, max: 30, noNaN: true }), 15), (read) => {
        const condition = limits({ above: 1e9, of: { kind: 'rate', meanS }, deadBand: 0 });
        const alarm = follow(condition);
        const expected = rates(read, meanS);
        for (const [i, { atS, value }] of read.entries()) {
          see(condition, alarm, reading(atS, value));
          if (i > 0) expect(Math.abs((alarm.watch.lastValue ?? 0) - (expected[i] ?? 0))).toBeLessThan(2);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('of a steady ramp comes to be its slope, six sevenths of it after twice the mean', () => {
    const condition = limits({ above: 1e9, of: { kind: 'rate', meanS: 1800 }, deadBand: 0 });
    const alarm = follow(condition);
    const reached = (hours: number) => {
      for (let atS = 0; atS <= hours * 3600; atS += 60) see(condition, alarm, reading(atS, 25 + (0.8 * atS) / 3600));
      return alarm.watch.lastValue ?? 0;
    };
    // 1 − e⁻² = 0.8647 of the slope: the step response of a lag of first order.
    expect(reached(1) / 0.8).toBeCloseTo(0.8647, 3);
    expect(reached(6)).toBeCloseTo(0.8, 3);
  });
});

describe('a sensor that stands still', () => {
  test('is called exactly when no reading of the time before left the band round the first', () => {
    const within = 0.1;
    fc.assert(
      fc.property(readings(fc.constantFrom(25, 25.05, 25.1, 25.2)), (read) => {
        const turns = played(still({ within }), read);
        // The same by other means: how long the run of readings that ends here has kept to its first one.
        let first = 0;
        let isUp = false;
        const expected = read.flatMap(({ atS, value }, i) => {
          const anchor = read[first] ?? { atS: 0, value: 0 };
          if (Math.abs(value - anchor.value) > within) first = i;
          const stands = atS - (read[first]?.atS ?? 0) >= 60;
          if (stands === isUp || (isUp && first !== i)) return [];
          isUp = stands;
          return [{ atS, is: stands ? 'raised' : 'returned' }];
        });
        expect(turns).toEqual(expected);
      }),
      { numRuns: 100 },
    );
  });

  test('is not called for silence: where nothing comes, nothing is said to stand still', () => {
    const condition = still();
    const alarm = follow(condition);
    see(condition, alarm, reading(0, 25));
    for (let atS = 1; atS < 600; atS += 10) tick(condition, alarm, atS);
    expect(alarm.raised).toEqual([]);
  });
});

describe('starts', () => {
  test('are counted over the last hour, as many as the value rose above what idles', () => {
    const condition = limits({ above: 3, of: { kind: 'starts', runsAbove: 2 }, deadBand: 0 });
    const minutes = fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.constantFrom(0, 1, 40)), { maxLength: 40 });
    fc.assert(
      fc.property(minutes, (list) => {
        const alarm = follow(condition);
        const read = list.map(([, value], i) => ({ atS: 60 * sumTo(list, i), value }));
        for (const [i, { atS: nowS, value }] of read.entries()) {
          see(condition, alarm, reading(nowS, value));
          const counted = read.filter(
            (one, k) => k > 0 && k <= i && one.atS > nowS - 3600 && one.value > 2 && (read[k - 1]?.value ?? 0) <= 2,
          );
          expect(alarm.watch.lastValue).toBe(counted.length);
        }
      }),
      { numRuns: 60 },
    );
  });
});
