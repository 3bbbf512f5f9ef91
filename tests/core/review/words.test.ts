import {
  caseTitle,
  harmWords,
  hourWords,
  judgementSentence,
  outcomeSentence,
  span,
  VERDICT_WORDS,
  worstHour,
} from '#core/review/words';
import { type CaseThing, type Harm, type Judgement, VERDICTS } from '#core/review/result';
import { describe, expect, test } from 'vitest';
import { everyHour, harm, outcome } from './build-outcome';

const HOUR = 3600;

test.each([
  [0, '0 s'],
  [119, '119 s'],
  [120, '2 min'],
  [7199, '120 min'],
  [7200, '2.0 h'],
  [172_799, '48.0 h'],
  [172_800, '2.0 days'],
  [-5400, '90 min'],
])('a span of %i s is told as %s', (seconds, words) => {
  expect(span(seconds)).toBe(words);
});

test.each([
  [0, 'Monday 00:00'],
  [23, 'Monday 23:00'],
  [24, 'Tuesday 00:00'],
  [167, 'Sunday 23:00'],
])('hour %i of the week is %s', (hour, words) => {
  expect(hourWords(hour)).toBe(words);
});

describe('a harm is told with its limit and the name of its tank:', () => {
  test.each<[Partial<Harm>, string]>([
    [{}, 'Display above 29 °C for 2 h'],
    [{ limit: 31, forMin: 15 }, 'Display above 31 °C for 15 min'],
    [{ forMin: 0 }, 'Display above 29 °C'],
    [{ what: 'salinity', direction: 'below', limit: 31, forMin: 720 }, 'Display below a salinity of 31 for 12 h'],
    [{ what: 'oxygen', direction: 'below', limit: 2.5, forMin: 10 }, 'Display below 2.5 mg/L of oxygen for 10 min'],
    [{ what: 'level', direction: 'below', limit: 0.7, forMin: 60 }, 'Display below 70 % of its water for 60 min'],
    [{ what: 'rise-24h', limit: 4, forMin: 0 }, 'Display warmer by 4 K within a day'],
    [{ what: 'fall-24h', limit: 4, forMin: 0 }, 'Display colder by 4 K within a day'],
    [{ what: 'fall-24h', limit: 5, forMin: 240 }, 'Display colder by 5 K within a day, for 4 h'],
    [{ class: 'floor', what: 'water-on-floor', tank: '', tankName: undefined }, 'water on the floor'],
    [{ class: 'equipment', what: 'pump-dry', tankName: 'Sump 2' }, 'the return pump in Sump 2 draws air'],
    [{ tankName: undefined }, 'display above 29 °C for 2 h'],
  ])('%o', (given, words) => {
    expect(harmWords(harm(given))).toBe(words);
  });
});

describe('an outcome is told at its worst hour:', () => {
  const told = (given: Parameters<typeof outcome>[0]) => outcomeSentence(outcome(given));

  test('in time', () => {
    expect(told({ harmS: 10 * HOUR, lastChanceS: 5 * HOUR, noticeS: 2280, putRightS: 2 * HOUR })).toBe(
      'Harm after 10.0 h (Display above 29 °C for 2 h). Noticed after 38 min; must be put right within 5.0 h; at any hour that takes 2.0 h.',
    );
  });

  test('at an hour of its own', () => {
    const putRightS = everyHour((h): number | null => (h === 166 ? 8 * HOUR : 2 * HOUR));
    expect(told({ harmS: 10 * HOUR, lastChanceS: 5 * HOUR, noticeS: 0, putRightS })).toBe(
      'Harm after 10.0 h (Display above 29 °C for 2 h). Noticed at once; must be put right within 5.0 h; at worst, from Sunday 22:00, that takes 8.0 h.',
    );
  });

  test('noticed, but nobody can do anything', () => {
    expect(told({ harmS: 10 * HOUR, lastChanceS: 5 * HOUR, noticeS: 60, putRightS: null })).toMatch(
      /Noticed after 60 s; must be put right within 5\.0 h; at any hour nobody ever puts it right\.$/,
    );
  });

  test('noticed by nobody', () => {
    expect(told({ harmS: 10 * HOUR, lastChanceS: 5 * HOUR, noticeS: null, putRightS: null })).toMatch(
      /Nobody notices; it would have to be put right within 5\.0 h\.$/,
    );
  });

  test('past saving from the beginning', () => {
    expect(told({ harmS: 0, lastChanceS: 0, noticeS: 60, putRightS: 2 * HOUR })).toBe(
      'Harm at once (Display above 29 °C for 2 h). Noticed after 60 s; nothing done after it begins avoids it; at any hour it is put right after 2.0 h.',
    );
    expect(told({ harmS: 0, lastChanceS: 0, noticeS: null, putRightS: null })).toMatch(
      /Nobody notices; nothing done after it begins avoids it\.$/,
    );
  });
});

describe('the worst hour', () => {
  test('is the one with the least time to spare among those that lead to harm', () => {
    const of = outcome({
      harmS: everyHour((h) => (h === 3 ? null : 9 * HOUR)),
      lastChanceS: everyHour((h) => (h === 3 ? null : 5 * HOUR)),
      putRightS: everyHour((h): number | null => (h === 3 ? 100 * HOUR : h === 50 ? 4 * HOUR : HOUR)),
    });
    expect(worstHour(of)).toBe(50);
  });

  test('is the first at which nobody ever comes, before any at which somebody comes too late', () => {
    const of = outcome({
      harmS: 9 * HOUR,
      lastChanceS: 5 * HOUR,
      putRightS: everyHour((h) => (h === 20 || h === 30 ? null : 40 * HOUR)),
    });
    expect(worstHour(of)).toBe(20);
  });
});

describe('a judgement without harm is told as', () => {
  const nothing: Judgement = { verdict: 'holds', outcomes: [], acted: [] };

  test('harmless, dormant, or not assessed with its reason', () => {
    expect(judgementSentence(nothing)).toBe('No harm within seven days though nobody comes.');
    const dormant = (...disables: string[]) => judgementSentence({ ...nothing, verdict: 'dormant', disables });
    expect(dormant('Too warm')).toBe('Harmless by itself, but it puts out of action: Too warm.');
    expect(dormant('a', 'b', 'c', 'd')).toMatch(/: a, b, c, d\.$/);
    expect(dormant('a', 'b', 'c', 'd', 'e')).toMatch(/: a, b, c and 2 more\.$/);
    expect(judgementSentence({ ...nothing, verdict: 'not-assessed', reason: 'not known: power of Heater 1' })).toBe(
      'Not assessed: not known: power of Heater 1.',
    );
  });
});

describe('a case is called', () => {
  const thing = (kind: CaseThing['kind'], name: string): CaseThing => ({ kind, key: 'key', name });

  test.each([
    [
      { title: 'Heater welded on', thing: thing('equipment', 'Heater 1'), state: 'normal' as const },
      'Heater 1: heater welded on',
    ],
    [
      { title: 'Heater dead', thing: thing('equipment', 'Heater 1'), state: 'water-change' as const },
      'Heater 1: heater dead during water change',
    ],
    [{ title: 'RCD group trips', thing: thing('rcd', 'RCD 2'), state: 'normal' as const }, 'RCD 2: RCD group trips'],
    [
      { title: 'Feeding pause never ended', thing: thing('state', 'feeding'), state: 'feeding' as const },
      'Feeding pause never ended',
    ],
    [
      { title: 'The state itself', thing: thing('system', 'Reef 1'), state: 'water-change' as const },
      'Water change by itself, with nothing wrong',
    ],
  ])('%o', (given, words) => {
    expect(caseTitle(given)).toBe(words);
  });
});

test('every verdict has its word', () => {
  expect(Object.keys(VERDICT_WORDS).sort()).toEqual([...VERDICTS].sort());
});
