import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { dayStart } from '#core/time/zone';
import { groupBy } from '#core/group-by';
import type { Quality } from '#core/readings/reading';
import { inPlainTransaction } from '#data/readings/asking';
import { keepLimits } from '#data/readings/limits';
import { rolledUp } from '#data/readings/roll-up';
import { type NewReading, storeReadings } from '#data/readings/store-readings';
import { rollUpDue } from '#server/readings/roll-up-due';
import { settleSite } from '#server/readings/settle-site';
import { facility } from '../../_support/build-facility';
import { sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { sensorsOf } from '../../_support/sensors-of';
import { smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { fromScratch, type Standing } from './roll-up-from-scratch';

const { query } = freshDatabase();
const RUNS = 25;
const ZONE = 'Europe/London';
const MINUTE = 60_000;
/** The Saturday before the clocks go back in 2026, at 22:00 UTC: what follows is a day of 25 hours. */
const FIRST = Date.UTC(2026, 9, 24, 22);
const LATER = new Date('2026-11-01T00:00:00Z');
let siteId = '';
let free: string[] = [];

beforeAll(async () => {
  const system = smallSystem();
  const sensors = Array.from({ length: RUNS + 4 }, (_, i) =>
    sensor({ key: `s-${i}`, name: `S ${i}`, tank: undefined }),
  );
  const base = facility();
  await keep({
    ...base,
    site: { ...base.site, zone: ZONE },
    systems: [{ ...system, sensors: [...system.sensors, ...sensors] }],
  });
  ({ siteId } = await stored('harbour'));
  await settleSite(siteId, new Date(FIRST));
  free = Object.entries(await sensorsOf(query)).flatMap(([key, id]) => (key.startsWith('s-') ? [id] : []));
});

async function settleAll(at: Date): Promise<void> {
  while ((await settleSite(siteId, at)) === 'more');
  while ((await rollUpDue(at)).isMore);
}

/** A reading, and when it came where that was not long after. */
type Came = NewReading & { receivedAt?: Date };

/** What stands of readings that were stored one after the other: the last of each instant and origin. */
function standing(readings: readonly Came[]): Standing[] {
  const byKey = groupBy(readings, (one) => `${one.at.getTime()} ${one.origin}`);
  return [...byKey.values()].flatMap((all) => {
    const last = all.at(-1);
    if (!last) return [];
    const { at, value, quality, origin, receivedAt = LATER } = last;
    // A correction is none that came late.
    const isLate = all.length === 1 && origin === 'device' && receivedAt.getTime() - at.getTime() > 3_600_000;
    return [{ atMs: at.getTime(), value, quality, byHand: origin === 'hand', isLate }];
  });
}

async function expectExact(sensorId: string, readings: readonly Came[], limits: Parameters<typeof fromScratch>[1]) {
  const wide = { from: new Date(0), to: LATER };
  for (const isDay of [false, true])
    expect(await rolledUp(siteId, sensorId, { ...wide, isDay })).toEqual(
      fromScratch(standing(readings), limits, isDay ? ZONE : null),
    );
}

const step = fc.record({
  minute: fc.integer({ min: 0, max: 30 * 60 }),
  value: fc.constantFrom(24, 25.1, 26, 27.3, 30),
  quality: fc.constantFrom<Quality>('good', 'good', 'suspect', 'bad'),
  isHand: fc.constantFrom(false, false, false, true),
  /** Minutes it is on its way: an hour is no more than a gateway may take. */
  wayMin: fc.constantFrom(0, 60, 61),
  /** What happens after it: nothing, it is settled, or settled and rolled up as on the day it was. */
  then: fc.constantFrom('nothing', 'nothing', 'settled', 'rolled'),
});
const limit = fc.record({
  minute: fc.integer({ min: 0, max: 30 * 60 }),
  above: fc.option(fc.constantFrom(25, 26, 29)),
  below: fc.option(fc.constantFrom(24.5, 25)),
});

describe('hours and days', () => {
  test('come out as worked out from scratch, in whatever order readings come, late, repeated or corrected', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(step, { minLength: 1, maxLength: 14 }),
        fc.array(limit, { maxLength: 2 }),
        async (steps, changes) => {
          const sensorId = free.pop() ?? '';
          const limits = [...new Map(changes.map((one) => [one.minute, one])).values()].sort(
            (a, b) => a.minute - b.minute,
          );
          const since = limits.map(({ minute, above, below }) => ({ sinceMs: FIRST + minute * MINUTE, above, below }));
          for (const { sinceMs, above, below } of since)
            await query('INSERT INTO reading_limit VALUES ($1, $2, $3, $4, $5)', [
              siteId,
              sensorId,
              new Date(sinceMs),
              above,
              below,
            ]);
          const sent = steps.map(({ minute, value, quality, isHand, wayMin }): Came => {
            const doubt = quality === 'good' ? {} : { reason: 'unlikely' };
            const at = new Date(FIRST + minute * MINUTE);
            const receivedAt = new Date(at.getTime() + wayMin * MINUTE);
            return { sensorId, at, value, quality, ...doubt, origin: isHand ? 'hand' : 'device', receivedAt };
          });
          const came: Came[] = [];
          for (const [i, one] of sent.entries()) {
            const [outcome] = await storeReadings(siteId, [one, one], {
              receivedAt: one.receivedAt ?? LATER,
              correct: true,
            });
            // A repeat of the value leaves what it was judged to be.
            if (outcome !== 'repeat') came.push(one);
            const then = steps[i]?.then;
            if (then !== 'nothing') await settleSite(siteId, one.at);
            if (then === 'rolled') await rollUpDue(new Date(one.at.getTime() + 90 * MINUTE));
          }
          await settleAll(LATER);
          await expectExact(sensorId, came, since);
        },
      ),
      { numRuns: RUNS, endOnFailure: true },
    );
  }, 60_000);

  test('of the night the clocks go back have 25 hours, and of the one they go forward 23', async () => {
    const sensorId = free.pop() ?? '';
    const readings = ['2026-10-24T23:30:00Z', '2026-10-25T23:30:00Z', '2026-03-29T00:30:00Z'].map(
      (at): NewReading => ({ sensorId, at: new Date(at), value: 25, quality: 'good', origin: 'device' }),
    );
    await storeReadings(siteId, readings, { receivedAt: LATER });
    await settleAll(LATER);
    const days = await rolledUp(siteId, sensorId, { from: new Date(0), to: LATER, isDay: true });
    const ofDay = (date: string) => days.find(({ fromMs }) => fromMs === dayStart(ZONE, date));
    const hours = (date: string) => ((ofDay(date)?.toMs ?? 0) - (ofDay(date)?.fromMs ?? 0)) / 3_600_000;
    expect([hours('2026-10-25'), hours('2026-03-29')]).toEqual([25, 23]);
    // The first begins at 23:00 UTC, the second ends at midnight UTC: both readings are of the one day.
    expect(ofDay('2026-10-25')?.good.count).toBe(2);
  });

  test('hold the first limits that are known of a sensor against all that was read, and later ones from when they were set', async () => {
    const sensorId = free.pop() ?? '';
    const at = (minute: number) => new Date(FIRST + minute * MINUTE);
    const read = (minute: number): NewReading => ({
      sensorId,
      at: at(minute),
      value: 26,
      quality: 'good',
      origin: 'device',
    });
    await storeReadings(siteId, [0, 30, 60, 90].map(read), { receivedAt: LATER });
    await settleAll(LATER);
    const outside = async () =>
      (await rolledUp(siteId, sensorId, { from: at(0), to: at(120), isDay: false })).map(({ good }) => good.outsideS);
    expect(await outside()).toEqual([0, 0]);
    const set = (above: number | null, when: Date) =>
      inPlainTransaction((asking) => keepLimits(asking, siteId, [{ sensorId, above, below: null }], when));
    expect(await set(25, at(70))).toEqual([sensorId]);
    await query(
      'INSERT INTO reading_due SELECT DISTINCT site_id, sensor_id, is_day, from_at, to_at FROM reading_roll_up WHERE sensor_id = $1',
      [sensorId],
    );
    await settleAll(LATER);
    expect(await outside()).toEqual([3600, 3600]);
    expect(await set(27, at(90))).toEqual([]);
    await storeReadings(siteId, [read(100)], { receivedAt: LATER });
    await settleAll(LATER);
    expect(await outside()).toEqual([3600, 1800]);
  });

  test('that two workers roll up at once are rolled up once and right', async () => {
    const sensorId = free.pop() ?? '';
    const readings = Array.from({ length: 600 }, (_, i): NewReading => {
      return {
        sensorId,
        at: new Date(Date.UTC(2026, 5, 1, 0, i * 20)),
        value: 24 + (i % 5),
        quality: 'good',
        origin: 'device',
      };
    });
    await storeReadings(siteId, readings, { receivedAt: LATER });
    await Promise.all([settleSite(siteId, LATER), settleSite(siteId, LATER)]);
    await settleAll(LATER);
    await Promise.all(Array.from({ length: 4 }, () => settleAll(LATER)));
    await expectExact(sensorId, readings, []);
    expect((await query('SELECT count(*)::int AS n FROM reading_due')).rows).toEqual([{ n: 0 }]);
  });
});
