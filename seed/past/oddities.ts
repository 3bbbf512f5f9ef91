import type { Facility } from '#core/facility/facility';
import { judge } from '#core/readings/judge';
import { SILENT_HALL } from './befallen';
import { inSteps } from './instrument';
import { randomOf } from './random';
import type { Series } from './sampled';
import { pastInstant } from './span';

/** Minutes since which the return of the kreisel hums. */
const HUMS_MIN = 97;
const MINUTE_MS = 60_000;

/**
 * What single instruments of a site told that is not so: changes the readings in place, and says how far those can be
 * trusted by the same rule as when they arrive.
 *
 * @param today     ISO date on which it is shown; `untilMs` now
 */
export function addOddities(
  { site }: Facility,
  series: readonly Series[],
  { today, untilMs }: { today: string; untilMs: number },
): void {
  if (site.key !== 'harbour') return;
  const find = (system: string, sensor: string) =>
    series.find((one) => one.system === system && one.sensor === sensor) ?? null;
  const night = pastInstant(site.zone, today, 23, '02:05');
  replace(find('ocean', 'oxygen'), 'oxygen', night, 0.12);
  // A thermometer that got power again says so before it has measured.
  const back = pastInstant(site.zone, today, SILENT_HALL.daysAgo, SILENT_HALL.time) + SILENT_HALL.minutes * MINUTE_MS;
  replace(find('reef', 't-display'), 'temperature', back, 85);
  hum(find('moon-jellies', 'w-return'), untilMs - HUMS_MIN * MINUTE_MS, untilMs);
}

/** Puts a value in the place of the first reading after a moment. */
function replace(series: Series | null, quantity: 'oxygen' | 'temperature', afterMs: number, value: number): void {
  const i = series?.atMs.findIndex((at) => at > afterMs) ?? -1;
  if (!series || i < 0) return;
  series.values[i] = value;
  const { quality, reason } = judge(quantity, value, { value });
  if (quality !== 'good' && reason !== undefined) series.odd.set(i, { quality, reason });
}

/** A bearing wears out: the pump draws more than a healthy one does, every ten minutes a little else. */
function hum(series: Series | null, fromMs: number, untilMs: number): void {
  if (!series) return;
  const random = randomOf('hum');
  const kept = series.atMs.filter((at) => at < fromMs).length;
  series.atMs.length = kept;
  series.values.length = kept;
  for (let at = fromMs; at <= untilMs; at += 10 * MINUTE_MS) {
    series.atMs.push(at);
    series.values.push(inSteps(57.1 + 0.4 * random.normal(), 0.1));
  }
}
