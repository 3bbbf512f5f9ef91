import { VERDICTS, type Verdict } from '#core/review/result';
import { gravity, isVerdict, verdictOf } from '#core/review/verdict';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { everyHour, type GivenOutcome, outcome } from './build-outcome';

/** Harm after 10 h and last chance after 5 h, unless a row says otherwise; times in hours, null for never. */
const HARM = { harmS: 10, lastChanceS: 5 };
const none = { harmS: null, lastChanceS: null };
const at = (hour: number, there: number | null, elsewhere: number | null) =>
  everyHour((h) => (h === hour ? there : elsewhere));

describe('the first match decides', () => {
  test.each<[string, GivenOutcome, Verdict]>([
    ['no hour leads to harm', { ...none, noticeS: 1, putRightS: 2 }, 'holds'],
    ['no hour leads to harm, and nobody would notice or come', { ...none, noticeS: null, putRightS: null }, 'holds'],
    ['nobody notices at any hour', { ...HARM, noticeS: null, putRightS: null }, 'no-warning'],
    ['noticed only after the last chance, at every hour', { ...HARM, noticeS: 6, putRightS: 7 }, 'no-warning'],
    ['noticed exactly at the last chance, at every hour', { ...HARM, noticeS: 5, putRightS: 7 }, 'no-warning'],
    [
      'nothing avoids it, though it is noticed at once',
      { harmS: 10, lastChanceS: 0, noticeS: 0, putRightS: 0 },
      'no-warning',
    ],
    [
      'a last chance that is not known counts as none',
      { harmS: 10, lastChanceS: null, noticeS: 0, putRightS: 0 },
      'no-warning',
    ],
    [
      'noticed a moment before the last chance, put right after it',
      { ...HARM, noticeS: 4.99, putRightS: 7 },
      'too-late',
    ],
    [
      'noticed in time at one hour, but never put right in time',
      { ...HARM, noticeS: at(3, 4, 6), putRightS: 7 },
      'too-late',
    ],
    ['noticed in time, and nobody ever comes', { ...HARM, noticeS: 1, putRightS: null }, 'too-late'],
    ['put right exactly at the last chance: nothing to spare', { ...HARM, noticeS: 1, putRightS: 5 }, 'too-late'],
    ['put right in time at a single hour', { ...HARM, noticeS: 1, putRightS: at(167, 4, 6) }, 'some-hours'],
    ['too late at a single hour', { ...HARM, noticeS: 1, putRightS: at(0, 5, 4) }, 'some-hours'],
    ['nobody comes at a single hour', { ...HARM, noticeS: 1, putRightS: at(80, null, 4) }, 'some-hours'],
    [
      'nobody notices, but one hour leads to no harm',
      { harmS: at(9, null, 10), lastChanceS: at(9, null, 5), noticeS: null, putRightS: null },
      'some-hours',
    ],
    [
      'harm at a single hour, and nobody comes then',
      { harmS: at(9, 10, null), lastChanceS: at(9, 5, null), noticeS: null, putRightS: null },
      'some-hours',
    ],
    [
      'harm at a single hour, put right in time then, never at the others',
      { harmS: at(9, 10, null), lastChanceS: at(9, 5, null), noticeS: at(9, 1, null), putRightS: at(9, 4, null) },
      'covered',
    ],
    ['put right in time at every hour', { ...HARM, noticeS: 1, putRightS: 4.99 }, 'covered'],
    [
      'noticed after the last chance on an hour without harm',
      { harmS: at(9, null, 10), lastChanceS: at(9, null, 5), noticeS: at(9, 100, 1), putRightS: at(9, 200, 4) },
      'covered',
    ],
  ])('%s', (_, given, verdict) => {
    expect(verdictOf(outcome(given))).toBe(verdict);
  });
});

const maybe = fc.option(fc.integer({ min: 0, max: 12 }), { freq: 4 });
/** Weeks of few kinds of hours, so that rare verdicts come up; a last chance never lies after its harm. */
const anyWeek = fc
  .array(fc.record({ harm: maybe, before: fc.nat(6), notice: maybe, more: fc.nat(8), comes: fc.boolean() }), {
    minLength: 1,
    maxLength: 3,
  })
  .chain((kinds) => fc.array(fc.constantFrom(...kinds), { minLength: 168, maxLength: 168 }))
  .map((hours) => ({
    harmS: hours.map(({ harm }) => harm),
    lastChanceS: hours.map(({ harm, before }) => (harm === null ? null : Math.max(0, harm - before))),
    noticeS: hours.map(({ notice }) => notice),
    putRightS: hours.map(({ notice, more, comes }) => (notice === null || !comes ? null : notice + more)),
  }));

test('is what the definition says, word for word, for any week', () => {
  const seen = new Set<Verdict>();
  fc.assert(
    fc.property(anyWeek, (week) => {
      const of = outcome(week);
      const hours = everyHour((h) => {
        const harmed = of.harmS[h] !== null;
        const last = of.lastChanceS[h] ?? 0;
        const known = of.noticeS[h] ?? Number.POSITIVE_INFINITY;
        const spare = of.putRightS[h] === null ? Number.NEGATIVE_INFINITY : last - (of.putRightS[h] ?? 0);
        return { harmed, beforeAnybody: harmed && known >= last, nothingToSpare: harmed && spare <= 0 };
      });
      const verdict: Verdict = !hours.some((h) => h.harmed)
        ? 'holds'
        : hours.every((h) => h.beforeAnybody)
          ? 'no-warning'
          : hours.every((h) => h.nothingToSpare)
            ? 'too-late'
            : hours.some((h) => h.nothingToSpare)
              ? 'some-hours'
              : 'covered';
      seen.add(verdict);
      expect(of.verdict).toBe(verdict);
    }),
    { numRuns: 400 },
  );
  expect([...seen].sort()).toEqual(['covered', 'holds', 'no-warning', 'some-hours', 'too-late']);
});

test('never gets worse when somebody notices, or has it put right, sooner at any hour', () => {
  const sooner = fc.array(fc.nat(5), { minLength: 168, maxLength: 168 });
  const less = (times: (number | null)[], by: number[], never: number) =>
    times.map((s, h) => (s === null ? (by[h] === 0 ? never : null) : Math.max(0, s - (by[h] ?? 0))));
  fc.assert(
    fc.property(anyWeek, sooner, (week, by) => {
      const noticeS = less(week.noticeS, by, 20);
      const putRightS = less(week.putRightS, by, 30).map((s, h) => (noticeS[h] === null ? null : s));
      const kept = week.putRightS.map((s, h) => putRightS[h] ?? s);
      expect(gravity(outcome({ ...week, noticeS, putRightS: kept }).verdict)).toBeGreaterThanOrEqual(
        gravity(outcome(week).verdict),
      );
    }),
    { numRuns: 400 },
  );
});

test('from the gravest to the harmless the verdicts rank: no warning, too late, some hours, not assessed, covered, dormant, holds', () => {
  expect([...VERDICTS].sort((a, b) => gravity(a) - gravity(b))).toEqual([
    'no-warning',
    'too-late',
    'some-hours',
    'not-assessed',
    'covered',
    'dormant',
    'holds',
  ]);
});

test('only the seven words are verdicts', () => {
  expect(VERDICTS.every(isVerdict)).toBe(true);
  expect(['', 'holds ', 'safe', 'Holds'].some(isVerdict)).toBe(false);
});
