import { beforeAll, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { verifyChain } from '#data/records/verify-chain';
import { now } from '#server/clock';
import { getIncident } from '#server/incidents/get-incident';
import { listIncidents } from '#server/incidents/list-incidents';
import { logEntry } from '#server/incidents/log-entry';
import { openIncident } from '#server/incidents/open-incident';
import { withdrawEntry } from '#server/incidents/withdraw-entry';
import { openRequest } from '#shape/incidents/place';
import { site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { aLine, logged, opened, somebody } from './opened-incident';

const { query } = freshDatabase();

const AQUARIST = somebody('aquarist');
const OTHER = somebody('aquarist');
const LEAD = somebody('lead');
let siteId = '';
let sensorId = '';

beforeAll(async () => {
  await keep({ ...smallFacility(), site: site({ key: 'harbour' }) });
  await keep({ ...smallFacility(), site: site({ key: 'elsewhere' }) });
  siteId = (await stored('harbour')).siteId;
  const sensors = await query(`SELECT id FROM sensor WHERE site_id = $1 AND key = 'display-temperature'`, [siteId]);
  sensorId = sensors.rows[0].id;
});

const story = async (number: number) => {
  const page = await getIncident(AQUARIST, { site: 'harbour', number });
  if (!page.ok) throw new Error(page.reason.why);
  return page.value.story;
};

describe('an incident', () => {
  test('has the next number of its site, without a gap, though a dozen are opened at once', async () => {
    const all = await Promise.all(Array.from({ length: 12 }, () => opened(AQUARIST)));
    const numbers = all.map(({ number }) => number).sort((a, b) => a - b);
    const first = numbers[0] ?? 0;
    expect(numbers).toEqual(Array.from({ length: 12 }, (_, i) => first + i));
    const { rows } = await query('SELECT max(number) AS last, count(*)::int AS all FROM incident WHERE site_id = $1', [
      siteId,
    ]);
    expect(rows[0]).toEqual({ last: rows[0].all, all: rows[0].all });
  });

  test('that a slow line sends twice is opened once', async () => {
    const request = openRequest.parse({ site: 'harbour', entry: newId(), title: 'Twice', began: '2026-01-02T03:04' });
    const [one, two] = await Promise.all([openIncident(AQUARIST, request), openIncident(AQUARIST, request)]);
    expect(one).toEqual(two);
    expect(one.ok && (await story(one.value.number))).toHaveLength(1);
  });

  test('begins with when the fault began, in the zone of the site, and not after now', async () => {
    const { number } = await opened(AQUARIST, { began: '2026-01-02T03:04', latest: '2026-01-02T05:00' });
    const [line] = await story(number);
    const { zone } = (await stored('harbour')).facility.site;
    const shown = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
    expect(shown.format(new Date(line?.entry.atMs ?? 0))).toBe('2026-01-02 03:04');
    const ahead = openRequest.parse({ site: 'harbour', entry: newId(), title: 'x', began: '2099-01-01T00:00' });
    expect(await openIncident(AQUARIST, ahead)).toMatchObject({ reason: { faults: [{ path: 'began' }] } });
    const old = openRequest.parse({ site: 'harbour', entry: newId(), title: 'x', began: '0850-01-01T00:00' });
    expect(await openIncident(AQUARIST, old)).toMatchObject({ reason: { faults: [{ path: 'began' }] } });
    const turned = { began: '2026-01-02T03:04', latest: '2026-01-02T03:00' };
    const wrong = openRequest.parse({ site: 'harbour', entry: newId(), title: 'x', ...turned });
    expect(await openIncident(AQUARIST, wrong)).toMatchObject({ reason: { faults: [{ path: 'latest' }] } });
  });

  test('of another site is not found by its number, and neither are its entries', async () => {
    const { number } = await opened(AQUARIST);
    await logged(AQUARIST, { site: 'harbour', number });
    const stranger = { ...AQUARIST, at: { elsewhere: 'manager' as const } };
    const none = { reason: { why: 'not-found' } };
    expect(await getIncident(stranger, { site: 'harbour', number })).toMatchObject(none);
    expect(await getIncident(stranger, { site: 'elsewhere', number })).toMatchObject(none);
    expect(await logEntry(stranger, aLine({ site: 'elsewhere', number }))).toMatchObject(none);
    expect(await listIncidents(stranger, { site: 'elsewhere' })).toMatchObject({ value: { lines: [] } });
    const foreign = openRequest.parse({ site: 'harbour', entry: newId(), title: 'x', alarm: newId() });
    expect(await openIncident(AQUARIST, foreign)).toMatchObject({ reason: { why: 'not-found', what: 'alarm' } });
  });
});

describe('what is written in it', () => {
  test('stands in the sealed record by its digest, without its text', async () => {
    const place = await opened(AQUARIST);
    const id = await logged(AQUARIST, place, { text: 'A word that nobody else writes: quoll.' });
    const { rows } = await query(`SELECT kind, body FROM record WHERE site_id = $1 ORDER BY seq DESC LIMIT 2`, [
      siteId,
    ]);
    expect(rows).toMatchObject([
      { kind: 'incident-written', body: { entry: id, incident: place.number, what: 'log', by: AQUARIST.id } },
      { kind: 'incident-opened', body: { incident: place.number, title: 'Tank too warm' } },
    ]);
    expect(rows[0].body.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(JSON.stringify(rows)).not.toContain('quoll');
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  });

  test('is kept once though it is sent twice, and refused for another incident', async () => {
    const [place, other] = [await opened(AQUARIST), await opened(AQUARIST)];
    const line = aLine(place);
    await Promise.all([logEntry(AQUARIST, line), logEntry(AQUARIST, line)]);
    expect(await story(place.number)).toHaveLength(1);
    expect(await logEntry(AQUARIST, { ...line, number: other.number })).toMatchObject({ reason: { why: 'conflict' } });
  });

  test('is corrected once, with a reason; of two who correct at once the slower is told', async () => {
    const place = await opened(AQUARIST);
    const wrong = await logged(AQUARIST, place, { text: 'Pump 1 stands.' });
    const fix = { supersedes: wrong, text: 'Pump 2 stands.' };
    expect(await logEntry(AQUARIST, aLine(place, fix))).toMatchObject({ reason: { faults: [{ path: 'reason' }] } });
    const both = await Promise.all(
      [AQUARIST, OTHER].map((who) => logEntry(who, aLine(place, { ...fix, reason: 'misread' }))),
    );
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect(both.find(({ ok }) => !ok)).toMatchObject({ reason: { why: 'conflict' } });
    const lines = await story(place.number);
    expect(lines.map(({ isSuperseded }) => isSuperseded)).toEqual([true, false]);
    expect(lines[1]?.entry).toMatchObject({ supersedes: wrong, reason: 'misread', atMs: lines[0]?.entry.atMs });
  });

  test('is taken back by whoever wrote it or by those who investigate, and stays', async () => {
    const place = await opened(AQUARIST);
    const entry = await logged(AQUARIST, place);
    const back = () => ({ ...place, entry: newId(), supersedes: entry, reason: 'another tank' });
    expect(await withdrawEntry(OTHER, back())).toMatchObject({ reason: { why: 'not-own-work' } });
    expect(await withdrawEntry(LEAD, back())).toMatchObject({ ok: true });
    expect(await withdrawEntry(AQUARIST, back())).toMatchObject({ reason: { why: 'conflict' } });
    expect((await story(place.number)).map(({ entry: one }) => one.body === null)).toEqual([false, true]);
  });

  test('is never changed or removed, whoever asks the database', async () => {
    for (const sql of ['UPDATE incident_entry SET at = now()', 'DELETE FROM incident_entry', 'TRUNCATE incident_entry'])
      await expect(query(sql)).rejects.toThrow(/added/);
  });
});

describe('what a meter showed', () => {
  const meter = (place: object, more: object) =>
    aLine(place as { site: string; number: number }, { kind: 'measurement', units: 'metric', ...more });
  const readings = async () =>
    (await query('SELECT value, quality, origin, came_by FROM reading WHERE sensor_id = $1 ORDER BY "at"', [sensorId]))
      .rows;

  test('becomes a reading by hand of its sensor, judged as every reading is', async () => {
    const place = await opened(AQUARIST);
    const line = meter(place, { [`figure.temperature.${sensorId}`]: '31.4', 'figure.oxygen.-': '3.1' });
    expect(await logEntry(AQUARIST, line)).toMatchObject({ ok: true });
    await logEntry(AQUARIST, line);
    expect(await readings()).toEqual([{ value: 31.4, quality: 0, origin: 3, came_by: line.entry }]);
  });

  test('of a sensor that is not there, or that measures something else, is refused as a whole', async () => {
    const place = await opened(AQUARIST);
    const before = (await readings()).length;
    for (const field of [`figure.ph.${sensorId}`, `figure.temperature.${newId()}`]) {
      const refused = await logEntry(AQUARIST, meter(place, { [field]: '8' }));
      expect(refused).toMatchObject({ reason: { why: 'invalid', faults: [{ path: field }] } });
    }
    expect(await story(place.number)).toEqual([]);
    expect(await readings()).toHaveLength(before);
  });
});

test('the list says how far each incident is, and nobody below an aquarist reads it', async () => {
  const { number } = await opened(AQUARIST, { system: '', title: 'Mains gone' });
  const list = await listIncidents(AQUARIST, { site: 'harbour' });
  const line = list.ok ? list.value.lines[0] : undefined;
  expect(line).toMatchObject({ number, title: 'Mains gone', system: null, state: 'open', openActions: 0 });
  expect(line?.openedMs).toBeLessThanOrEqual(now().getTime());
  expect(await listIncidents(somebody('viewer'), { site: 'harbour' })).toMatchObject({
    reason: { why: 'not-allowed' },
  });
});
