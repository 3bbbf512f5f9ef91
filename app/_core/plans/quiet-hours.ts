import type { Facility } from '../facility/facility';
import type { Site } from '../facility/site';
import { addDays } from '../time/add-days';
import { dayOf } from '../time/day-of';
import { type Instant, instantOf, instantsOf } from '../time/zone';
import { safeguardLine } from './missed';
import type { Safeguard } from './safeguard';

/** A stretch in which no loud test is to be run: from its start up to, and without, its end. */
export interface QuietSpan {
  from: Instant;
  to: Instant;
  why?: string;
}

type QuietSite = Pick<Site, 'zone' | 'quietHours'>;

/**
 * When a site is quiet, as it really is: on the clocks of the site, both nights on which they change included. A beginning that
 * the clocks leap over is put off by the leap, one that they show twice is meant at first; an end that they show twice is meant
 * the second time, so that nobody is woken by the change of the clocks.
 * @param from first day that counts, "YYYY-MM-DD"
 * @param to the day after the last one
 * @returns stretches in order of their beginning, also one that began the day before the first
 * @throws RangeError when there is no such zone or day
 */
export function quietSpans({ zone, quietHours }: QuietSite, from: string, to: string): QuietSpan[] {
  if (!quietHours) return [];
  const spans: QuietSpan[] = [];
  for (let day = addDays(from, -1); day < to; day = addDays(day, 1))
    for (const { days, from: begins, to: ends, why } of quietHours) {
      if (!days.includes(dayOf(day))) continue;
      const start = instantOf(zone, day, begins);
      const end = Math.max(...instantsOf(zone, ends > begins ? day : addDays(day, 1), ends));
      if (start < end) spans.push({ from: start, to: end, ...(why !== undefined && { why }) });
    }
  return spans.sort((a, b) => a.from - b.from || a.to - b.to);
}

/** The stretch of quiet that a moment lies in: of several the one that lasts longest; null when it lies in none. */
export function quietAt(spans: readonly QuietSpan[], at: Instant): QuietSpan | null {
  const on = spans.filter(({ from, to }) => from <= at && at < to);
  return on.reduce<QuietSpan | null>((last, one) => (last === null || one.to > last.to ? one : last), null);
}

/** A test is put off by so much at most: where a whole week is quiet nothing is gained by moving it. */
const MOST_MOVED_MS = 7 * 86_400_000;

/**
 * The next moment at which a loud test may be run: the moment itself, or the end of the quiet it lies in and of whatever quiet
 * follows without a break; null when none comes within a week.
 * @param spans in any order, for a week from that moment on at least
 */
export function allowedFrom(spans: readonly QuietSpan[], at: Instant): Instant | null {
  let allowed = at;
  for (let on = quietAt(spans, allowed); on !== null && allowed - at < MOST_MOVED_MS; on = quietAt(spans, allowed))
    allowed = on.to;
  return allowed - at < MOST_MOVED_MS ? allowed : null;
}

type Described = Pick<Facility, 'site' | 'safeguards'> & {
  systems: readonly Pick<Facility['systems'][number], 'key' | 'safeguards'>[];
};

/**
 * Whether the test of a safeguard is heard: as the site says, else those of the generator and of air that stands by, whose
 * blowers are run up. Which are loud is common practice, no source.
 */
export function isLoud(
  { generator }: Pick<Site, 'generator'>,
  { key, kind, loud }: Safeguard,
  system: string | null,
): boolean {
  return loud ?? (kind === 'standby-air' || (system === null && generator?.safeguard === key));
}

/** Keys of the lines of sheets on which a loud test is run. None where the site has no quiet hours: nothing hangs on it. */
export function loudLines({ site, safeguards, systems }: Described): ReadonlySet<string> {
  if (!site.quietHours) return new Set();
  const of = (system: string | null, all: readonly Safeguard[]) =>
    all.filter((one) => isLoud(site, one, system)).map(({ key }) => safeguardLine(system, key));
  return new Set([...of(null, safeguards), ...systems.flatMap((system) => of(system.key, system.safeguards))]);
}
