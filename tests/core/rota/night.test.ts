import { type AnsweredAlarm, answersOf } from '#core/alarms/answers';
import { NOTHING_MEASURED, withMeasured } from '#core/alarms/measured';
import { taker } from '#core/equipment/take';
import { answering, comesAfter } from '#core/rota/answering';
import { answerTimes, coverOf, reachedAfter } from '#core/rota/cover';
import { askedBy, datedLine } from '#core/rota/dated-line';
import { isNight } from '#core/rota/night';
import { turnsOf } from '#core/rota/turns';
import { instantOf } from '#core/time/zone';
import { describe, expect, test } from 'vitest';
import { facility, site } from '../../_support/build-facility';
import { entered } from '../../_support/given';

const HOUR = 3600;
/** Robin on site 08:00 to 18:00; Sam on call from 18:00, 40 min away: leaves after 20 min by day and 50 by night. */
const slow = facility({ site: site({ answerOnCallNightMin: entered(50) }) });
const reached = (atS: number) => (reachedAfter(coverOf(slow, taker('nominal')), atS, 'rota') ?? 0) / 60;

describe('answers by night', () => {
  test('hold from 22:00 to 07:00, also after midnight and at the end of the week, and by day the others', () => {
    expect([10, 20, 22, 24, 30, 31].map((h) => reached(h * HOUR))).toEqual([10, 60, 90, 90, 90, 60]);
    expect(reached(6.5 * 24 * HOUR + 11 * HOUR)).toBe(90);
    expect(reached(0)).toBe(90);
  });

  test('never make a call that is made sooner be answered later: who is woken shortly before seven is up at seven', () => {
    expect(reached(6 * HOUR + 45 * 60)).toBe(75);
    for (let minute = 0; minute < 1440; minute += 5)
      expect(reached(60 * minute)).toBeLessThanOrEqual(5 + reached(60 * (minute + 5)));
  });

  test('are the same in a dated week, at the hours that the clock on the wall shows', () => {
    // The clocks of London go back at 02:00 on Sunday 25 October 2026.
    const monday = '2026-10-19';
    const { from, to } = askedBy('Europe/London', monday);
    const turns = turnsOf({ ...slow, exceptions: [] }, from, to);
    const line = datedLine('Europe/London', monday, turns, answerTimes(slow, taker('nominal')));
    const comes = answering(line.stretches, line.homes, 'rota');
    const at = (date: string, time: string) => {
      const come = comes((instantOf('Europe/London', date, time) - from) / 1000);
      return come && comesAfter(come) / 60;
    };
    expect(at('2026-10-24', '21:55')).toBe(60);
    expect(at('2026-10-24', '22:00')).toBe(90);
    expect(at('2026-10-25', '05:00')).toBe(90);
    expect(at('2026-10-25', '07:00')).toBe(60);
    expect(isNight('Europe/London', instantOf('Europe/London', '2026-10-25', '06:59'))).toBe(true);
    expect(isNight('Europe/London', instantOf('Europe/London', '2026-10-25', '07:00'))).toBe(false);
  });

  test('are measured apart once there are ten of each, and until then together', () => {
    const alarm = (minutes: number, night: boolean): AnsweredAlarm => ({
      ...{ isOnSite: false, isNight: night, raisedMs: 0, acknowledgedMs: minutes * 60_000, returnedMs: null },
    });
    const of = (days: number, nights: number) =>
      answersOf([...Array(days).fill(alarm(5, false)), ...Array(nights).fill(alarm(25, true))], 1e9);
    expect(of(10, 9)).toMatchObject({ onCall: { cases: 19, medianMin: 5, highMin: 25 } });
    expect(of(10, 9).night).toBeUndefined();
    const apart = of(10, 10);
    expect(apart).toMatchObject({
      onCall: { cases: 10, highMin: 5 },
      night: { onSite: null, onCall: { medianMin: 25 } },
    });
    const seen = withMeasured(facility(), { ...NOTHING_MEASURED, ...apart });
    // From having understood to leaving: 20 less 10, by the stated figures.
    expect(seen.site.answerOnCallMin?.value).toBe(15);
    expect(seen.site.answerOnCallNightMin).toMatchObject({ value: 35, origin: 'measured' });
    expect(seen.site.answerOnSiteNightMin).toBeUndefined();
  });
});
