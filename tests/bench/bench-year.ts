import { pool } from '#data/pool';
import { ensureParts, monthsFrom } from '#data/readings/parts';
import { sensorsAt } from '#data/readings/sensor-names';
import type { Span } from '#core/readings/spans';
import { LOCAL_PERSON } from '#server/gate/who';
import { getSensorReadings } from '#server/readings/get-sensor-readings';
import { rollUpDue } from '#server/readings/roll-up-due';
import { settleSite } from '#server/readings/settle-site';
import { facility } from '../_support/build-facility';
import { keep, stored } from '../_support/stored';
import { onFreshServer } from './fresh-server';

const FIRST = new Date('2025-01-01T00:00:00Z');
const LATER = new Date('2026-01-02T00:00:00Z');
const STEP_S = 30;
const TIMES = 9;
const SPANS: readonly Span[] = ['day', 'week', 'month', 'sixty-days', 'year'];

/** How long the readings of one sensor over each span take, a year of them being there, against a day. */
export async function benchYear(): Promise<string[]> {
  return await onFreshServer(async () => {
    await keep(facility());
    const { siteId } = await stored('harbour');
    const sensor = (await sensorsAt(siteId)).find(({ key }) => key === 'display-temperature');
    if (!sensor) throw new Error('there is no such sensor');
    await ensureParts(monthsFrom(FIRST, 13));
    await pool().query(
      `INSERT INTO reading SELECT $1, $2, t, 1, 0, 25 + sin(extract(epoch FROM t)::float8 / 14000), 0, NULL, NULL, NULL, t
         FROM generate_series($3::timestamptz, $3::timestamptz + interval '365 days', $4 * interval '1 second') t`,
      [siteId, sensor.id, FIRST, STEP_S],
    );
    await pool().query(
      `INSERT INTO reading_touched SELECT $1, gen_random_uuid(), ARRAY[$2::uuid], ARRAY[t], ARRAY[t + interval '1 day']
         FROM generate_series($3::timestamptz, $3::timestamptz + interval '364 days', interval '1 day') t`,
      [siteId, sensor.id, FIRST],
    );
    await pool()
      .query('VACUUM ANALYZE reading')
      .catch(() => undefined);
    const began = performance.now();
    while ((await settleSite(siteId, LATER)) === 'more');
    let rolled = 0;
    for (let isMore = true; isMore; ) {
      const { done, isMore: more } = await rollUpDue(LATER);
      rolled += done;
      isMore = more;
    }
    const rollS = (performance.now() - began) / 1000;
    const place = { site: 'harbour', system: sensor.system, sensor: sensor.key, until: '2025-12-31' };
    const took = new Map<Span, number>();
    for (const span of SPANS) took.set(span, await median(() => getSensorReadings(LOCAL_PERSON, { ...place, span })));
    const day = took.get('day') ?? Number.NaN;
    return [
      `A year of one sensor, a reading each ${STEP_S} s: what its page asks for`,
      ...SPANS.map((span) => {
        const ms = took.get(span) ?? Number.NaN;
        return `  ${span} ${ms.toFixed(0)} ms, ${(ms / day).toFixed(2)} of a day`;
      }),
      `  ${rolled} hours and days rolled up in ${rollS.toFixed(1)} s`,
    ];
  });
}

async function median(work: () => Promise<{ ok: boolean }>): Promise<number> {
  const took: number[] = [];
  for (let time = 0; time < TIMES; time++) {
    const began = performance.now();
    if (!(await work()).ok) throw new Error('the readings were refused');
    took.push(performance.now() - began);
  }
  return took.sort((a, b) => a - b)[Math.floor(TIMES / 2)] ?? Number.NaN;
}
