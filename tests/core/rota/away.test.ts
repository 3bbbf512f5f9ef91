import { taker } from '#core/equipment/take';
import { DAYS } from '#core/facility/site';
import { awayWeek, cutByAway, turnsApart, withAway } from '#core/rota/away';
import { behind } from '#core/rota/behind';
import { answerTimes, coverOf, reachedAfter, staffed } from '#core/rota/cover';
import { datedLine } from '#core/rota/dated-line';
import { usualLine } from '#core/rota/line';
import type { DutyException } from '#core/rota/rota';
import { type Rota, turnsOf } from '#core/rota/turns';
import { atTwoSites } from '#core/rota/two-sites';
import { HOUR, MINUTE, weekSecond } from '#core/time/week';
import { dayStart, instantOf } from '#core/time/zone';
import { describe, expect, test } from 'vitest';
import { facility, person, shift } from '../../_support/build-facility';
import { entered } from '../../_support/given';

const ZONE = 'Europe/London';
const MONDAY = '2026-06-01';
const at = (date: string, time = '00:00') => instantOf(ZONE, date, time);
const shiftOf = (key: string, kind: 'on-site' | 'on-call', from: string, to: string) =>
  shift({ key, kind, people: ['ada'], days: [...DAYS], from, to });
const ada = person({ key: 'ada', travelMin: entered(20) });
const site = facility({
  people: [ada],
  shifts: [shiftOf('day', 'on-site', '08:00', '16:00'), shiftOf('call', 'on-call', '16:00', '08:00')],
});
const given = {
  ...site,
  site: { ...site.site, zone: ZONE, answerOnSiteMin: entered(5), answerOnCallMin: entered(10) },
};
const there: Rota = {
  site: { zone: ZONE },
  people: [ada],
  shifts: [shiftOf('late', 'on-site', '14:00', '18:00')],
  exceptions: [],
};
const awayTurns = (from: number, to: number) =>
  turnsOf(there, from, to).map(({ start, end }) => ({ person: 'ada', start, end, wayS: 45 * MINUTE }));
const week = [dayStart(ZONE, MONDAY), dayStart(ZONE, '2026-06-08')] as const;
const away = awayWeek(
  ZONE,
  awayTurns(...week).filter(({ start }) => start >= week[0]),
);
const apart = withAway(given, new Map([['ada', away]]));

describe('whoever is on site at another site', () => {
  test('is credited with the way from there at least, and is on site at one alone', () => {
    const cover = coverOf(apart, taker('nominal'));
    const reached = (time: string) => (reachedAfter(cover, weekSecond('wed', time), 'rota') ?? 0) / MINUTE;
    // 10:00 on site; 15:00 on site by the rota, but there; 17:00 on call, and there; 19:00 on call, at home.
    expect(['10:00', '15:00', '17:00', '19:00'].map(reached)).toEqual([5, 55, 55, 30]);
    expect([staffed(cover, weekSecond('wed', '10:00')), staffed(cover, weekSecond('wed', '15:00'))]).toEqual([
      true,
      false,
    ]);
  });

  test('is never there sooner than without the other site', () => {
    const [plain, cut] = [coverOf(given, taker('nominal')), coverOf(apart, taker('nominal'))];
    for (let atS = 0; atS < 168 * HOUR; atS += 900)
      expect(reachedAfter(cut, atS, 'rota')).toBeGreaterThanOrEqual(reachedAfter(plain, atS, 'rota') ?? 0);
  });

  test('is seen alike in the usual week and in a dated one that is as usual', () => {
    const usual = usualLine(coverOf(apart, taker('nominal')));
    const [from, to] = [at('2026-05-25'), at('2026-06-23')];
    const turns = turnsApart(turnsOf({ ...given, exceptions: [] }, from, to), awayTurns(from, to));
    const dated = datedLine(ZONE, MONDAY, turns, answerTimes(given, taker('nominal')));
    const inWeek = (all: typeof dated.stretches) =>
      all
        .filter(({ fromS, toS }) => fromS >= 0 && toS <= 168 * HOUR)
        .map((one) => JSON.stringify(one, Object.keys(one).sort()))
        .sort();
    expect(inWeek(dated.stretches)).toEqual(inWeek(usual.stretches));
    expect(inWeek(dated.stretches).length).toBeGreaterThan(20);
  });

  test('of two others at once has the longer way, also over the end of the week', () => {
    const spans = [
      { fromS: 167 * HOUR, lengthS: 3 * HOUR, wayS: 600 },
      { fromS: HOUR, lengthS: HOUR, wayS: 1200 },
    ];
    expect(cutByAway(0, 4 * HOUR, spans)).toEqual([
      { fromS: 0, toS: HOUR, wayS: 600 },
      { fromS: HOUR, toS: 2 * HOUR, wayS: 1200 },
      { fromS: 2 * HOUR, toS: 4 * HOUR, wayS: null },
    ]);
  });
});

test('Two duties on site with less between than the way takes are told of, with that time; with enough they are not', () => {
  const here = { rota: { ...there, shifts: [shiftOf('early', 'on-site', '06:00', '13:30')] }, person: 'ada' };
  const other = (wayMin: number | null) => [{ site: 'inland', person: 'ada', rota: there, wayMin }];
  const found = (wayMin: number | null) => atTwoSites(here, other(wayMin), at(MONDAY, '06:00'), at(MONDAY, '18:00'));
  expect(found(45)).toEqual([
    {
      ...{ from: at(MONDAY, '13:30'), to: at(MONDAY, '14:00'), site: 'inland' },
      ...{ here: 'on-site', there: 'on-site', wayMin: 45, isBetween: true },
    },
  ]);
  expect([found(30), found(null)]).toEqual([[], []]);
});

test('The leave and swaps behind a stretch are those without which others would be on in it', () => {
  const ben = person({ key: 'ben' });
  const exceptions: DutyException[] = [
    { kind: 'leave', person: 'ada', from: at('2026-06-02', '20:00'), to: at('2026-06-03', '02:00') },
    { kind: 'leave', person: 'ben', from: at(MONDAY), to: at('2026-06-05') },
    { kind: 'swap', shift: 'call', date: '2026-06-03', gives: 'ada', takes: 'ben' },
  ];
  const rota: Rota = { ...given, people: [ada, ben], exceptions };
  expect(behind(rota, at('2026-06-02', '21:00'), at('2026-06-02', '23:00'))).toEqual([exceptions[0]]);
  expect(behind(rota, at('2026-06-03', '20:00'), at('2026-06-03', '21:00'))).toEqual(exceptions.slice(1));
  expect(behind(rota, at('2026-06-03', '09:00'), at('2026-06-03', '10:00'))).toEqual([]);
});
