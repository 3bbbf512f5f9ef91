import { DAYS } from '#core/facility/site';
import { duties } from '#core/rota/duties';
import type { Shift } from '#core/rota/rota';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const shift = (over: Partial<Shift> = {}): Shift => ({
  key: 'night',
  kind: 'on-site',
  people: ['ada'],
  days: [...DAYS],
  from: '22:00',
  to: '06:00',
  ...over,
});

const hours = ({ start, end }: { start: number; end: number }) => (end - start) / 3_600_000;
const lengths = (zone: string, date: string, next: string, of = shift()) =>
  duties([of], [], zone, date, next).map(hours);

describe('a turn of a shift', () => {
  // Source: the changes of the clocks in the IANA time zone database.
  test.each([
    ['America/New_York', '2026-03-07', '2026-03-08', 7],
    ['America/New_York', '2026-10-31', '2026-11-01', 9],
    ['America/New_York', '2026-06-01', '2026-06-02', 8],
    ['Europe/London', '2026-03-28', '2026-03-29', 7],
    ['Europe/Berlin', '2026-10-24', '2026-10-25', 9],
    ['Australia/Sydney', '2026-10-03', '2026-10-04', 7],
    ['Australia/Lord_Howe', '2026-10-03', '2026-10-04', 7.5],
    ['America/Phoenix', '2026-03-07', '2026-03-08', 8],
  ])('from 22:00 to 06:00 in %s on %s lasts its true hours', (zone, date, next, expected) => {
    expect(lengths(zone, date, next)).toEqual([expected]);
  });

  test('begins on its own days alone, in order, and belongs to the day on which it begins', () => {
    const two = [shift({ days: ['mon', 'sun'] }), shift({ key: 'day', days: ['mon'], from: '06:00', to: '22:00' })];
    // 2026-06-01 is a Monday.
    const all = duties(two, [], 'Europe/London', '2026-06-01', '2026-06-08');
    expect(all.map((duty) => `${duty.date} ${duty.shift}`)).toEqual([
      '2026-06-01 day',
      '2026-06-01 night',
      '2026-06-07 night',
    ]);
    expect(all[0]?.end).toBe(all[1]?.start);
    expect(duties(two, [], 'Europe/London', '2026-06-01', '2026-06-01')).toEqual([]);
  });

  test('that begins and ends at one time lasts until that time on the next day', () => {
    expect(lengths('Europe/London', '2026-03-28', '2026-03-29', shift({ from: '08:00', to: '08:00' }))).toEqual([23]);
  });

  test('that lies within hours that are leapt over is not given', () => {
    const short = shift({ from: '02:00', to: '03:00' });
    expect(lengths('America/New_York', '2026-03-07', '2026-03-10', short)).toEqual([1, 1]);
  });

  test('leaves no hole to the one that begins where it ends, in any zone, whatever the clocks do', () => {
    const anyZone = fc.constantFrom(...Intl.supportedValuesOf('timeZone'));
    const anyTime = fc
      .tuple(fc.nat(23), fc.constantFrom('00', '15', '30', '45'))
      .map(([hour, minute]) => `${String(hour).padStart(2, '0')}:${minute}`);
    const anyChanges = fc.uniqueArray(anyTime, { minLength: 2, maxLength: 4 }).map((times) => times.sort());
    fc.assert(
      fc.property(anyZone, anyChanges, fc.integer({ min: 2015, max: 2035 }), (zone, changes, year) => {
        const round = changes.map((from, at) => shift({ key: from, from, to: changes[at + 1] ?? changes[0] ?? from }));
        const all = duties(round, [], zone, `${year}-01-01`, `${year + 1}-01-01`);
        let covered = all[0]?.start ?? 0;
        for (const { start, end } of all) {
          expect(start).toBeLessThanOrEqual(covered);
          covered = Math.max(covered, end);
        }
      }),
      { numRuns: 20 },
    );
  });
});
