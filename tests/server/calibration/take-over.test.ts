import { beforeAll, describe, expect, test } from 'vitest';
import { storeHistory } from '#data/readings/store-history';
import { verifyChain } from '#data/records/verify-chain';
import { inTransaction } from '#data/transaction';
import { type CalibrationPage, getCalibration } from '#server/calibration/get-calibration';
import { keepCalibration } from '#server/calibration/keep-calibration';
import { previewCalibration } from '#server/calibration/preview-calibration';
import { LOCAL_PERSON } from '#server/gate/who';
import { now } from '#server/clock';
import { freshDatabase } from '../../_support/database';
import { sensorsOf } from '../../_support/sensors-of';
import { keep, stored } from '../../_support/stored';
import { DAY_MS, measuredFacility, nightsOf } from './night-readings';

const { query } = freshDatabase();
const FACILITY = measuredFacility();
const SYSTEM = FACILITY.systems[0]?.key ?? '';
const place = { site: 'harbour', system: SYSTEM, days: 14 as const, out: [] as string[] };
const MIDNIGHT = Math.floor(now().getTime() / DAY_MS) * DAY_MS;
const nights = nightsOf(FACILITY, { firstMs: MIDNIGHT - 8 * DAY_MS, many: 5, factor: 1.5 });
let siteId = '';
let sensors: Record<string, string> = {};

async function store(key: string, points: { atMs: number; value: number }[], odd = new Map()): Promise<void> {
  const columns = { atMs: points.map(({ atMs }) => atMs), values: points.map(({ value }) => value), odd };
  await inTransaction((tx) =>
    storeHistory(tx, siteId, [{ sensorId: sensors[key] ?? '', origin: 'device' as const, ...columns }]),
  );
}

async function look(out: string[] = []): Promise<CalibrationPage> {
  const page = await getCalibration(LOCAL_PERSON, { ...place, out });
  if (!page.ok) throw new Error(JSON.stringify(page.reason));
  return page.value;
}

const heatOf = (page: CalibrationPage) => page.fits.find(({ is }) => is === 'heat-loss');

function request(page: CalibrationPage, out: string[] = []) {
  const target = heatOf(page)?.target;
  if (!target) throw new Error(JSON.stringify(heatOf(page)?.refused));
  const { value, low, high } = target;
  return { ...place, out, is: 'heat-loss' as const, untilMs: page.untilMs, value, low, high, why: 'measured at last' };
}

beforeAll(async () => {
  await keep(FACILITY);
  ({ siteId } = await stored('harbour'));
  sensors = await sensorsOf(query);
});

describe('calibration from readings', () => {
  test('without any says in words what is missing, figure by figure', async () => {
    const { fits } = await look();
    expect(fits.map(({ is, found, refused }) => [is, found, refused.length])).toEqual([
      ['heat-loss', null, 1],
      ['evaporation', null, 1],
      ['oxygen-transfer', null, 1],
      ['oxygen-use', null, 1],
    ]);
    expect(heatOf(await look())?.refused[0]).toMatch(/^No probe in the water sent good readings/);
  });

  test('finds the heat loss that the readings were made with, from nights with the heater off, bad readings left out', async () => {
    // A probe that hung in the air for a quarter of an hour each night; what it read was found bad as it came.
    const mad = new Map([20, 21, 22].map((i) => [i, { quality: 'bad' as const, reason: 'jump' }]));
    const read = nights.temperature.map((point, i) => (mad.has(i) ? { ...point, value: 3 } : point));
    await store('sump-temperature', read, mad);
    await store('heater-1-watts', nights.watts);
    const heat = heatOf(await look());
    expect(heat?.stretches.length).toBeGreaterThanOrEqual(5);
    expect(heat?.found?.low).toBeLessThan(nights.truth);
    expect(heat?.found?.high).toBeGreaterThan(nights.truth);
    expect(Math.abs((heat?.found?.value ?? 0) / nights.truth - 1)).toBeLessThan(0.05);
    expect(heat?.how).toMatch(/off by the power they drew/);
    expect(heat?.found?.doubts.map(({ from }) => from)).toContain(
      'temperature of the room, which is held as described',
    );
    expect(heat?.target).toMatchObject({
      noun: 'tank',
      key: 'display',
      field: 'lossWPerK',
      inUse: 10,
      rangeInUse: null,
    });
  });

  test('leaves out what a person leaves out, and says nothing of two nights', async () => {
    const page = await look();
    const keys = heatOf(page)?.stretches.map(({ key }) => key) ?? [];
    const less = heatOf(await look(keys.slice(0, 2)));
    expect(less?.stretches.filter(({ isLeftOut }) => isLeftOut).map(({ key }) => key)).toEqual(keys.slice(0, 2));
    expect(less?.found?.value).not.toBe(heatOf(page)?.found?.value);
    const few = heatOf(await look(keys.slice(2)));
    expect([few?.found, few?.target]).toEqual([null, null]);
    expect(few?.refused[0]).toMatch(/^Too few stretches/);
  });

  test('tells before anything is kept what it would change in the description', async () => {
    const seen = await previewCalibration(LOCAL_PERSON, request(await look()));
    if (!seen.ok) throw new Error(JSON.stringify(seen.reason));
    expect(seen.value.groups.flatMap(({ changes }) => changes.map(({ words }) => words))).toEqual([
      expect.stringMatching(/^Display \(tank\).*10 W\/K → .*W\/K.*measured/),
    ]);
    expect(seen.value.touched).toBe(1);
    expect((await stored('harbour')).facility).toEqual(FACILITY);
  });

  test('refuses another figure than the readings say, and one that readings no longer say', async () => {
    const asked = request(await look());
    expect(await keepCalibration(LOCAL_PERSON, { ...asked, value: asked.value * 2, basedOn: 1 })).toMatchObject({
      ok: false,
      reason: { why: 'conflict' },
    });
    const other = await keepCalibration(LOCAL_PERSON, {
      ...asked,
      out: [heatOf(await look())?.stretches[0]?.key ?? ''],
      basedOn: 1,
    });
    expect(other).toMatchObject({
      ok: false,
      reason: { why: 'conflict', now: expect.stringMatching(/no longer say/) },
    });
  });

  test('taken over, the figure is measured with the interval as its range; it stands in the record with its reason', async () => {
    const asked = request(await look());
    await query('DELETE FROM graphile_worker._private_jobs');
    const kept = await keepCalibration(LOCAL_PERSON, { ...asked, basedOn: 1 });
    expect(kept).toMatchObject({ ok: true, value: { changes: 1, revision: 2 } });
    const { facility } = await stored('harbour');
    const display = facility.systems[0]?.tanks.find(({ key }) => key === 'display');
    expect(display?.lossWPerK).toEqual({
      value: asked.value,
      origin: 'measured',
      low: asked.low,
      high: asked.high,
      source: expect.stringMatching(
        /^fitted from readings of \d{4}-\d\d-\d\d to \d{4}-\d\d-\d\d \(Sump temperature, \d+ stretches\)$/,
      ),
    });
    const { rows } = await query("SELECT body FROM record WHERE kind = 'description-changed'");
    expect(rows.map(({ body }) => [body.why, body.noun])).toEqual([['measured at last', 'tank']]);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
    const { rows: jobs } = await query('SELECT key FROM graphile_worker.jobs');
    expect(jobs).toEqual([{ key: `review-site:${siteId}` }]);
    const again = heatOf(await look());
    expect(again?.target?.inUse).toBeCloseTo(asked.value, 6);
    expect(again?.target?.rangeInUse).toEqual({ low: asked.low, high: asked.high });
  });
});
