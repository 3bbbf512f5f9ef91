import type { Facility } from '../facility/facility';
import type { Site } from '../facility/site';
import { addDays } from '../time/add-days';
import { dayOf } from '../time/day-of';
import { instantOf, instantsOf } from '../time/zone';
import { safeguardLine } from './missed';
import type { QuietSpan } from './quiet-at';
import type { Safeguard } from './safeguard';

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
