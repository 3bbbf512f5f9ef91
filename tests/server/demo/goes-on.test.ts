import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import { loadedDemoSites, toldAgain } from '#data/demo/going-on';
import { storeReadings } from '#data/readings/store-readings';
import { judgeSite } from '#server/alarms/judge-site';
import { goOn } from '#server/demo/go-on';
import { keepDemoSite } from '#server/demo/keep-demo-site';
import { withPasts } from '#server/demo/past-apart';
import { LOCAL_PERSON } from '#server/gate/who';
import { beforeAll, describe, expect, test } from 'vitest';
import { demoOn } from '../../../seed/demo';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { keep, stored } from '../../_support/stored';
import { demoSite } from '../../seed/demo-site';

const { query } = freshDatabase();
const MINUTE_MS = 60_000;
const LOADED = new Date('2026-11-24T14:07:31Z');
const TODAY = '2026-11-24';
const SILENT_MIN = 25;
let siteId = '';

/** The shop, with an alarm of its own for each gateway that says nothing. */
function listenedTo(shop: Facility): Facility {
  const [first, ...others] = shop.systems;
  if (!first) throw new Error('The shop has no system');
  const silences = shop.monitors
    .filter(
      ({ kind, key }) =>
        kind === 'gateway' && shop.systems.some(({ sensors }) => sensors.some((one) => one.gateway === key)),
    )
    .map(
      ({ key }): AlarmDefinition => ({
        ...{ key: `silent-${key}`, name: `${key} silent`, on: { kind: 'silent', gateway: key } },
        ...{ delayS: SILENT_MIN * 60, deadBand: 0, answeredBy: 'rota' },
      }),
    );
  return { ...shop, systems: [{ ...first, alarms: [...first.alarms, ...silences] }, ...others] };
}

beforeAll(async () => {
  await keep(facility());
  const kept = await withPasts((pastOf) =>
    keepDemoSite(LOCAL_PERSON, listenedTo(demoOn(demoSite('mill-lane'), TODAY)), LOADED, pastOf),
  );
  expect(kept).toMatchObject({ ok: true });
  ({ siteId } = await stored('mill-lane'));
}, 300_000);

const minutesOn = (minutes: number) => new Date(LOADED.getTime() + minutes * MINUTE_MS);
const events = async () =>
  (await query('SELECT kind, "at", detail FROM alarm_event WHERE site_id = $1 ORDER BY id', [siteId])).rows;
const count = async (site: string, from: Date, to: Date): Promise<number> =>
  (
    await query('SELECT count(*)::int AS n FROM reading WHERE site_id = $1 AND "at" > $2 AND "at" <= $3', [
      site,
      from,
      to,
    ])
  ).rows[0].n;

/** ms since the newest reading of each gateway. */
async function ages(at: Date): Promise<number[]> {
  const { rows } = await query(
    `SELECT n.gateway_id, max(l."at") AS "at" FROM reading_latest l JOIN sensor n ON n.site_id = l.site_id AND n.id = l.sensor_id
      WHERE l.site_id = $1 AND n.gateway_id IS NOT NULL GROUP BY 1`,
    [siteId],
  );
  return rows.map((row) => at.getTime() - row.at.getTime());
}

describe('a demonstration that goes on', () => {
  test('is heard of each gateway again and again, and no alarm comes of it', async () => {
    const before = await events();
    for (let minute = 1; minute <= SILENT_MIN + 10; minute++) {
      await goOn(minutesOn(minute));
      await judgeSite(siteId, minutesOn(minute));
    }
    const heard = await ages(minutesOn(SILENT_MIN + 10));
    expect(heard.length).toBeGreaterThan(0);
    for (const age of heard) expect(age).toBeLessThan(SILENT_MIN * MINUTE_MS);
    expect(await events()).toEqual(before);
  });

  test('is raised an alarm of when its gateways do fall silent', async () => {
    const before = await events();
    for (let minute = SILENT_MIN + 11; minute <= 2 * SILENT_MIN + 20; minute++)
      await judgeSite(siteId, minutesOn(minute));
    const raised = (await events()).slice(before.length);
    expect(raised.map(({ kind }) => kind)).toContain('raised');
  });

  test('stores nothing twice for the same minute, and nothing for the minutes before it was loaded', async () => {
    const at = minutesOn(20);
    expect(await goOn(at)).toBe(0);
    expect(await goOn(minutesOn(-3))).toBe(0);
  });

  test('goes on from now after days in which nobody ran it: they stay empty, and no alarm is raised', async () => {
    const begin = 3 * 24 * 60;
    await judgeSite(siteId, minutesOn(begin));
    const before = await events();
    for (let minute = begin; minute <= begin + SILENT_MIN; minute++) {
      await goOn(minutesOn(minute));
      await judgeSite(siteId, minutesOn(minute));
    }
    expect(await count(siteId, minutesOn(60), minutesOn(begin - 1))).toBe(0);
    expect(await count(siteId, minutesOn(begin), minutesOn(begin + SILENT_MIN))).toBeGreaterThan(0);
    expect((await events()).slice(before.length).filter(({ kind }) => kind === 'raised')).toEqual([]);
  });

  test('is calm for a whole day, the hours of the days that it repeats', async () => {
    const begin = 5 * 24 * 60;
    await judgeSite(siteId, minutesOn(begin));
    const before = await events();
    for (let minute = begin; minute < begin + 24 * 60; minute += 30) {
      const to = minutesOn(minute + 30);
      const readings = await toldAgain(siteId, LOADED, minutesOn(minute), to);
      await storeReadings(siteId, readings, { receivedAt: to });
      await judgeSite(siteId, to);
    }
    expect(await count(siteId, minutesOn(begin), minutesOn(begin + 24 * 60))).toBeGreaterThan(300);
    expect((await events()).slice(before.length).filter(({ kind }) => kind === 'raised')).toEqual([]);
  });

  test('leaves a site of somebody’s own alone', async () => {
    const own = await stored('harbour');
    expect((await loadedDemoSites()).map((one) => one.siteId)).toEqual([siteId]);
    expect(await count(own.siteId, new Date(0), minutesOn(1e6))).toBe(0);
    // Nor does a record that says so make a site one of the demonstration.
    expect((await query('SELECT is_demo FROM site WHERE id = $1', [own.siteId])).rows).toEqual([{ is_demo: false }]);
  });
});
