import 'server-only';
import { groupBy } from '#core/group-by';
import { derive, type InputValues } from '#core/readings/derived/derive';
import type { DerivedSeries } from '#core/readings/derived/series';
import type { Asking } from '#data/readings/asking';
import { type AskedStretch, type InputsAt, inputsOf } from '#data/readings/derived-inputs';
import type { Revised } from '#data/readings/rows';
import type { Touched } from '#data/readings/touched';
import { derivedValue } from './derived-value';
import { topOffs } from './derive-top-off';

/** A stretch of time, ms since 1970, both ends in it. */
export interface Span {
  fromMs: number;
  toMs: number;
}

/** A derived series that is kept, and the ids of its inputs. */
export interface KeptSeries {
  id: string;
  series: DerivedSeries;
  inputIds: readonly string[];
}

/**
 * Works out anew what follows from readings that were stored: of each derived series the instants at which one of its inputs
 * may read otherwise now. What comes out as it stands already is left alone.
 *
 * @returns   values that are to stand from now on
 */
export async function deriveTouched(
  asking: Asking,
  siteId: string,
  kept: readonly KeptSeries[],
  touched: readonly Touched[],
): Promise<Revised[]> {
  const bySensor = groupBy(touched, ({ sensorId }) => sensorId);
  const plain = kept.filter(({ series }) => series.kind !== 'top-off');
  const asked = plain.flatMap((one) => stretchesOf(one, bySensor).map((stretch) => ({ one, stretch })));
  const found = await inputsOf(
    asking,
    siteId,
    asked.map(({ stretch }) => stretch),
  );
  const values = found.flatMap((at) => valueAt(asked[at.n]?.one, at));
  for (const one of kept.filter(({ series }) => series.kind === 'top-off')) {
    const spans = bySensor.get(one.inputIds[0] ?? '') ?? [];
    if (spans.length > 0) values.push(...(await topOffs(asking, siteId, one, merged(spans))));
  }
  return values;
}

/** Stretches in which the series may change, those that overlap as one. */
function stretchesOf(
  { id: seriesId, series, inputIds }: KeptSeries,
  bySensor: ReadonlyMap<string, readonly Touched[]>,
): AskedStretch[] {
  const [lead = '', ...others] = inputIds;
  const beside = others.map((sensorId, i) => ({ sensorId, ageMs: series.inputs[i + 1]?.ageMs ?? 0 }));
  const spans = series.inputs.flatMap(({ ageMs }, i) =>
    (bySensor.get(inputIds[i] ?? '') ?? []).map(({ fromMs, toMs }) => ({ fromMs, toMs: toMs + ageMs })),
  );
  return merged(spans).map((span) => ({ seriesId, lead, beside, ...span }));
}

/** Those that overlap as one. */
function merged(spans: readonly Span[]): Span[] {
  const found: Span[] = [];
  for (const { fromMs, toMs } of spans.toSorted((a, b) => a.fromMs - b.fromMs)) {
    const last = found.at(-1);
    if (last && fromMs <= last.toMs) last.toMs = Math.max(last.toMs, toMs);
    else found.push({ fromMs, toMs });
  }
  return found;
}

/** A series is as doubtful as the most doubtful of its inputs, and from a bad one nothing follows. */
function valueAt(one: KeptSeries | undefined, at: InputsAt): Revised[] {
  if (!one || one.series.kind === 'top-off') return [];
  const inputs = [at.lead, ...at.beside];
  const isSound = inputs.every((input) => input?.quality !== 'bad');
  const values: InputValues = {};
  for (const [i, { role }] of one.series.inputs.entries()) {
    const input = inputs[i];
    if (input) values[role] = input.value;
  }
  // A sensor that reads the salinity stands in place of what is described, also when it is silent.
  const lacks = one.series.inputs.some((_, i) => inputs[i] === null || inputs[i] === undefined);
  const value = isSound && !lacks ? derive(one.series.kind, values, one.series.given) : null;
  const doubtful = inputs.some((input) => input?.quality === 'suspect');
  return derivedValue(one.id, at, value, doubtful);
}
