import type { Facility } from '#core/facility/facility';
import { loudLines, quietSpans } from '#core/plans/quiet-hours';
import { describedPlaces } from '#core/rounds/described';
import { movesWithQuiet, quietNote } from '#core/rounds/quiet-sheet';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { sheetDues } from '#core/rounds/sheet-due';
import { sheetOf } from '#core/rounds/sheet';
import { describe, expect, test } from 'vitest';
import { siteWithRoundDue } from '../../_support/due-round';

const { facility: plain } = siteWithRoundDue();
const SET = { key: 'set', name: 'Set starts', kind: 'standby-power' as const, testEveryDays: 30, tests: [] };
const facility: Facility = {
  ...plain,
  site: {
    ...plain.site,
    zone: 'Europe/London',
    generator: { safeguard: 'set' },
    quietHours: [{ days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'], from: '21:00', to: '08:00', why: 'sleep' }],
  },
  safeguards: [...plain.safeguards, SET],
};
const line = (key: string) => ({ kind: 'described' as const, key });
const testsAlone: Pick<RoundSheet, 'schedule' | 'lines'> = {
  schedule: { rule: 'FREQ=WEEKLY;BYDAY=MO', from: '2026-06-01', times: [{ at: '07:00' }] },
  lines: [line('-/safeguard/set')],
};
const mixed = { ...testsAlone, lines: [...testsAlone.lines, line('-/site/generator')] };
const at = (text: string) => Date.parse(text);

describe('A loud test on a sheet', () => {
  test('in quiet hours is named when the sheet is written, with the hour it is put off to', () => {
    expect(quietNote(facility, testsAlone, '2026-06-01', 60)).toEqual({
      lines: ['-/safeguard/set'],
      times: 9,
      at: at('2026-06-01T06:00Z'),
      in: { from: at('2026-05-31T20:00Z'), to: at('2026-06-01T07:00Z'), why: 'sleep' },
      moved: at('2026-06-01T07:00Z'),
    });
    const later = { ...testsAlone, schedule: { ...testsAlone.schedule, times: [{ at: '09:00' }] } };
    expect(quietNote(facility, later, '2026-06-01', 60)).toBeNull();
  });

  test('puts a sheet of tests alone off, and no sheet on which animals or plant are looked at', () => {
    const loud = loudLines(facility);
    const calibrated = { lines: [...testsAlone.lines, line('tank-1/sensor/ph/calibration')] };
    const quietOnly = { lines: [line('tank-1/safeguard/cut-out')] };
    expect([testsAlone, calibrated, mixed, quietOnly].map((one) => movesWithQuiet(one, loud))).toEqual([
      ...[true, true, false, false],
    ]);
    expect(quietNote(facility, mixed, '2026-06-01', 60)).toMatchObject({ times: 9, moved: null });
  });

  test('is due at the end of the quiet, on the day on which that is, and once where two times fall together', () => {
    const days = { zone: 'Europe/London', hours: [], holidays: [] };
    const quiet = quietSpans(facility.site, '2026-06-01', '2026-06-20');
    const schedule = { ...testsAlone.schedule, times: [{ at: '05:00' }, { at: '07:00' }, { at: '22:00' }] };
    const dues = sheetDues({ schedule, quiet }, days, '2026-06-01', '2026-06-08');
    expect(dues.map(({ date, dueAt }) => [date, dueAt])).toEqual([
      ['2026-06-01', at('2026-06-01T07:00Z')],
      ['2026-06-02', at('2026-06-02T07:00Z')],
    ]);
    for (const due of dues) expect(due.lateAt).toBeGreaterThan(due.dueAt);
  });

  test('knows the quiet hours about its day on every sheet it stands on, and nothing else does', () => {
    const sheets = [
      describedPlaces(facility, '2026-06-01'),
      sheetOf(facility, { sees: ['equipment'] }, '2026-06-01').places,
    ];
    for (const places of sheets) {
      const quiet = places.flatMap(({ checks }) => checks).filter((check) => 'quiet' in check);
      expect(quiet.map(({ key }) => key)).toEqual(['-/safeguard/set']);
      expect(quiet[0]).toMatchObject({
        quiet: expect.arrayContaining([{ from: at('2026-06-01T20:00Z'), to: at('2026-06-02T07:00Z'), why: 'sleep' }]),
      });
    }
  });
});
