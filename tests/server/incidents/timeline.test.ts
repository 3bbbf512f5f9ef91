import { beforeAll, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { storeReadings } from '#data/readings/store-readings';
import { getReport } from '#server/incidents/get-report';
import { getTimeline } from '#server/incidents/get-timeline';
import { alarm } from '../../_support/build-system';
import { site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { anAccount } from '../../_support/signed-in';
import { logged, opened, somebody } from './opened-incident';

const { query } = freshDatabase();

/** A night in the past: the site is in Europe/London, in winter, so its clocks show UTC. */
const night = (clock: string) => new Date(`2026-01-05T${clock}:00Z`);
const LEAD = somebody('lead');
let siteId = '';
let ids: Record<string, string> = {};
let place = { site: 'harbour', number: 0 };

async function one(table: string, key: string): Promise<string> {
  const { rows } = await query(`SELECT id FROM ${table} WHERE site_id = $1 AND key = $2`, [siteId, key]);
  return rows[0].id;
}

/** An alarm that was raised at 02:10, told at 02:11 after a failure, acknowledged at 02:20 and returned at 04:00. */
async function raise(account: string): Promise<string> {
  const occurrence = newId();
  const definition = JSON.stringify({ on: { kind: 'sensor', sensor: 'display-temperature', above: 26.5 } });
  await query(
    `INSERT INTO alarm_occurrence (site_id, id, alarm_id, system_id, began_at, raised_at, value, definition)
     VALUES ($1, $2, $3, $4, $5, $6, 27.1, $7)`,
    [siteId, occurrence, ids.alarm, ids.system, night('02:00'), night('02:10'), definition],
  );
  for (const [kind, clock, by] of [
    ['raised', '02:10', null],
    ['acknowledged', '02:20', account],
    ['returned', '04:00', null],
  ])
    await query(
      `INSERT INTO alarm_event (site_id, id, occurrence_id, kind, at, by, detail) VALUES ($1, $2, $3, $4, $5, $6, '{}')`,
      [siteId, newId(), occurrence, kind, night(clock ?? ''), by],
    );
  const call = newId();
  await query(
    `INSERT INTO alarm_call (site_id, id, occurrence_id, step, account_id, channel, why, made_at)
     VALUES ($1, $2, $3, 1, $4, 'mail', 'on-call', $5)`,
    [siteId, call, occurrence, account, night('02:10')],
  );
  for (const [result, clock] of [
    ['failed', '02:10'],
    ['taken', '02:11'],
  ])
    await query(`INSERT INTO alarm_call_try (site_id, id, call_id, at, result) VALUES ($1, $2, $3, $4, $5)`, [
      siteId,
      newId(),
      call,
      night(clock ?? ''),
      result,
    ]);
  return occurrence;
}

/** A state and the entry of a round within the night. */
async function alsoRecorded(account: string): Promise<void> {
  const run = newId();
  await query(
    `INSERT INTO state_event (site_id, id, run_id, system_id, state, kind, at, by, note)
     VALUES ($1, $2, $2, $3, 'feeding', 'begun', $4, $5, 'late feed')`,
    [siteId, run, ids.system, night('01:30'), account],
  );
  const round = newId();
  const checks = [{ key: 'a', about: { system: 'tank-1' }, what: 'Floor dry', kind: 'yes-no' }];
  const foreign = [{ key: 'b', about: { system: 'tank-2' }, what: 'Skimmer cup', kind: 'yes-no' }];
  const sheet = JSON.stringify({ places: [{ checks }, { checks: foreign }] });
  await query(
    `INSERT INTO round (site_id, id, name, due_at, begun_at, begun_by, sheet) VALUES ($1, $2, 'Night', $3, $3, $4, $5)`,
    [siteId, round, night('01:00'), account, sheet],
  );
  for (const key of ['a', 'b'])
    await query(
      `INSERT INTO round_entry (site_id, id, round_id, check_key, at, recorded_at, by, not_done)
       VALUES ($1, $2, $3, $4, $5, $5, $6, 'no key')`,
      [siteId, newId(), round, key, night('01:05'), account],
    );
}

beforeAll(async () => {
  const first = { ...smallSystem(), alarms: [alarm({ safeguard: undefined })] };
  const facility = smallFacility(first, smallSystem('tank-2', 'Tank 2'));
  await keep({ ...facility, site: site({ key: 'harbour', zone: 'Europe/London' }) });
  siteId = (await stored('harbour')).siteId;
  ids = {
    alarm: await one('alarm_definition', 'too-warm'),
    system: await one('system', 'tank-1'),
    sensor: (
      await query(`SELECT s.id FROM sensor s JOIN system y ON y.site_id = s.site_id AND y.id = s.system_id
                           WHERE y.key = 'tank-1'`)
    ).rows[0].id,
  };
  const account = await anAccount({ name: 'Robin Example' });
  const minutes = Array.from({ length: 61 }, (_, i) => i * 5);
  const readings = minutes.map((minute) => ({
    sensorId: ids.sensor ?? '',
    at: new Date(night('00:00').getTime() + minute * 60_000),
    // Up from 25 °C at one o'clock by 2 K an hour, and down again from three o'clock on.
    value: 25 + Math.max(0, minute < 180 ? (minute - 60) / 30 : (300 - minute) / 30),
    quality: 'good' as const,
    origin: 'file' as const,
  }));
  await storeReadings(siteId, readings, { receivedAt: night('06:00') });
  const occurrence = await raise(account);
  await alsoRecorded(account);
  place = await opened(LEAD, { alarm: occurrence, began: '2026-01-05T01:00', latest: '2026-01-05T01:30' });
  await logged(LEAD, place, { at: '2026-01-05T02:40', text: 'Heater unplugged.' });
  await logged(LEAD, place, { kind: 'step', step: 'isolate', at: '2026-01-05T02:38' });
});

const clock = (ms: number) => new Date(ms).toISOString().slice(11, 16);

async function timeline(more: object = {}) {
  const page = await getTimeline(LEAD, { ...place, ...more });
  if (!page.ok) throw new Error(page.reason.why);
  return page.value;
}

describe('the timeline of an incident', () => {
  test('merges what every room of the record knows, in the order of time', async () => {
    const { lines } = await timeline();
    const topics = new Set(lines.map(({ topic }) => topic));
    expect([...topics].sort()).toEqual(['alarm', 'call', 'entry', 'mark', 'reading', 'rota', 'round', 'state']);
    const told = lines.filter(({ topic }) => ['alarm', 'call', 'state', 'entry', 'round'].includes(topic));
    expect(told.map(({ what }) => what)).toEqual([
      'Night, Floor dry: not done, because no key',
      'Tank 1: feeding begun. late feed',
      'Alarm “Too warm” raised',
      'To be told of “Too warm” by e-mail, step 1 (on call)',
      'Call of “Too warm”: it failed',
      'Call of “Too warm”: the mail server took it',
      'Alarm “Too warm” acknowledged',
      'What went wrong is isolated',
      'Heater unplugged.',
      'Alarm “Too warm” returned to normal',
    ]);
    expect(told.map(({ atMs }) => atMs)).toEqual(told.map(({ atMs }) => atMs).sort((a, b) => a - b));
    expect(told.find(({ what }) => what.endsWith('acknowledged'))?.who).toEqual({ name: 'Robin Example', role: null });
    expect(told.find(({ what }) => what.endsWith('raised'))?.figures).toEqual([
      { quantity: 'temperature', value: 27.1 },
    ]);
  });

  test('proposes the marks that the record knows, and computes the times between them', async () => {
    const { marks, intervals, contradictions } = await timeline();
    expect(marks.map(({ mark, atMs, entered }) => [mark, clock(atMs), entered])).toEqual([
      ['fault-began', '01:00', true],
      ['first-abnormal', '02:00', false],
      ['first-alarm', '02:10', false],
      ['told', '02:11', false],
      ['acknowledged', '02:20', false],
      ['hands-on', '02:38', false],
      ['normal', '04:00', false],
    ]);
    expect(intervals.map(({ name, leastS, mostS }) => [name, leastS / 60, mostS / 60])).toEqual([
      ['noticed', 40, 70],
      ['told', 41, 71],
      ['acknowledged', 50, 80],
      ['on-scene', 68, 98],
    ]);
    expect(contradictions).toEqual([]);
  });

  test('draws each sensor with its extremes kept, and tells when it was beyond its limit', async () => {
    const { series, limits, lines } = await timeline();
    const values = series[0]?.points.map(({ value }) => value) ?? [];
    expect(series).toHaveLength(1);
    expect([Math.min(...values), Math.max(...values)]).toEqual([25, 29]);
    expect(limits).toEqual([{ sensor: 'display-temperature', name: 'Too warm', above: 26.5, below: undefined }]);
    const beyond = lines.filter(({ topic }) => topic === 'reading').map(({ atMs }) => clock(atMs));
    // 25 + (minute − 60)/30 is 26.5 at minute 105 and more at the next reading; 25 + (300 − minute)/30 is back at 26.5 at 255.
    expect(beyond).toEqual(['01:50', '03:00', '04:15']);
  });

  test('begins as many hours before as are asked for, and ends six hours after the last thing done', async () => {
    const { fromMs, toMs } = await timeline({ hours: 2 });
    expect([fromMs, toMs]).toEqual([night('00:00').getTime() - 3_600_000, night('08:40').getTime()]);
  });

  test('has nothing of another system or site', async () => {
    const { lines } = await timeline();
    expect(lines.some(({ what }) => what.includes('Skimmer cup'))).toBe(false);
    const other = await opened(LEAD, { system: 'tank-2', began: '2026-01-05T01:00' });
    const page = await getTimeline(LEAD, other);
    const topics = page.ok ? page.value.lines.map(({ topic }) => topic) : [];
    expect(topics).not.toContain('alarm');
    expect(page.ok && page.value.series).toEqual([]);
  });
});

test('the report holds the timeline and the findings, and says whether it names anybody', async () => {
  const report = await getReport(LEAD, { ...place, names: 'no' });
  expect(report).toMatchObject({ value: { isNamed: false, actions: [] } });
  if (!report.ok) return;
  expect(report.value.marks).toHaveLength(7);
  expect(report.value.safeguards.map(({ key, isOfSite }) => [key, isOfSite])).toEqual([
    ['battery', true],
    ['outside-watch', true],
  ]);
  const { lines } = await timeline();
  expect(report.value.lines).toEqual(lines);
});
