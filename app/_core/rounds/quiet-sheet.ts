import type { Facility } from '../facility/facility';
import { allowedFrom, type QuietSpan, quietAt } from '../plans/quiet-at';
import { loudLines, quietSpans } from '../plans/quiet-hours';
import { addDays } from '../time/add-days';
import type { Instant } from '../time/zone';
import type { RoundSheet, SheetLine } from './round-sheet';
import { dueDays, siteDays, timesOn } from './schedule';
import type { SheetPlace } from './sheet';

/** What of a sheet quiet hours hang on. */
type Quiet = Pick<RoundSheet, 'schedule' | 'lines'>;

/** Loud tests of a sheet that would fall into quiet hours. */
export interface QuietNote {
  /** Keys of the lines. */
  lines: string[];
  /** How many of its times in the days looked at fall into them. */
  times: number;
  /** The first of these, and the quiet it lies in. */
  at: Instant;
  in: QuietSpan;
  /** When it is due instead; null when it keeps its time. */
  moved: Instant | null;
}

/**
 * Whether the due times of a sheet are put off to the end of quiet hours: it asks for nothing but tests of safeguards and
 * calibrations, and one of the tests is loud. A sheet that looks at animals, water or equipment as well keeps its time, whatever is loud on it; of that
 * test it is said when it may be run.
 * @param loud   see `loudLines`
 */
export function movesWithQuiet({ lines }: Pick<RoundSheet, 'lines'>, loud: ReadonlySet<string>): boolean {
  const isTest = ({ kind, key }: SheetLine) =>
    kind === 'described' && (key.includes('/safeguard/') || key.endsWith('/calibration'));
  return lines.some(({ key }) => loud.has(key)) && lines.every(isTest);
}

/**
 * What is to be said of a sheet when it is written: which of its lines are loud tests that would fall into quiet hours.
 * @param from   first day that is looked at, ISO date
 * @param days   how many
 * @returns null when none does
 * @throws RangeError when the schedule is not sound
 */
export function quietNote(facility: Facility, sheet: Quiet, from: string, days: number): QuietNote | null {
  const all = loudLines(facility);
  const lines = sheet.lines.filter(({ key }) => all.has(key)).map(({ key }) => key);
  if (lines.length === 0) return null;
  const to = addDays(from, days);
  const spans = quietSpans(facility.site, from, addDays(to, 8));
  const site = siteDays(facility.site);
  const inside = dueDays(sheet.schedule, site, from, to)
    .flatMap((date) => timesOn(sheet.schedule, site, date))
    .flatMap((at) => {
      const span = quietAt(spans, at);
      return span ? [{ at, in: span }] : [];
    });
  const [first] = inside;
  if (!first) return null;
  const moved = movesWithQuiet(sheet, all) ? allowedFrom(spans, first.at) : null;
  return { lines, times: inside.length, ...first, moved };
}

/**
 * The places of a sheet with what its loud tests have to know: the quiet hours about a day, for whoever walks it without a
 * signal as well.
 * @param day   ISO date of the round at the site
 */
export function withQuiet(facility: Facility, places: SheetPlace[], day: string): SheetPlace[] {
  const loud = loudLines(facility);
  if (loud.size === 0) return places;
  const quiet = quietSpans(facility.site, day, addDays(day, 3));
  return places.map((place) => ({
    ...place,
    checks: place.checks.map((check) => (check.kind === 'test' && loud.has(check.key) ? { ...check, quiet } : check)),
  }));
}
