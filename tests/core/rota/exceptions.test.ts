import { DAYS } from '#core/facility/site';
import { duties } from '#core/rota/duties';
import { onNow } from '#core/rota/on-now';
import type { DutyException } from '#core/rota/rota';
import { type Rota, turnsOf } from '#core/rota/turns';
import { addDays } from '#core/time/add-days';
import { dayStart, instantOf } from '#core/time/zone';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { person, shift } from '../../_support/build-facility';
import { anyPeople, anyShifts } from './any-rota';

const ZONE = 'Europe/London';
const at = (date: string, time = '00:00') => instantOf(ZONE, date, time);
const night = shift({ key: 'night', kind: 'on-call', people: ['ada'], days: [...DAYS], from: '22:00', to: '06:00' });
const told = (exceptions: DutyException[], from = '2026-06-01', to = addDays(from, 1)) =>
  duties([night], exceptions, ZONE, from, to).map(
    ({ person, insteadOf, start, end }) =>
      `${person}${insteadOf ? ` for ${insteadOf}` : ''} ${(start - at(from)) / 3_600_000}-${(end - at(from)) / 3_600_000}`,
  );
const swap = (gives: string, takes: string, date = '2026-06-01'): DutyException => ({
  kind: 'swap',
  shift: 'night',
  date,
  gives,
  takes,
});

describe('a swap', () => {
  test('gives one turn to another person and leaves those about it', () => {
    expect(told([swap('ada', 'ben')], '2026-05-31', '2026-06-03')).toEqual([
      'ada 22-30',
      'ben for ada 46-54',
      'ada 70-78',
    ]);
  });

  test('is carried out after those approved before it, and remembers whose turn it was', () => {
    expect(told([swap('ada', 'ben'), swap('ben', 'cleo')])).toEqual(['cleo for ada 22-30']);
    expect(told([swap('ada', 'ben'), swap('ben', 'ada')])).toEqual(['ada 22-30']);
  });

  test('by somebody who has not the turn changes nothing, and to somebody who has it leaves them once', () => {
    expect(told([swap('ben', 'cleo')])).toEqual(['ada 22-30']);
    const both = { ...night, people: ['ada', 'ben'] };
    const found = duties([both], [swap('ada', 'ben')], ZONE, '2026-06-01', '2026-06-02');
    expect(found.map(({ person }) => person)).toEqual(['ben']);
  });
});

describe('a swap of a part of a turn', () => {
  const part = (gives: string, takes: string, from: string, to: string): DutyException => {
    const inNight = (time: string) => at(time < '12:00' ? '2026-06-02' : '2026-06-01', time);
    return { kind: 'swap', shift: 'night', date: '2026-06-01', gives, takes, from: inNight(from), to: inNight(to) };
  };

  test('gives that part alone, and what lies outside the turn not at all', () => {
    expect(told([part('ada', 'ben', '23:30', '02:00')])).toEqual(['ada 22-23.5', 'ben for ada 23.5-26', 'ada 26-30']);
    expect(told([part('ada', 'ben', '20:00', '23:00')])).toEqual(['ben for ada 22-23', 'ada 23-30']);
    expect(told([part('ada', 'ben', '07:00', '09:00')])).toEqual(['ada 22-30']);
  });

  test('can be given on, given back in part, and has nobody twice', () => {
    const first = part('ada', 'ben', '22:00', '02:00');
    expect(told([first, part('ben', 'cleo', '01:00', '04:00')])).toEqual([
      'ben for ada 22-25',
      'cleo for ada 25-26',
      'ada 26-30',
    ]);
    expect(told([first, part('ben', 'ada', '22:00', '23:00')])).toEqual([
      'ada 22-23',
      'ben for ada 23-26',
      'ada 26-30',
    ]);
    expect(told([first, part('ada', 'ben', '22:00', '06:00')])).toEqual(['ben for ada 22-26', 'ben for ada 26-30']);
  });

  test('leaves each moment of the turn to exactly as many people as before, whatever is swapped', () => {
    const who = fc.constantFrom('ada', 'ben', 'cleo');
    const swaps = fc.array(
      fc
        .record({
          gives: who,
          takes: who,
          from: fc.integer({ min: -60, max: 540 }),
          long: fc.integer({ min: 1, max: 600 }),
        })
        .filter(({ gives, takes }) => gives !== takes)
        .map(({ gives, takes, from, long }): DutyException => {
          const start = at('2026-06-01', '22:00') + from * 60_000;
          return {
            kind: 'swap',
            shift: 'night',
            date: '2026-06-01',
            gives,
            takes,
            from: start,
            to: start + long * 60_000,
          };
        }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(swaps, (exceptions) => {
        const found = duties([night], exceptions, ZONE, '2026-06-01', '2026-06-02');
        for (let at0 = at('2026-06-01', '22:00'); at0 < at('2026-06-02', '06:00'); at0 += 7 * 60_000)
          expect(found.filter(({ start, end }) => start <= at0 && at0 < end)).toHaveLength(1);
      }),
      { numRuns: 60 },
    );
  });
});

describe('leave', () => {
  const leave = (from: number, to: number, who = 'ada') => ({ kind: 'leave' as const, person: who, from, to });

  test('takes away what lies within it, to the minute, and leaves the rest of the turn', () => {
    expect(told([leave(at('2026-06-02'), at('2026-06-02', '02:30'))])).toEqual(['ada 22-24', 'ada 26.5-30']);
    expect(told([leave(at('2026-06-01'), at('2026-06-03'))])).toEqual([]);
    expect(told([leave(at('2026-06-02', '06:00'), at('2026-06-09'))])).toEqual(['ada 22-30']);
  });

  test('of one who gave the turn away takes nothing of it, and of one who took it does', () => {
    const away = leave(at('2026-06-01'), at('2026-06-03'));
    expect(told([swap('ada', 'ben'), away])).toEqual(['ben for ada 22-30']);
    expect(told([swap('ada', 'ben'), { ...away, person: 'ben' }])).toEqual([]);
  });

  test('through the night on which the clocks go back takes away its nine hours', () => {
    const night = '2026-10-24';
    expect(told([], night)).toEqual(['ada 22-31']);
    expect(told([leave(at(night, '22:00'), at('2026-10-25', '06:00'))], night)).toEqual([]);
  });
});

describe('a rota after swaps and leave', () => {
  test('has nobody on who is on leave, and nobody who is not of the site', () => {
    const people = [person({ key: 'ada' }), person({ key: 'ben' })];
    const rota: Rota = {
      site: { zone: ZONE },
      people,
      shifts: [night],
      exceptions: [swap('ada', 'gone', '2026-06-02'), swap('ada', 'ben', '2026-06-01')],
    };
    const on = (moment: number) => onNow(rota, moment).map(({ person }) => person);
    expect(on(at('2026-06-01', '23:00'))).toEqual(['ben']);
    expect(on(at('2026-06-02', '05:59'))).toEqual(['ben']);
    expect(on(at('2026-06-02', '23:00'))).toEqual([]);
    expect(on(at('2026-06-03', '23:00'))).toEqual(['ada']);
  });

  test('is the rota without whoever is away, at every moment of the leave, and itself at every other', () => {
    const day = fc.integer({ min: 0, max: 365 });
    fc.assert(
      fc.property(
        anyPeople(),
        anyShifts(),
        day,
        fc.integer({ min: 1, max: 4000 }),
        (people, shifts, after, minutes) => {
          const plain: Rota = { site: { zone: ZONE }, people, shifts, exceptions: [] };
          const from = dayStart(ZONE, addDays('2026-01-01', after)) + 17 * 3_600_000;
          const to = from + minutes * 60_000;
          const away: Rota = { ...plain, exceptions: [{ kind: 'leave', person: 'ada', from, to }] };
          const here = (rota: Rota, moment: number) =>
            turnsOf(rota, moment, moment + 1).map(({ person, shift }) => `${person} ${shift}`);
          for (let moment = from - 86_400_000; moment < to + 86_400_000; moment += 83 * 60_000) {
            const isAway = moment >= from && moment < to;
            const wanted = here(plain, moment).filter((one) => !(isAway && one.startsWith('ada ')));
            expect(here(away, moment).sort()).toEqual(wanted.sort());
          }
        },
      ),
      { numRuns: 20 },
    );
  });
});
