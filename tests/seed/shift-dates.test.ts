import { shiftDates } from '#core/facility/shift-dates';
import { isOff, isTested, safeguardsOf } from '#core/plans/credit';
import { addDays } from '#core/time/add-days';
import { daysBetween } from '#core/time/days';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_DATE, DEMO_FILES, demoOn } from '../../seed/demo';
import { anyFacility } from '../_support/any-facility';
import { demoSite } from './demo-site';

const SITES = DEMO_FILES.map(({ key }) => demoSite(key));

describe('a date some days after another', () => {
  test('keeps to the calendar at the ends of months, in leap years and without', () => {
    expect(addDays('2026-11-25', 6)).toBe('2026-12-01');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2100-02-28', 1)).toBe('2100-03-01');
    expect(addDays('2000-03-01', -1)).toBe('2000-02-29');
    expect(addDays('1970-01-01', -1)).toBe('1969-12-31');
  });

  test('lies as many days away as was asked, whatever the date', () => {
    const day = fc.date({
      min: new Date('0400-01-01T00:00:00Z'),
      max: new Date('9000-12-31T00:00:00Z'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(day, fc.integer({ min: -140_000, max: 140_000 }), (at, days) => {
        const from = at.toISOString().slice(0, 10);
        const to = addDays(from, days);
        expect(daysBetween(from, to)).toBe(days);
        expect(new Date(`${to}T00:00:00Z`).toISOString().slice(0, 10)).toBe(to);
      }),
    );
  });

  test('is refused where the calendar of four digits ends', () => {
    expect(() => addDays('9999-12-31', 1)).toThrow(RangeError);
  });
});

describe('a facility whose dates are moved', () => {
  test('is the same again when they are moved back', () => {
    fc.assert(
      fc.property(anyFacility(), fc.integer({ min: -400, max: 400 }), (given, days) => {
        expect(shiftDates(shiftDates(given, days), -days)).toEqual(given);
      }),
      { numRuns: 15 },
    );
  });

  test('has every date moved, those of the site and those of its systems', () => {
    for (const site of SITES) {
      const days = (text: string) => text.match(/\d{4}-\d{2}-\d{2}/g) ?? [];
      // The first day of a rule is meant with its weekday: it stays where it is.
      const { sheets, ...moving } = site;
      const before = days(JSON.stringify(moving));
      expect(before.length).toBeGreaterThan(0);
      expect(shiftDates(site, 100).sheets).toEqual(sheets);
      expect(days(JSON.stringify(shiftDates(moving, 100)))).toEqual(before.map((date) => addDays(date, 100)));
    }
  });

  test('changes nothing but dates, and leaves what was given as it was', () => {
    for (const site of SITES) {
      const text = JSON.stringify(site);
      const bare = (one: unknown) => JSON.stringify(one).replace(/\d{4}-\d{2}-\d{2}/g, '');
      expect(bare(shiftDates(site, 100))).toBe(bare(site));
      expect(JSON.stringify(site)).toBe(text);
    }
  });
});

describe('the demonstration shown on another day', () => {
  test.each(['2026-11-25', '2027-03-01', '2031-02-28', '2024-02-29'])('counts on the same safeguards on %s', (on) => {
    for (const site of SITES) {
      const shown = demoOn(site, on);
      site.systems.forEach((system, at) => {
        const then = safeguardsOf(site, system).map((one) => [isTested(one, DEMO_DATE), isOff(one, DEMO_DATE)]);
        const now = shown.systems[at];
        expect(now && safeguardsOf(shown, now).map((one) => [isTested(one, on), isOff(one, on)])).toEqual(then);
      });
    }
  });
});
