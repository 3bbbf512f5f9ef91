import { taker } from '#core/equipment/take';
import { answering, comesAfter } from '#core/rota/answering';
import { answerTimes, coverOf } from '#core/rota/cover';
import { askedBy, datedLine } from '#core/rota/dated-line';
import { usualLine } from '#core/rota/line';
import { turnsOf } from '#core/rota/turns';
import { DAYS } from '#core/facility/site';
import type { Facility } from '#core/facility/facility';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { facility, site } from '../../_support/build-facility';
import { anyPeople, anyShifts } from './any-rota';

const HOUR_MS = 3_600_000;
/** Mondays of weeks in which the clocks change, and of one in which they do not. Source: the IANA time zone database. */
const WEEKS = [
  ['Europe/London', '2026-03-23', 167],
  ['Europe/London', '2026-10-19', 169],
  ['America/New_York', '2026-03-02', 167],
  ['America/New_York', '2026-10-26', 169],
  ['Australia/Lord_Howe', '2026-09-28', 167.5],
  ['Australia/Lord_Howe', '2026-03-30', 168.5],
  ['Asia/Kathmandu', '2026-06-01', 168],
] as const;

const inZone = (zone: string, given: Partial<Facility>) => facility({ ...given, site: site({ zone }) });
const lineIn = (of: Facility, monday: string) => {
  const { from, to } = askedBy(of.site.zone, monday);
  return datedLine(
    of.site.zone,
    monday,
    turnsOf({ ...of, exceptions: [] }, from, to),
    answerTimes(of, taker('nominal')),
  );
};

test.each(WEEKS)(
  'a week in %s from %s on has its true length, and an hour for each that the clocks begin',
  (zone, monday, length) => {
    const { from, to, hours } = lineIn(inZone(zone, {}), monday);
    expect((to - from) / HOUR_MS).toBe(length);
    const first = DateTime.fromISO(monday, { zone });
    const halves = Array.from({ length: (2 * (to - from)) / HOUR_MS }, (_, half) => first.plus({ minutes: 30 * half }));
    // An hour begins on the full hour, or where the clock leaps into another one.
    const begun = halves.filter((at) => at.minute === 0 || at.hour !== at.minus({ minutes: 1 }).hour);
    expect(hours.map(({ atS }) => from + 1000 * atS)).toEqual(begun.map((at) => at.toMillis()));
    expect(hours.map(({ hourOfDay }) => hourOfDay)).toEqual(begun.map(({ hour }) => hour));
  },
);

/** Of a time that the clocks show twice the first is meant; which one this library takes depends on the season it is asked in. */
function earliest(at: DateTime): number {
  return Math.min(...at.getPossibleOffsets().map((one) => one.toMillis()));
}

/** Every turn of three weeks as another library makes it: from, to, and how long whoever is on it needs. ms */
function byLuxon({ site: { zone }, shifts, people }: Facility, monday: string): [number, number, number][] {
  const wayMin = (key: string) => people.find((one) => one.key === key)?.travelMin?.value ?? 0;
  const dates = Array.from({ length: 22 }, (_, day) =>
    DateTime.fromISO(monday, { zone: 'utc' }).plus({ days: day - 1 }),
  );
  return shifts.flatMap((shift) =>
    dates
      .filter(({ weekday }) => shift.days.some((day) => day === DAYS[weekday - 1]))
      .flatMap((date) => {
        const at = (time: string, later: number) =>
          earliest(DateTime.fromISO(`${date.plus({ days: later }).toISODate()}T${time}`, { zone }));
        const [start, end] = [at(shift.from, 0), at(shift.to, shift.to <= shift.from ? 1 : 0)];
        if (end <= start) return [];
        return shift.people.map((key): [number, number, number] => [
          start,
          end,
          60_000 * (shift.kind === 'on-site' ? 10 : 20 + wayMin(key)),
        ]);
      }),
  );
}

test('who comes first in a dated week is there to the minute when another library of time says so, whatever the clocks do', () => {
  const anyCase = fc.record({
    week: fc.constantFrom(...WEEKS),
    people: anyPeople(),
    shifts: anyShifts(),
    calls: fc.array(fc.integer({ min: 0, max: 167 * 60 }), { minLength: 1, maxLength: 15 }),
  });
  fc.assert(
    fc.property(anyCase, ({ week: [zone, monday], people, shifts, calls }) => {
      const of = inZone(zone, { people, shifts });
      const { from, stretches, homes } = lineIn(of, monday);
      const comes = answering(stretches, homes, 'rota');
      const turns = byLuxon(of, monday);
      for (const minute of calls) {
        const come = comes(60 * minute);
        const there = come ? from + 1000 * (60 * minute + comesAfter(come)) : Number.POSITIVE_INFINITY;
        const called = from + 60_000 * minute;
        const ends = turns.filter(([, end]) => called < end).map(([start, , needs]) => Math.max(start, called) + needs);
        expect(there).toBe(Math.min(Number.POSITIVE_INFINITY, ...ends));
      }
    }),
    { numRuns: 40 },
  );
});

test('a dated week in which nothing changes is the usual week', () => {
  fc.assert(
    fc.property(anyPeople(), anyShifts(), fc.integer({ min: 0, max: 10_079 }), (people, shifts, minute) => {
      const of = inZone('Asia/Kathmandu', { people, shifts });
      const usual = usualLine(coverOf(of, taker('nominal')));
      const dated = lineIn(of, '2026-06-01');
      expect(dated.hours).toEqual(usual.hours);
      const [a, b] = [usual, dated].map(({ stretches, homes }) => answering(stretches, homes, 'rota')(60 * minute));
      expect(b && comesAfter(b)).toBe(a && comesAfter(a));
    }),
    { numRuns: 25 },
  );
});
