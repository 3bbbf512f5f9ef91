import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { reviewSystem } from '#core/review/review-system';
import { hoursTonight, leastIn } from '#core/review/tonight';
import { newId } from '#data/new-id';
import { listSites } from '#data/sites';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { dayIn } from '#server/local-day';
import { listSystems, type SystemLine } from '#server/reviews/list-systems';
import { reviewSite } from '#server/reviews/review-site';
import { beginStateOf } from '#server/states/begin-state';
import { beginRequest } from '#shape/states/requests';
import { round, shift } from '../../_support/build-facility';
import { safeguard, sensor } from '../../_support/build-system';
import { countQueries } from '../../_support/count-queries';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const MINUTE = 60_000;
let siteId = '';
let who: Who;

const first = () => {
  const system = smallSystem();
  const second = sensor({ key: 'second', name: 'Second', tank: 'display' });
  return {
    ...system,
    sensors: [...system.sensors, second],
    safeguards: [safeguard({ key: 'one', name: 'One', tests: [] })],
  };
};
const line = async (key = 'tank-1'): Promise<SystemLine> => {
  const list = await listSystems(who, { site: 'harbour' });
  const found = list.ok && list.value.systems.find((one) => one.key === key);
  if (!found) throw new Error(`no ${key}`);
  return found;
};
const idOf = async (table: string, key: string) =>
  (await query(`SELECT id FROM ${table} WHERE key = $1 AND site_id = $2`, [key, siteId])).rows[0].id;

beforeAll(async () => {
  const site = smallFacility(first(), smallSystem('tank-2', 'Tank 2'));
  // Somebody is on site all day long, and at every hour a round is due that looks at everything.
  const rounds = Array.from({ length: 24 }, (_, hour) =>
    round({ key: `r${hour}`, name: `Round ${hour}`, at: `${String(hour).padStart(2, '0')}:00`, systems: ['tank-1'] }),
  );
  await keep({ ...site, shifts: [shift({ from: '00:00', to: '00:00' })], rounds });
  ({ siteId } = await stored('harbour'));
  who = await letIn(query, siteId, 'harbour', 'Ada', 'aquarist');
});

beforeEach(async () => {
  await query(
    'SET session_replication_role = replica; DELETE FROM state_event; DELETE FROM state_open; DELETE FROM alarm_open; DELETE FROM reading_latest',
  );
});

describe('a system in the list', () => {
  test('says nothing that nobody knows: no alarm, no state, no reading', async () => {
    expect((await line('tank-2')).now).toMatchObject({
      alarms: { unacknowledged: 0, active: 0, suppressed: 0 },
      checks: { late: 0, missed: 0 },
      safeguards: { all: 0, untested: 0, off: 0 },
      states: [],
      last: null,
      tonight: null,
      isTonightKnown: false,
    });
  });

  test('counts open alarms, those first that nobody has acknowledged', async () => {
    const system = await idOf('system', 'tank-1');
    for (const [active, acknowledged] of [
      [true, false],
      [false, false],
      [true, true],
    ])
      await query(
        `SET session_replication_role = replica;
         INSERT INTO alarm_open (site_id, occurrence_id, alarm_id, system_id, raised_at, active, acknowledged, step)
         VALUES ('${siteId}', '${newId()}', '${newId()}', '${system}', now(), ${active}, ${acknowledged}, 1)`,
      );
    expect((await line()).now.alarms).toEqual({ unacknowledged: 2, active: 1, suppressed: 0 });
    expect((await line('tank-2')).now.alarms).toEqual({ unacknowledged: 0, active: 0, suppressed: 0 });
  });

  test('says when it was read last, that this is long ago, and how many sensors have fallen silent', async () => {
    const read = async (key: string, minutesAgo: number, origin = 1) =>
      await query(
        `INSERT INTO reading_latest (site_id, sensor_id, at, origin, value, quality, received_at)
         VALUES ($1, $2, now() - make_interval(mins => $3), $4, 25, 0, now())`,
        [siteId, await idOf('sensor', key), minutesAgo, origin],
      );
    await query('SET session_replication_role = origin');
    const one = (
      await query(
        `SELECT s.id FROM sensor s JOIN system y ON y.id = s.system_id WHERE y.key = 'tank-1' AND s.key = 'display-temperature'`,
      )
    ).rows[0].id;
    await query(
      `INSERT INTO reading_latest (site_id, sensor_id, at, origin, value, quality, received_at)
       VALUES ($1, $2, now() - interval '3 minutes', 1, 25, 0, now())`,
      [siteId, one],
    );
    await read('second', 90);
    const { last } = (await line()).now;
    expect(last).toMatchObject({ isStale: false, silent: 1, devices: 2 });
    expect(now().getTime() - Date.parse(last?.at ?? '')).toBeGreaterThan(2.9 * MINUTE);
    await query(`UPDATE reading_latest SET at = now() - interval '2 hours'`);
    expect((await line()).now.last).toMatchObject({ isStale: true, silent: 2 });
    await query(`UPDATE reading_latest SET origin = 3`);
    expect((await line()).now.last).toMatchObject({ isStale: false, silent: 0, devices: 0 });
  });

  test('names the states in force and those that have outstayed their end', async () => {
    const begin = (state: string) =>
      beginStateOf(
        who,
        beginRequest.parse({ site: 'harbour', system: 'tank-1', entry: newId(), state, lasts: 1, unit: 'hours' }),
      );
    await begin('treatment');
    await begin('backwash');
    await query(`UPDATE state_open SET until = now() - interval '1 minute' WHERE state = 'backwash'`);
    expect((await line()).now.states.map(({ state, outstayed }) => [state, outstayed])).toEqual([
      ['backwash', true],
      ['treatment', false],
    ]);
  });

  test('counts rounds that were missed since the site is walked, and safeguards that are untested', async () => {
    await query(`UPDATE site SET created_at = now() - interval '6 hours' WHERE id = $1`, [siteId]);
    const { checks, safeguards } = (await line()).now;
    expect(checks.missed + checks.late).toBeGreaterThanOrEqual(4);
    expect((await line('tank-2')).now.checks).toEqual({ late: 0, missed: 0 });
    expect(safeguards).toEqual({ all: 1, untested: 1, off: 0 });
  });

  test('says the time to spare of tonight once its review is there', async () => {
    const { facility } = await stored('harbour');
    const review = reviewSystem(facility, facility.systems[1] ?? smallSystem(), dayIn('Europe/London', now()));
    const [entry] = await listSites();
    await reviewSite(entry?.id ?? '', { compute: async ({ system }) => ({ ...review, system }) });
    const { now: found, review: state } = await line('tank-2');
    const hours = state.state === 'current' ? (state.summary.spareHours ?? []) : [];
    expect(hours).toHaveLength(168);
    expect(found.isTonightKnown).toBe(true);
    expect(found.tonight).toEqual(leastIn(hours, hoursTonight('Europe/London', now().getTime())));
    expect(found.tonight).not.toBeNull();
  });
});

test('who is on is told of each site, with who is next', async () => {
  const list = await listSystems(who);
  expect(list.ok && list.value.sites[0]?.on).toEqual({
    on: [{ name: 'Robin', kind: 'on-site', until: null }],
    next: [],
  });
});

test('two hundred systems are listed with nine questions', async () => {
  const systems = Array.from({ length: 200 }, (_, at) => smallSystem(`tank-${at}`, `Tank ${at}`));
  await keep(smallFacility(...systems));
  await query(`INSERT INTO review_result (site_id, system_id, input_hash, engine_version, judged_on, computed_at, summary, body)
    SELECT y.site_id, y.id, 'x', 'x', now(), now(), r.summary, r.body FROM system y, review_result r
     WHERE r.summary IS NOT NULL AND y.retired_at IS NULL AND y.id <> r.system_id
    ON CONFLICT DO NOTHING`);
  await query(`INSERT INTO reading_latest (site_id, sensor_id, at, origin, value, quality, received_at)
    SELECT site_id, id, now(), 1, 25, 0, now() FROM sensor ON CONFLICT DO NOTHING`);
  await listSystems(who);
  const asked = await countQueries(() => listSystems(who));
  expect(asked).toHaveLength(9);
}, 60_000);
