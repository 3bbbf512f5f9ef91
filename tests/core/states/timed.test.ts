import { DAYS } from '#core/facility/site';
import { scheduleOfDays, timedDue } from '#core/states/timed';
import { describe, expect, test } from 'vitest';

const MINUTE = 60_000;
const place = (zone: string) => ({ zone, hours: [], holidays: ['2026-12-25'] });
const at = (text: string) => Date.parse(text);

describe('a state that begins by the clock', () => {
  // RFC 5545, 3.3.5: the offset before the gap, the first of two. Clocks of New York in 2026: 8 March and 1 November, 02:00.
  test.each([
    ['2026-03-08T07:30:00Z', '2026-03-08T07:35:00Z', '02:30'],
    ['2026-11-01T05:30:00Z', '2026-11-01T05:35:00Z', '01:30'],
  ])('is due at %s where the clocks change', (due, seen, time) => {
    const daily = { rule: 'FREQ=DAILY', from: '2026-01-01', times: [{ at: time }] };
    expect(timedDue(daily, place('America/New_York'), at(seen))).toBe(at(due));
    expect(timedDue(daily, place('America/New_York'), at(seen) + 60 * MINUTE)).toBeNull();
    expect(timedDue(daily, place('America/New_York'), at(seen) - 6 * MINUTE)).toBeNull();
  });

  // RFC 5545, 3.8.5.3, the example "every other day" and "the first Friday": days counted on a calendar by hand.
  test.each([
    ['FREQ=DAILY;INTERVAL=2', '2026-12-03', '2026-12-04'],
    ['FREQ=MONTHLY;BYDAY=1FR', '2026-12-04', '2026-12-11'],
  ])('%s begins on %s, not on %s', (rule, on, notOn) => {
    const schedule = {
      rule,
      from: rule.includes('MONTHLY') ? '2026-11-06' : '2026-12-01',
      times: [{ at: '08:00' }, { at: '17:00' }],
    };
    for (const time of ['08:00', '17:00']) {
      expect(timedDue(schedule, place('UTC'), at(`${on}T${time}Z`))).toBe(at(`${on}T${time}Z`));
      expect(timedDue(schedule, place('UTC'), at(`${notOn}T${time}Z`))).toBeNull();
    }
  });

  test('is counted from closing after midnight, and left out on holidays and days that are excepted', () => {
    const open = { ...place('UTC'), hours: [{ days: [...DAYS], opens: '10:00', closes: '01:00' }] };
    const schedule = {
      rule: 'FREQ=DAILY',
      from: '2026-12-01',
      times: [{ at: '08:00', anchor: 'closing' as const, afterMin: 30 }],
      except: ['2026-12-04'],
      notOnHolidays: true as const,
    };
    expect(timedDue(schedule, open, at('2026-12-04T01:32Z'))).toBe(at('2026-12-04T01:30Z'));
    expect(timedDue(schedule, open, at('2026-12-05T01:32Z'))).toBeNull();
    expect(timedDue(schedule, open, at('2026-12-26T01:32Z'))).toBeNull();
  });

  test('kept by days and a time reads as the weekly rule that says the same', () => {
    const schedule = scheduleOfDays(['mon', 'thu'], '07:30', '2026-12-01');
    expect(schedule).toEqual({ rule: 'FREQ=WEEKLY;BYDAY=MO,TH', from: '2026-12-03', times: [{ at: '07:30' }] });
    expect(timedDue(schedule, place('UTC'), at('2026-12-07T07:31Z'))).toBe(at('2026-12-07T07:30Z'));
    expect(timedDue(schedule, place('UTC'), at('2026-12-08T07:31Z'))).toBeNull();
  });
});
