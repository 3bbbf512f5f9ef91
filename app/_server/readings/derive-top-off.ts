import 'server-only';
import { RUNS_ABOVE_W, RUNS_HOLD_S, TOP_OFF_MS, topOffLitres } from '#core/readings/derived/top-off';
import type { Asking } from '#data/readings/asking';
import { hoursOf, standingHours } from '#data/readings/derived-hours';
import type { InputsAt } from '#data/readings/derived-inputs';
import type { Revised } from '#data/readings/rows';
import type { KeptSeries, Span } from './derive-touched';
import { derivedValue } from './derived-value';

const HOUR_MS = 3_600_000;

/** The last whole hour of each series of which nothing could be said: asked again, it would be the same. */
const hopeless = new Map<string, number>();

/**
 * The sums of the days that end with whole hours, as far as something was read after these.
 *
 * @param touched   stretches in which the leading sensor was read, apart from one another
 */
export async function topOffs(
  asking: Asking,
  siteId: string,
  one: KeptSeries,
  touched: readonly Span[],
): Promise<Revised[]> {
  const [lead = ''] = one.inputIds;
  const values: Revised[] = [];
  for (const { atMs, standing } of await wholeHours(asking, siteId, one, touched)) {
    const span = { fromMs: atMs - TOP_OFF_MS, toMs: atMs, above: RUNS_ABOVE_W, holdS: RUNS_HOLD_S };
    const litres = topOffLitres(await hoursOf(asking, siteId, lead, span), atMs, one.series.given);
    values.push(...derivedValue(one.id, { atMs, standing }, litres, false));
    if (litres === null) hopeless.set(one.id, atMs);
  }
  return values;
}

async function wholeHours(
  asking: Asking,
  siteId: string,
  { id: seriesId, inputIds: [lead = ''] }: KeptSeries,
  touched: readonly Span[],
): Promise<Pick<InputsAt, 'atMs' | 'standing'>[]> {
  const found = new Map<number, Pick<InputsAt, 'atMs' | 'standing'>>();
  for (const { fromMs, toMs } of touched) {
    const firstMs = Math.floor(fromMs / HOUR_MS) * HOUR_MS;
    const span = { seriesId, lead, fromMs: firstMs, toMs: toMs + TOP_OFF_MS };
    const { newestMs, stood } = await standingHours(asking, siteId, span);
    const lastMs = Math.min(span.toMs, newestMs);
    for (let atMs = firstMs; atMs <= lastMs; atMs += HOUR_MS) {
      const standing = stood.get(atMs) ?? null;
      // What is read after the end of a day changes nothing of it.
      const isNew = standing === null && hopeless.get(seriesId) !== atMs;
      if (atMs > fromMs || isNew) found.set(atMs, { atMs, standing });
    }
  }
  return [...found.values()];
}
