import type { Facility } from '#core/facility/facility';
import { weeksAhead } from '#core/review/people/coming-weeks';
import type { SystemDemand } from '#core/review/people/demand';
import type { DutyException } from '#core/rota/rota';
import { turnsOf } from '#core/rota/turns';
import { instantOf } from '#core/time/zone';
import { DAYS } from '#core/facility/site';
import { describe, expect, test } from 'vitest';
import { facility, round, shift, site } from '../../../_support/build-facility';

const ZONE = 'Europe/London';
const HOUR = 3600;

/** An alarm ten minutes after the onset, half an hour of work, and a last chance after so many hours, whenever it begins. */
const demandOf = (lastH: number): SystemDemand => {
  const harm = { class: 'animals', what: 'temperature', direction: 'above', tank: 'display', limit: 29 } as const;
  const course = {
    calls: [{ key: 'too-warm', atS: 600, answeredBy: 'rota' as const }],
    signs: [],
    deadlines: [{ harm: { ...harm, forMin: 0, groups: [], atS: (lastH + 1) * HOUR }, lastS: lastH * HOUR }],
  };
  const column = { courses: [course], byHour: Array.from({ length: 24 }, () => 0) };
  const one = { id: 'heater-on:heater:normal', title: 'Heater: welded on', type: null, spareS: 0, workS: 1800 };
  return { system: 'reef-1', cases: [{ ...one, claimed: column, tested: column }] };
};

/** Robin by day and Sam by night on call, every day. */
const rota = facility({
  site: site({ zone: ZONE }),
  rounds: [round()],
  shifts: [
    shift({ key: 'day', days: [...DAYS], from: '08:00', to: '20:00' }),
    shift({ key: 'night', kind: 'on-call', people: ['sam'], days: [...DAYS], from: '20:00', to: '08:00' }),
  ],
});
const weeksOf = (of: Facility, monday: string, exceptions: DutyException[] = [], lastH = 5) =>
  weeksAhead(of, [demandOf(lastH)], monday, 3, (from, to) => turnsOf({ ...of, exceptions }, from, to));

describe('coming weeks', () => {
  test('that are as usual are not told, nor those whose clocks change where somebody is on at every hour', () => {
    expect(weeksOf(rota, '2026-06-01')).toEqual([]);
    expect(weeksOf(rota, '2026-10-19')).toEqual([]);
  });

  test('in which somebody is away who is on alone are told, with the hour, and with whoever comes instead', () => {
    const leave: DutyException = {
      ...{ kind: 'leave', person: 'sam' },
      from: instantOf(ZONE, '2026-06-10', '12:00'),
      to: instantOf(ZONE, '2026-06-11', '12:00'),
    };
    const [week, ...rest] = weeksOf(rota, '2026-06-01', [leave]);
    expect(rest).toEqual([]);
    expect(week).toMatchObject({ monday: '2026-06-08', lengthH: 168, system: 'reef-1' });
    // Usually Sam is called: 10 min to the alarm, 20 to leave, 40 on the way, 30 of work, of 5 h.
    expect(week?.usualS).toBe(5 * HOUR - 100 * 60);
    // Now the alarm of 19:00 or soon after waits for Robin, who is on at 08:00 and answers in 10 min.
    expect(week?.at).toBe(instantOf(ZONE, '2026-06-10', '20:00'));
    expect(week?.spareS).toBe(5 * HOUR - (12 * HOUR + 10 * 60 + 30 * 60));
    expect(week?.weakest.way?.come).toMatchObject({ person: 'robin', waitS: 12 * HOUR - 600 });
  });

  test('in which a swap brings somebody who is nearer are not told', () => {
    const swap: DutyException = { kind: 'swap', shift: 'night', date: '2026-06-10', gives: 'sam', takes: 'robin' };
    expect(weeksOf(rota, '2026-06-01', [swap])).toEqual([]);
  });

  test('have an hour more to wait in the night on which the clocks go back, and tell it', () => {
    // Nobody from 20:00 to 08:00: twelve hours, and thirteen from Saturday 24 to Sunday 25 October 2026.
    const alone = { ...rota, shifts: rota.shifts.slice(0, 1) };
    const weeks = weeksOf(alone, '2026-10-12', [], 20);
    expect(weeks.map(({ monday, lengthH }) => [monday, lengthH])).toEqual([['2026-10-19', 169]]);
    expect((weeks[0]?.usualS ?? 0) - (weeks[0]?.spareS ?? 0)).toBe(HOUR);
    expect(weeks[0]?.at).toBe(instantOf(ZONE, '2026-10-24', '20:00'));
  });
});
