import { isWithin, proposeLimit, valueInTime } from '#core/alarms/design/limit';
import { CONSEQUENCES, MATRIX, PRIORITIES, priorityFor } from '#core/alarms/design/priority';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const rank = (priority: (typeof PRIORITIES)[number]) => PRIORITIES.indexOf(priority);

describe('a priority', () => {
  test('never falls with a graver consequence, nor with less time', () => {
    const consequence = fc.constantFrom(...CONSEQUENCES);
    const time = fc.integer({ min: -3600, max: 86_400 });
    fc.assert(
      fc.property(consequence, consequence, time, time, (a, b, s, t) => {
        const [grave, mild] = CONSEQUENCES.indexOf(a) <= CONSEQUENCES.indexOf(b) ? [a, b] : [b, a];
        expect(rank(priorityFor(grave, Math.min(s, t)))).toBeLessThanOrEqual(rank(priorityFor(mild, Math.max(s, t))));
      }),
    );
  });

  test('has a cell for every consequence and band, and uses each of its three levels', () => {
    for (const row of Object.values(MATRIX)) expect(row.length).toBe(5);
    expect(new Set(Object.values(MATRIX).flat())).toEqual(new Set(PRIORITIES));
    // The end of a band belongs to the next one.
    expect(priorityFor('animals', 240 * 60 - 1)).toBe('high');
    expect(priorityFor('animals', 240 * 60)).toBe('medium');
  });
});

describe('a limit set backwards', () => {
  // "16 - Alarms, Diagnostics and Fault Handling", open PLC course: 20 m², 60 m³/h with the outlet stopped, so 0.05 m/min;
  // the operator takes 10 min and the act 2 min, with a margin of 1.5: 18 min. Overflow at 9.5 m gives a limit of 8.6 m.
  const level = (t: number) => 8 + (0.05 * t) / 60;
  const lastS = (9.5 - 8) / (0.05 / 60);

  test('is that of the published worked example', () => {
    expect(valueInTime('above', level, lastS - 18 * 60)).toBeCloseTo(8.6, 9);
  });

  test('is none where there is no time, or where nothing has moved to its side', () => {
    expect(valueInTime('above', level, -1)).toBeNull();
    expect(valueInTime('below', level, 600)).toBeNull();
  });

  test('within the normal range is reported, as in the example: the normal maximum is 8.0 m', () => {
    expect(isWithin('above', 8.6, { low: 5, high: 8 })).toBe(false);
    expect(isWithin('above', 7.9, { low: 5, high: 8 })).toBe(true);
    expect(isWithin('below', 4.9, { low: 5, high: 8 })).toBe(false);
    expect(isWithin('below', 5.1, { low: 5, high: 8 })).toBe(true);
  });

  test('is the strictest of all cases on either side, and counts those without hope', () => {
    const demands = [
      { case: 'a', value: 26.8 },
      { case: 'b', value: 26.1 },
      { case: 'c', value: null },
    ];
    expect(proposeLimit('above', demands)).toEqual({ value: 26.1, case: 'b', hopeless: ['c'] });
    expect(proposeLimit('below', demands)).toEqual({ value: 26.8, case: 'a', hopeless: ['c'] });
    expect(proposeLimit('above', [])).toEqual({ value: null, case: null, hopeless: [] });
  });
});
