import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Followed, type Noted, unmovedOf } from '#core/rounds/unmoved';

const DAY = 86_400_000;
const NOW = 30 * DAY;
/** Entries once a day, the last of them now. */
const daily = (values: readonly number[]): Noted[] =>
  values.map((value, index) => ({ atMs: NOW - (values.length - 1 - index) * DAY, value }));
const besides = (noted: readonly Noted[], values: readonly number[]) =>
  new Map(noted.map(({ atMs }, index) => [atMs, values[index] ?? 0]));

const MONTH = [24.8, 25.1, 24.6, 25.3, 24.9, 25.2, 24.7, 25.4, 25, 24.6, 25.1, 24.8, 25.2, 24.9, 25.3];
const STILL = [25.1, 25.1, 25.2, 25.1, 25.1, 25.2, 25.1];
const SWAYS = [24.4, 25.6, 24.9, 25.3, 24.2, 25.5, 24.8];

const line = (name: string, noted: readonly Noted[], beside: ReadonlyMap<number, number> | null): Followed => ({
  line: name,
  quantity: 'temperature',
  noted,
  beside,
});
/** Three quantities of a kind, for one or two are nothing to ask about. */
const three = (noted: readonly Noted[], beside: ReadonlyMap<number, number> | null) =>
  unmovedOf(
    ['one', 'two', 'three'].map((name) => line(name, noted, beside)),
    NOW,
  ).length;

describe('what hardly moved in a week', () => {
  test('is asked about where the sensor beside it moved, three quantities together, and not two', () => {
    const noted = daily(STILL);
    const moved = besides(noted, SWAYS);
    expect(three(noted, moved)).toBe(3);
    expect(unmovedOf([line('one', noted, moved), line('two', noted, moved)], NOW)).toEqual([]);
    expect(
      unmovedOf(
        ['one', 'two', 'three'].map((name) => line(name, noted, moved)),
        NOW,
      )[0],
    ).toEqual({ line: 'one', quantity: 'temperature', many: 7, fromMs: NOW - 6 * DAY });
  });

  test('is not where the sensor is as steady, or read too seldom to tell', () => {
    const noted = daily(STILL);
    expect(three(noted, besides(noted, [25.02, 25.1, 25.06, 25.11, 25.2, 25.05, 25.12]))).toBe(0);
    expect(three(noted, new Map([...besides(noted, SWAYS)].slice(0, 3)))).toBe(0);
  });

  test('is asked about without a sensor where the weeks before moved, and not where they stood as still', () => {
    expect(three(daily([...MONTH, ...STILL]), null)).toBe(3);
    expect(three(daily([...STILL, ...STILL, ...STILL]), null)).toBe(0);
    expect(three(daily(STILL), null)).toBe(0);
  });

  test('is not where it did move, where it is nothing, and where fewer than five entries or five days tell', () => {
    const noted = daily([25.1, 25.1, 25.4, 25.1, 25.1, 25.2, 25.1]);
    expect(three(noted, besides(noted, SWAYS))).toBe(0);
    const none = daily([0, 0, 0, 0, 0, 0, 0]);
    expect(three(none, besides(none, SWAYS))).toBe(0);
    const few = daily(STILL.slice(0, 5));
    expect(three(few, besides(few, SWAYS))).toBe(0);
  });

  test('is held to the step of what was typed in °F as well', () => {
    const celsius = (f: number) => Number((((f - 32) * 5) / 9).toFixed(6));
    const noted = daily([77.1, 77.2, 77.1, 77.1, 77.2, 77.1, 77.1].map(celsius));
    expect(three(noted, besides(noted, SWAYS))).toBe(3);
    expect(three(daily([77.1, 77.4, 77.1, 77.1, 77.2, 77.1, 77.1].map(celsius)), besides(noted, SWAYS))).toBe(0);
  });

  test('is never asked of whoever reads the same water and rounds, whatever the water does', () => {
    const tenths = fc.integer({ min: 0, max: 3 });
    const water = fc.array(fc.double({ min: 20, max: 21, noNaN: true }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(water, tenths, fc.double({ min: -2, max: 2, noNaN: true }), (truth, digits, offset) => {
        const noted = daily(truth.map((value) => Number(value.toFixed(digits))));
        expect(
          three(
            noted,
            besides(
              noted,
              truth.map((value) => value + offset),
            ),
          ),
        ).toBe(0);
      }),
      { numRuns: 200 },
    );
  });
});
