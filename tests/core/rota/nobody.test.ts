import { nobodyOn } from '#core/rota/nobody';
import type { Rota } from '#core/rota/turns';
import { dayStart } from '#core/time/zone';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { person, shift } from '../../_support/build-facility';
import { anyPeople, anyShifts } from './any-rota';
import { onNow } from '#core/rota/on-now';

const rota = (zone: string, shifts: Rota['shifts']): Rota => ({
  site: { zone },
  people: [person({ key: 'ada', name: 'Ada' })],
  shifts,
  exceptions: [],
});
const evenings = shift({ key: 'day', people: ['ada'], days: ['sat', 'sun', 'mon'], from: '06:00', to: '22:00' });
const hours = ({ from, to }: { from: number; to: number }) => (to - from) / 3_600_000;

describe('hours with nobody', () => {
  // Source: the changes of the clocks in the IANA time zone database. From 22:00 to 06:00 nobody is on.
  test.each([
    ['America/New_York', '2026-03-07', 7],
    ['America/New_York', '2026-10-31', 9],
    ['Europe/Berlin', '2026-06-06', 8],
    ['Australia/Lord_Howe', '2026-10-03', 7.5],
  ])('of a night in %s from %s have their true length', (zone, saturday, expected) => {
    const from = dayStart(zone, saturday);
    const gaps = nobodyOn(rota(zone, [evenings]), from, from + 2 * 86_400_000 - 6 * 3_600_000);
    expect(gaps.map(hours)).toEqual([6, expected]);
  });

  test('are all there are without shifts, and none where turns follow one another', () => {
    expect(nobodyOn(rota('UTC', []), 0, 3_600_000)).toEqual([{ from: 0, to: 3_600_000 }]);
    const ever = shift({ ...evenings, days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'], to: '06:00' });
    expect(nobodyOn(rota('Europe/London', [ever]), Date.UTC(2026, 2, 20), Date.UTC(2026, 3, 20))).toEqual([]);
  });

  test('are those at which onNow knows nobody', () => {
    fc.assert(
      fc.property(anyPeople(), anyShifts(), fc.integer({ min: 0, max: 365 }), (people, shifts, day) => {
        const of = { site: { zone: 'Europe/London' }, people, shifts, exceptions: [] };
        const from = Date.UTC(2026, 0, 1) + day * 86_400_000;
        const gaps = nobodyOn(of, from, from + 86_400_000);
        for (let at = from; at < from + 86_400_000; at += 97 * 60_000) {
          const isGap = gaps.some((gap) => gap.from <= at && at < gap.to);
          expect(onNow(of, at).length === 0).toBe(isGap);
        }
      }),
      { numRuns: 25 },
    );
  });
});
