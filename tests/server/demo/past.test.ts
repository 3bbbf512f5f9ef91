import { type Around, sensorsOf } from '#core/alarms/condition';
import { conditionOf } from '#core/alarms/condition-of';
import { beginWatch, hold, pass, type Seen } from '#core/alarms/is-true';
import { USUAL_STEPS } from '#core/alarms/steps';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { signingOf } from '#core/incidents/state';
import { daySecondIn } from '#core/time/day-second';
import { loadFacility } from '#data/facility/load-facility';
import { entriesOf } from '#data/incidents/entries';
import { qualityOf } from '#data/readings/codes';
import { verifyChain } from '#data/records/verify-chain';
import { spellsSince } from '#data/states/spells';
import { inTransaction } from '#data/transaction';
import { judgeSite } from '#server/alarms/judge-site';
import { loadDemo } from '#server/facility/load-demo';
import { LOCAL_PERSON } from '#server/gate/who';
import { beforeAll, describe, expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';

const db = freshDatabase();
const MINUTE_MS = 60_000;
const sites = new Map<string, { id: string; facility: Facility }>();

beforeAll(async () => {
  expect(await loadDemo(LOCAL_PERSON)).toMatchObject({ ok: true });
  for (const { id, key } of (await db.query('SELECT id, key FROM site')).rows) {
    const loaded = await loadFacility(id);
    if (loaded) sites.set(key, { id, facility: loaded.facility });
  }
}, 900_000);

const site = (key: string) => {
  const found = sites.get(key);
  if (!found) throw new Error(`${key} was not loaded`);
  return found;
};

/** Readings of a site as they came, by `system/sensor`, whoever took them. */
async function readingsOf(siteId: string): Promise<Map<string, Seen[]>> {
  const { rows } = await db.query(
    `SELECT s.key || '/' || n.key AS sensor, r."at", r.received_at, r.value, r.quality, r.origin FROM reading r
       JOIN sensor n ON n.site_id = r.site_id AND n.id = r.sensor_id JOIN system s ON s.site_id = n.site_id AND s.id = n.system_id
      WHERE r.site_id = $1 ORDER BY r.received_at`,
    [siteId],
  );
  const found = new Map<string, Seen[]>();
  for (const { sensor, at, received_at, value, quality, origin } of rows) {
    const list = found.get(sensor) ?? [];
    found.set(sensor, list);
    list.push({
      ...{ atMs: at.getTime(), cameMs: received_at.getTime(), value },
      ...{ quality: qualityOf(quality), isByHand: origin === 3 },
    });
  }
  return found;
}

/** When an alarm is raised by the rules, held to each reading and to the clock, up to the last that came at all. */
function raisedBy(
  facility: Facility,
  system: System,
  alarm: string,
  readings: Map<string, Seen[]>,
  around: Around,
): number[] {
  const endMs = Math.max(...[...readings.values()].map((list) => list.at(-1)?.cameMs ?? 0));
  const definition = system.alarms.find(({ key }) => key === alarm);
  const condition = definition && conditionOf(facility, system, definition);
  if (!condition) return [];
  const seen = sensorsOf(condition)
    .flatMap((sensor) => (readings.get(sensor) ?? []).map((one) => ({ ...one, sensor })))
    .sort((a, b) => a.cameMs - b.cameMs);
  const first = seen[0];
  if (!first) return [];
  let watch = beginWatch(condition, first.cameMs);
  const raised: number[] = [];
  for (const one of seen) {
    const { dueMs } = watch;
    const passed = pass(condition, watch, one.cameMs - 1, around);
    if (passed.turn?.kind === 'raised') raised.push(dueMs ?? 0);
    watch = passed.watch;
    for (const step of hold(condition, watch, one, around)) {
      if (step.turn?.kind === 'raised') raised.push(one.cameMs);
      watch = step.watch;
    }
  }
  const { dueMs } = watch;
  if (pass(condition, watch, endMs, around).turn?.kind === 'raised') raised.push(dueMs ?? 0);
  return raised;
}

describe.each(['harbour', 'quay-street', 'mill-lane'])('%s with its past', (key) => {
  test('has a record that is whole, begun two months ago, in order of time', async () => {
    const { id } = site(key);
    expect(await verifyChain(id)).toMatchObject({ isWhole: true });
    const { rows } = await db.query('SELECT kind, "at" FROM record WHERE site_id = $1 ORDER BY seq', [id]);
    expect(rows[0].kind).toBe('facility-imported');
    expect(Date.now() - rows[0].at.getTime()).toBeGreaterThan(60 * 86_400_000);
    expect(rows.every(({ at }, i) => i === 0 || at >= rows[i - 1].at)).toBe(true);
  });

  test('has had exactly the alarms that its stored readings raise, within a minute', async () => {
    const { id, facility } = site(key);
    const readings = await readingsOf(id);
    const spells = await inTransaction((tx) => spellsSince(tx, id, new Date(0)));
    const around = { spells, daySecond: daySecondIn(facility.site.zone) };
    const told = facility.systems.flatMap((system) =>
      system.alarms.flatMap((alarm) =>
        raisedBy(facility, system, alarm.key, readings, around).map(
          (ms) => [`${system.key}/${alarm.key}`, ms] as const,
        ),
      ),
    );
    const { rows } = await db.query(
      `SELECT s.key || '/' || d.key AS alarm, o.raised_at FROM alarm_occurrence o
         JOIN alarm_definition d ON d.site_id = o.site_id AND d.id = o.alarm_id
         JOIN system s ON s.site_id = o.site_id AND s.id = o.system_id WHERE o.site_id = $1`,
      [id],
    );
    const order = (a: readonly [string, number], b: readonly [string, number]) =>
      a[0].localeCompare(b[0]) || a[1] - b[1];
    const kept = rows.map((row) => [row.alarm, row.raised_at.getTime()] as [string, number]).sort(order);
    const raised = told.sort(order);
    expect(kept.map(([alarm]) => alarm)).toEqual(raised.map(([alarm]) => alarm));
    for (const [i, [, ms]] of kept.entries()) expect(Math.abs(ms - (raised[i]?.[1] ?? 0))).toBeLessThan(MINUTE_MS);
  });

  test('is gone on from by whoever judges alarms next: nothing is raised twice, ended or called again', async () => {
    const { id } = site(key);
    const count = async () =>
      (await db.query('SELECT count(*)::int AS n FROM alarm_event WHERE site_id = $1', [id])).rows[0].n;
    const before = await count();
    expect(await judgeSite(id, new Date())).toMatchObject({ isDone: true });
    expect(await count()).toBe(before);
  });

  test('holds a reading for each number that stands on a round', async () => {
    const { id } = site(key);
    const { rows } = await db.query(
      `WITH hand AS MATERIALIZED (SELECT came_by, "at", value FROM reading WHERE site_id = $1 AND origin = 3)
       SELECT count(*)::int AS n FROM round_entry e LEFT JOIN hand ON hand.came_by = e.id AND hand."at" = e."at"
          AND hand.value = (e.value->>'value')::float8
        WHERE e.site_id = $1 AND e.value->>'kind' = 'number' AND hand.came_by IS NULL`,
      [id],
    );
    expect(rows[0].n).toBe(0);
  });
});

describe('the pool without air', () => {
  const incidentOf = async (key: string) => {
    const { rows } = await db.query('SELECT * FROM incident WHERE site_id = $1', [site(key).id]);
    expect(rows.length).toBe(1);
    return rows[0];
  };

  test('was raised, called, escalated, acknowledged and put right in that order', async () => {
    const incident = await incidentOf('harbour');
    const { rows } = await db.query('SELECT kind, "at" FROM alarm_event WHERE occurrence_id = $1 ORDER BY "at"', [
      incident.occurrence_id,
    ]);
    expect(rows.map(({ kind }) => kind)).toEqual(['raised', 'escalated', 'acknowledged', 'returned']);
    expect(rows[1].at.getTime() - rows[0].at.getTime()).toBe((USUAL_STEPS[1]?.afterMin ?? 0) * MINUTE_MS);
    const calls = await db.query('SELECT step, why FROM alarm_call WHERE occurrence_id = $1 ORDER BY made_at', [
      incident.occurrence_id,
    ]);
    expect(calls.rows[0]).toEqual({ step: 1, why: 'on-call' });
    const entries = await entriesOf(incident.site_id, incident.id);
    const right = entries.find(
      ({ kind, body }) => kind === 'mark' && body && 'mark' in body && body.mark === 'put-right',
    );
    expect(right?.atMs ?? 0).toBeGreaterThan(rows[2].at.getTime());
    expect(right?.atMs ?? 0).toBeLessThan(rows[3].at.getTime());
  });

  test('was signed by two over the same entries, and one of its actions is overdue', async () => {
    const incident = await incidentOf('harbour');
    const entries = await entriesOf(incident.site_id, incident.id);
    expect(signingOf(entries)).toMatchObject({ state: 'signed', afterwards: new Set() });
    const done = new Set(entries.flatMap(({ body }) => (body && 'proof' in body ? [body.action] : [])));
    const open = entries.filter(({ id, kind }) => kind === 'action' && !done.has(id));
    const today = new Date().toISOString().slice(0, 10);
    expect(open.filter(({ body }) => body && 'due' in body && body.due < today).length).toBe(1);
    expect(open.length).toBeGreaterThan(1);
  });

  test('that of the window is under investigation still', async () => {
    const incident = await incidentOf('mill-lane');
    expect(signingOf(await entriesOf(incident.site_id, incident.id)).state).toBe('under-investigation');
  });
});
