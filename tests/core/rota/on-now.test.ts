import { nextOn, onNow } from '#core/rota/on-now';
import type { Rota } from '#core/rota/turns';
import { instantsOf, wallClock } from '#core/time/zone';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { person, shift } from '../../_support/build-facility';
import { anyPeople, anyShifts } from './any-rota';

const ada = person({ key: 'ada', name: 'Ada' });
const ben = person({ key: 'ben', name: 'Ben' });
const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const all = [...weekdays, 'sat', 'sun'] as const;
const day = shift({ key: 'day', people: ['ada'], days: [...weekdays], from: '08:00', to: '17:00' });
const night = shift({ key: 'night', kind: 'on-call', people: ['ben'], days: [...all], from: '17:00', to: '08:00' });

const rota = (over: Partial<Rota> = {}, zone = 'Europe/London'): Rota => ({
  site: { zone },
  exceptions: [],
  people: [ada, ben],
  shifts: [day, night],
  ...over,
});

/** The moment a clock shows, first or second pass. */
const at = (words: string, zone = 'Europe/London', pass = 0) => {
  const [date = '', time = ''] = words.split(' ');
  return instantsOf(zone, date, time)[pass] ?? Number.NaN;
};
const said = (zone: string, instant: number | null) => {
  if (instant === null) return 'without end';
  const { date, time } = wallClock(zone, instant);
  return `${date} ${time}`;
};
const on = (of: Rota, instant: number) =>
  onNow(of, instant).map(({ person: who, kind, until }) => `${who} ${kind} until ${said(of.site.zone, until)}`);
const next = (of: Rota, instant: number) =>
  nextOn(of, instant).map(({ person: who, kind, from }) => `${who} ${kind} from ${said(of.site.zone, from)}`);

describe('who is on', () => {
  // 2026-06-01 is a Monday.
  test.each([
    ['2026-06-01 07:59', ['ben on-call until 2026-06-01 08:00'], ['ada on-site from 2026-06-01 08:00']],
    ['2026-06-01 08:00', ['ada on-site until 2026-06-01 17:00'], ['ben on-call from 2026-06-01 17:00']],
    ['2026-06-01 16:59', ['ada on-site until 2026-06-01 17:00'], ['ben on-call from 2026-06-01 17:00']],
    ['2026-06-06 12:00', [], ['ben on-call from 2026-06-06 17:00']],
  ])('at %s is told with the end, which does not count, and who comes next', (when, now, then) => {
    expect(on(rota(), at(when))).toEqual(now);
    expect(next(rota(), at(when))).toEqual(then);
  });

  test('is on until the end of the last of several turns that follow one another', () => {
    const half = (key: string, from: string, to: string) =>
      shift({ key, people: ['ada'], days: ['mon'], from, to, kind: 'on-site' });
    const split = rota({
      shifts: [half('a', '08:00', '12:00'), half('b', '12:00', '16:00'), half('c', '16:30', '18:00')],
    });
    expect(on(split, at('2026-06-01 09:00'))).toEqual(['ada on-site until 2026-06-01 16:00']);
    // Noon is no beginning: she is on already.
    expect(next(split, at('2026-06-01 09:00'))).toEqual(['ada on-site from 2026-06-01 16:30']);
  });

  test('is on without end when each turn begins where the one before ends, and then nobody is next', () => {
    const ever = rota({
      shifts: [shift({ key: 'ever', people: ['ben'], days: [...all], from: '06:00', to: '06:00' })],
    });
    expect(on(ever, at('2026-06-01 09:00'))).toEqual(['ben on-site until without end']);
    expect(next(ever, at('2026-06-01 09:00'))).toEqual([]);
  });

  test('is on site when on site and on call at once, and stands there once', () => {
    const both = rota({ shifts: [{ ...night, people: ['ada', 'ben'], from: '12:00' }, day] });
    expect(on(both, at('2026-06-01 13:00'))).toEqual([
      'ada on-site until 2026-06-01 17:00',
      'ben on-call until 2026-06-02 08:00',
    ]);
  });

  test('is nobody who has gone, even where a shift still names them', () => {
    expect(on(rota({ people: [ada] }), at('2026-06-01 03:00'))).toEqual([]);
    expect(next(rota({ people: [] }), at('2026-06-01 03:00'))).toEqual([]);
    expect(on(rota({ shifts: [] }), at('2026-06-01 03:00'))).toEqual([]);
  });

  // Source: the changes of the clocks in the IANA time zone database.
  test('is told apart in the hour that the clocks show twice', () => {
    const early = shift({ key: 'early', people: ['ada'], days: ['sun'], from: '01:30', to: '05:00' });
    const of = rota({ shifts: [early] });
    // 2026-10-25 in London: 01:30 comes twice, and the first is meant.
    expect(on(of, at('2026-10-25 01:29'))).toEqual([]);
    expect(on(of, at('2026-10-25 01:30'))).toEqual(['ada on-site until 2026-10-25 05:00']);
    expect(on(of, at('2026-10-25 01:29', 'Europe/London', 1))).toEqual(['ada on-site until 2026-10-25 05:00']);
    // 2026-03-29: 01:30 is leapt over, and put off to 02:30.
    expect(next(of, at('2026-03-29 00:59'))).toEqual(['ada on-site from 2026-03-29 02:30']);
  });

  test('agrees with a look at each turn of duty, at any moment of any rota', () => {
    fc.assert(
      fc.property(anyPeople(), anyShifts(), fc.integer({ min: 0, max: 365 * 1440 }), (people, shifts, minute) => {
        const of = { site: { zone: 'America/New_York' }, people, shifts, exceptions: [] };
        const instant = Date.UTC(2026, 0, 1) + minute * 60_000;
        for (const { person: who, kind, until } of onNow(of, instant)) {
          if (until === null) continue;
          // Just before the end they are on still; at the end no longer in this way.
          const later = (when: number) => onNow(of, when).find((one) => one.person === who);
          expect(later(until - 1)).toBeDefined();
          if (kind === 'on-site') expect(later(until)?.kind).not.toBe('on-site');
        }
        const [first] = nextOn(of, instant);
        if (first) {
          const before = onNow(of, first.from - 1).filter(({ person: who }) => who === first.person);
          expect(before.every(({ kind }) => kind !== first.kind)).toBe(true);
          expect(onNow(of, first.from).map(({ person: who }) => who)).toContain(first.person);
        }
      }),
      { numRuns: 60 },
    );
  });
});
