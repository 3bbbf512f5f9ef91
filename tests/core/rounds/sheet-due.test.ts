import { frequencyOf } from '#core/rounds/frequency';
import { standing } from '#core/rounds/due';
import type { Schedule } from '#core/rounds/schedule';
import { onSiteTurns, sheetDues } from '#core/rounds/sheet-due';
import type { Shift } from '#core/rota/rota';
import { instantOf } from '#core/time/zone';
import { describe, expect, test } from 'vitest';

const ZONE = 'Europe/London';
const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const site = { zone: ZONE, hours: [], holidays: [] };
const of = (rule: string, from = '2026-06-01', times = [{ at: '08:00' }]): Schedule => ({ rule, from, times });
const at = (date: string, time: string) => instantOf(ZONE, date, time);

describe('how often a sheet comes round', () => {
  test.each([
    [of('FREQ=DAILY', '2026-06-01', [{ at: '07:00' }, { at: '19:00' }]), 'shift'],
    [of('FREQ=DAILY'), 'day'],
    [of('FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR'), 'day'],
    [of('FREQ=WEEKLY;BYDAY=MO,TH'), 'week'],
    [of('FREQ=DAILY;INTERVAL=3'), 'week'],
    [of('FREQ=WEEKLY;INTERVAL=2;BYDAY=MO'), 'week'],
    [of('FREQ=MONTHLY;BYMONTHDAY=1'), 'month'],
    [of('FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=1'), 'quarter'],
    [of('FREQ=MONTHLY;INTERVAL=12;BYMONTHDAY=1'), 'year'],
    [of('FREQ=YEARLY;BYMONTH=6;BYMONTHDAY=1'), 'year'],
  ])('%o comes each %s', (schedule, frequency) => {
    expect(frequencyOf(schedule)).toBe(frequency);
  });
});

/** The waits are common practice, no source; what is held here is that each frequency has its own. */
describe('due, late, missed', () => {
  const first = (schedule: Schedule, graceMin?: number, shifts: Shift[] = []) => {
    const [one] = sheetDues(
      { schedule, ...(graceMin !== undefined && { graceMin }) },
      site,
      '2026-06-01',
      '2026-06-20',
      onSiteTurns(shifts, ZONE, '2026-06-01', '2026-06-20'),
    );
    if (!one) throw new Error('nothing is due');
    return one;
  };
  const lateAfter = (schedule: Schedule) => {
    const { dueAt, lateAt } = first(schedule);
    return (lateAt - dueAt) / DAY;
  };

  test('each shift after two hours, weekly a day later, monthly five, quarterly fourteen, yearly thirty', () => {
    const shift = first(of('FREQ=DAILY', '2026-06-01', [{ at: '07:00' }, { at: '19:00' }]));
    expect(shift.lateAt - shift.dueAt).toBe(2 * HOUR);
    expect(lateAfter(of('FREQ=WEEKLY;BYDAY=MO'))).toBe(1);
    expect(lateAfter(of('FREQ=MONTHLY;BYMONTHDAY=1'))).toBe(5);
    expect(lateAfter(of('FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=1'))).toBe(14);
    expect(lateAfter(of('FREQ=YEARLY;BYMONTH=6;BYMONTHDAY=1'))).toBe(30);
  });

  test('daily at the end of the shift it falls in, or of the day where it falls in none', () => {
    const daily = of('FREQ=DAILY');
    expect(first(daily).lateAt).toBe(at('2026-06-02', '00:00'));
    const shift: Shift = { key: 'a', kind: 'on-site', days: ['mon'], from: '07:00', to: '15:30', people: ['ash'] };
    expect(first(daily, undefined, [shift]).lateAt).toBe(at('2026-06-01', '15:30'));
  });

  test('a sheet that says for itself how long it may wait is late by that, but never after the next has opened', () => {
    expect(first(of('FREQ=DAILY'), 45).lateAt).toBe(at('2026-06-01', '08:45'));
    const { lateAt, closesAt } = first(of('FREQ=DAILY'), 3 * 24 * 60);
    expect(lateAt).toBe(closesAt);
  });

  test('it is missed from when the next may be begun, which is known though that lies far beyond the days that were asked for', () => {
    const daily = first(of('FREQ=DAILY'));
    expect(daily.closesAt).toBe(at('2026-06-02', '07:00'));
    expect(standing(daily, null, null, daily.closesAt - 1)).toBe('late');
    expect(standing(daily, null, null, daily.closesAt)).toBe('missed');
    const quarterly = first(of('FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=1'));
    expect(quarterly.closesAt).toBe(at('2026-09-01', '08:00') - 7 * DAY);
    const yearly = first(of('FREQ=YEARLY;BYMONTH=6;BYMONTHDAY=1'));
    expect(yearly.closesAt).toBe(at('2027-06-01', '08:00') - 14 * DAY);
  });

  test('each opens, is due, late and closed in this order, and the last of a rule closes too', () => {
    const ended = { ...of('FREQ=DAILY'), until: '2026-06-03' };
    const dues = sheetDues({ schedule: ended }, site, '2026-06-01', '2026-07-01');
    expect(dues.map(({ date }) => date)).toEqual(['2026-06-01', '2026-06-02', '2026-06-03']);
    for (const { opensAt, dueAt, lateAt, closesAt } of dues)
      expect([opensAt, dueAt, lateAt, closesAt].toSorted((a, b) => a - b)).toEqual([opensAt, dueAt, lateAt, closesAt]);
  });
});
