import { describe, expect, test } from 'vitest';
import { answering, hourOfWeek } from '#core/alarms/performance/acknowledged';
import { floodsIn, loadOf } from '#core/alarms/performance/load';
import { chattering, fleeting, stale } from '#core/alarms/performance/nuisance';
import { DAY_MS, HOUR_MS, type Raise, TEN_MIN_MS } from '#core/alarms/performance/raise';
import { REFERENCES } from '#core/alarms/performance/references';
import { performanceOf } from '#core/alarms/performance/report';
import { prioritySpread, topTen } from '#core/alarms/performance/spread';

const raise = (raisedS: number, more: Partial<Raise> = {}): Raise => ({
  alarm: 'one',
  raisedMs: raisedS * 1000,
  returnedMs: null,
  acknowledgedMs: null,
  priority: null,
  told: [],
  ...more,
});
const many = (count: number, more: (at: number) => Partial<Raise>) =>
  Array.from({ length: count }, (_, at) => raise(at, more(at)));

// The lines as summaries of ISA-18.2-2016, clause 16.4, and of IEC 62682 tell them: about 6 and 12 an hour, 1 and 2 in ten
// minutes, at most 10 in any ten minutes, floods from more than 10 to fewer than 5, 1 % of the time, 5 % of the load for the
// ten most frequent, fewer than 5 stale, 80, 15 and 5 % by priority.
test('the reference lines are those of the standard', () => {
  expect(REFERENCES).toEqual({
    perHour: { acceptable: 6, manageable: 12 },
    perTenMin: { acceptable: 1, manageable: 2 },
    mostInTenMin: 10,
    shareOver: 0.01,
    flood: { over: 10, under: 5 },
    topTenShare: 0.05,
    stale: 5,
    spread: { low: 0.8, medium: 0.15, high: 0.05 },
  });
});

describe('a flood', () => {
  test.each([
    ['begins with more than ten and ends with fewer than five', [3, 12, 8, 6, 4, 2], [{ from: 1, to: 4, count: 26 }]],
    ['is none with ten', [3, 10, 10, 3], []],
    [
      'ends and begins again',
      [11, 4, 11, 4],
      [
        { from: 0, to: 1, count: 11 },
        { from: 2, to: 3, count: 11 },
      ],
    ],
    ['may still go on', [11, 5], [{ from: 0, to: 2, count: 16 }]],
  ])('%s', (_, counts, floods) => {
    expect(floodsIn(counts)).toEqual(floods);
  });

  test('takes its share of the time: thirty minutes of an hour', () => {
    const counts = [3, 12, 8, 6, 4, 2];
    const at = counts.flatMap((count, bin) => Array.from({ length: count }, () => bin * TEN_MIN_MS));
    const load = loadOf(at, { fromMs: 0, toMs: HOUR_MS });
    expect(load).toMatchObject({ count: 35, perHour: 35, mostInTenMin: 12, shareInFlood: 0.5, shareOver: 1 / 6 });
    expect(load.perTenMin).toBeCloseTo(35 / 6);
    expect(load.floods).toEqual([{ fromMs: TEN_MIN_MS, toMs: 4 * TEN_MIN_MS, count: 26 }]);
  });

  test('of 275 alarms in eleven minutes, as before a refinery explosion of 1994, is one', () => {
    const at = Array.from({ length: 275 }, (_, i) => TEN_MIN_MS + (i * 660_000) / 275);
    const { floods, mostInTenMin } = loadOf(at, { fromMs: 0, toMs: HOUR_MS });
    expect([floods.length, floods[0]?.count, mostInTenMin]).toEqual([1, 275, 250]);
  });
});

describe('an alarm', () => {
  test.each([
    ['three times within a minute chatters', [0, 20, 59], 1],
    ['three times in a minute and more does not', [0, 20, 60], 0],
    ['six times in two stretches chatters twice', [0, 1, 2, 300, 301, 302], 2],
    ['twice does not', [0, 1], 0],
  ])('%s', (_, times, count) => {
    expect(chattering(times.map((at) => raise(at)))).toEqual(count === 0 ? [] : [{ alarm: 'one', times: count }]);
  });

  test.each([
    ['gone in nine seconds is fleeting', [[0, 9]], 1],
    ['gone in ten is not', [[0, 10]], 0],
    [
      'back within a minute is not fleeting but comes again',
      [
        [0, 5],
        [60, 500],
      ],
      0,
    ],
    [
      'back after a minute is fleeting',
      [
        [0, 5],
        [61, 500],
      ],
      1,
    ],
  ])('%s', (_, times, count) => {
    const raises = times.map(([at = 0, gone = 0]) => raise(at, { returnedMs: gone * 1000 }));
    expect(fleeting(raises)).toEqual(count === 0 ? [] : [{ alarm: 'one', times: count }]);
  });

  test('active for more than a day is stale, also when it still is', () => {
    expect(stale([raise(0, { returnedMs: DAY_MS })], 2 * DAY_MS)).toEqual([]);
    expect(stale([raise(0, { returnedMs: DAY_MS + 1 })], 2 * DAY_MS)).toEqual([{ alarm: 'one', times: 1 }]);
    expect(stale([raise(0)], DAY_MS + 1)).toEqual([{ alarm: 'one', times: 1 }]);
  });
});

test('the ten most frequent of a thousand, thirty each, are thirty in a hundred', () => {
  const raises = many(1000, (at) => ({ alarm: at < 300 ? `often-${at % 10}` : `once-${at}` }));
  const { top, share } = topTen(raises);
  expect([share, top.length, top.every(({ times }) => times === 30)]).toEqual([0.3, 10, true]);
});

test('160 low, 30 medium and 10 high are 80, 15 and 5 in a hundred', () => {
  const raises = many(200, (at) => ({ priority: at < 160 ? 'low' : at < 190 ? 'medium' : 'high' }));
  expect(prioritySpread(raises).map(({ priority, share }) => [priority, share])).toEqual([
    ['low', 0.8],
    ['medium', 0.15],
    ['high', 0.05],
  ]);
});

describe('how soon alarms are acknowledged', () => {
  // 2026-03-02 is a Monday. At 23:30 UTC it is Tuesday in Kathmandu (+05:45), hour 5.
  const monday = Date.parse('2026-03-02T23:30:00Z');

  test('is told by the hour of the week at the site', () => {
    expect([hourOfWeek(monday, 'UTC'), hourOfWeek(monday, 'Asia/Kathmandu')]).toEqual([23, 29]);
    const raises = [2, 4, 30].map((min) => raise(monday / 1000, { acknowledgedMs: monday + min * 60_000 }));
    expect(answering(raises, 'UTC').hours).toEqual([{ day: 0, hour: 23, cases: 3, medianMin: 4, highMin: 30 }]);
  });

  test('leaves nothing out: what nobody acknowledged, and what went back to normal before', () => {
    const raises = [raise(0), raise(0, { returnedMs: 5000 }), raise(0, { returnedMs: 5000, acknowledgedMs: 9000 })];
    expect(answering(raises, 'UTC')).toMatchObject({ never: 2, returnedBefore: 2, all: { cases: 1 } });
  });
});

test('each person has their own load, and how often they are called at night', () => {
  const told = (account: string, hour: number) => [{ account, atMs: hour * HOUR_MS }];
  const raises = [3, 12, 23].map((hour) => raise(hour * 3600, { told: told('kim', hour) }));
  const { answerers, load } = performanceOf(raises, { fromMs: 0, toMs: 7 * DAY_MS }, 'UTC');
  expect(answerers).toMatchObject([{ account: 'kim', atNightPerWeek: 2, load: { count: 3 } }]);
  expect(load.count).toBe(3);
});
