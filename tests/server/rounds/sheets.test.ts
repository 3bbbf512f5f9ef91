import { beforeAll, describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import { isTested } from '#core/plans/credit';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { wallClock } from '#core/time/zone';
import { findSite } from '#data/sites';
import { now } from '#server/clock';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { reviewSite } from '#server/reviews/review-site';
import { storedSite } from '#server/reviews/stored-site';
import { wakeDue } from '#server/reviews/wake-due';
import { beginRound } from '#server/rounds/begin-round';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { signRound } from '#server/rounds/sign-round';
import { roundsStanding } from '#server/rounds/rounds-standing';
import { getSheet } from '#server/rounds/sheets/get-sheet';
import { listSheets } from '#server/rounds/sheets/list-sheets';
import { planDues } from '#server/rounds/sheets/plan-dues';
import { putSheetsInForce } from '#server/rounds/sheets/put-sheets-in-force';
import { retireSheet } from '#server/rounds/sheets/retire-sheet';
import { startSheets } from '#server/rounds/sheets/start-sheets';
import { writeSheet } from '#server/rounds/sheets/write-sheet';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
const ZONE = 'Europe/London';
const MINUTE_MS = 60_000;
let lead: Who = LOCAL_PERSON;
let siteId = '';

beforeAll(async () => {
  await keep(siteWithRoundDue().facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  lead = await letIn(query, siteId, SITE, 'Lee', 'lead');
});

/** A sheet that is due a few minutes after it came into force, each day. */
function soon(more: Partial<RoundSheet> = {}): RoundSheet {
  const { date, time } = wallClock(ZONE, now().getTime() + 5 * MINUTE_MS);
  return {
    key: 'floor',
    name: 'Floor and weir',
    schedule: { rule: 'FREQ=DAILY', from: date, times: [{ at: time }] },
    lines: [
      { kind: 'described', key: 'tank-1/system/floor', what: 'Floor dry, drain clear' },
      {
        kind: 'choice',
        key: 'weir',
        what: 'Weir',
        system: 'tank-1',
        options: [
          { key: 'clear', name: 'clear', usual: true },
          { key: 'slow', name: 'slow', usual: false },
        ],
      },
    ],
    ...more,
  };
}

/** Every due time that is kept of living sheets, up to an instant. */
async function keptDues(to: Date): Promise<{ sheet: string; dueAt: number }[]> {
  const { rows } = await query(
    `SELECT s.key AS sheet, (extract(epoch FROM d.due_at) * 1000)::float8 AS "dueAt", d.late_at, d.closes_at, d.version
       FROM sheet_due d JOIN round_sheet s ON s.id = d.sheet_id AND s.retired_at IS NULL
      WHERE d.due_at < '${to.toISOString()}' ORDER BY d.due_at, s.ordinal`,
  );
  return rows;
}

const inForce = async (sheet: RoundSheet, basedOn?: number) =>
  await writeSheet(lead, { site: SITE, body: sheet, put: 'yes', ...(basedOn !== undefined && { basedOn }) });
const page = async () => {
  const read = await listSheets(lead, { site: SITE });
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  return read.value;
};

describe('a round sheet', () => {
  test('is begun from what is described, as drafts that nobody walks, and left as it is when it is asked for again', async () => {
    expect(await startSheets(lead, { site: SITE, system: 'tank-1' })).toMatchObject({ ok: true });
    const { sheets, drafts } = await page();
    expect(sheets).toEqual([]);
    expect(drafts.map(({ key }) => key)).toContain('tank-1-plant');
    expect(await startSheets(lead, { site: SITE, system: 'tank-1' })).toMatchObject({ reason: { why: 'conflict' } });
    expect((await stored(SITE)).facility.sheets).toBeUndefined();
  });

  test('comes into force as a version that nobody can change, is in the facility file, and due for sixty days', async () => {
    const keys = (await page()).drafts.map(({ key }) => key);
    expect(await putSheetsInForce(lead, { site: SITE, sheets: keys, why: 'to begin with' })).toMatchObject({
      ok: true,
    });
    const { sheets, drafts, ahead } = await page();
    expect(drafts).toEqual([]);
    expect(sheets.map(({ version }) => version)).toEqual(keys.map(() => 1));
    expect(new Set((await stored(SITE)).facility.sheets?.map(({ key }) => key))).toEqual(new Set(keys));
    const shifts = ahead.filter(({ sheet }) => sheet === 'tank-1-plant');
    expect(shifts.length).toBeGreaterThanOrEqual(119);
    await expect(query("UPDATE round_sheet_version SET reason = 'other'")).rejects.toThrow();
    const { rows } = await query("SELECT body FROM record WHERE kind = 'sheet-in-force'");
    expect(rows).toHaveLength(keys.length);
    expect(JSON.stringify(rows)).not.toContain('Lee');
  });

  test('is walked in the version it was begun with, though it is changed meanwhile, and nothing entered is lost', async () => {
    const sheet = soon();
    expect(await inForce(sheet)).toMatchObject({ ok: true });
    const due = (await page()).sheets.find(({ key }) => key === 'floor');
    expect(due?.open?.standing).toBe('due');
    const begun = await beginRound(lead, { site: SITE, sheet: 'floor', due: due?.open?.dueAt ?? '' });
    if (!begun.ok) throw new Error(JSON.stringify(begun.reason));
    const round = { site: SITE, round: begun.value.round };
    expect(await enterRest(lead, { ...round, place: 1 })).toMatchObject({ ok: true });
    expect(await inForce({ ...sheet, lines: sheet.lines.slice(1) }, 1)).toMatchObject({ ok: true });
    const walked = await getRound(lead, round);
    const lines = walked.ok ? walked.value.places.flatMap((place) => place.lines) : [];
    expect(lines.map(({ check }) => check.what)).toEqual(['Floor dry, drain clear', 'Weir']);
    expect(lines[0]?.entries).toHaveLength(1);
    // Somebody else who begins it walks the same one.
    const again = await beginRound(lead, { site: SITE, sheet: 'floor', due: due?.open?.dueAt ?? '' });
    expect(again).toMatchObject({ value: { round: round.round } });
    expect((await page()).sheets.find(({ key }) => key === 'floor')).toMatchObject({ version: 2, lines: 1 });
  });

  test('is signed by nobody below the role that it names, and by whoever has it', async () => {
    const sheet = soon({
      key: 'ozone',
      name: 'Ozone',
      signedBy: 'lead',
      lines: [soon().lines[0]].flat() as RoundSheet['lines'],
    });
    expect(await inForce(sheet)).toMatchObject({ ok: true });
    const due = (await page()).sheets.find(({ key }) => key === 'ozone');
    const begun = await beginRound(lead, { site: SITE, sheet: 'ozone', due: due?.open?.dueAt ?? '' });
    if (!begun.ok) throw new Error(JSON.stringify(begun.reason));
    const round = { site: SITE, round: begun.value.round };
    const aquarist = await letIn(query, siteId, SITE, 'Ash', 'aquarist');
    expect(await enterRest(aquarist, { ...round, place: 1 })).toMatchObject({ ok: true });
    expect(await signRound(aquarist, round)).toMatchObject({ reason: { why: 'conflict' } });
    expect(await signRound(lead, round)).toMatchObject({ ok: true });
  });

  test('that somebody else changed meanwhile is not written over', async () => {
    expect(await inForce(soon({ name: 'Mine' }), 1)).toMatchObject({ reason: { why: 'conflict' } });
    const read = await getSheet(lead, { site: SITE, sheet: 'floor' });
    expect(read.ok && read.value.versions.map(({ version, by }) => [version, by])).toEqual([
      [2, 'Lee'],
      [1, 'Lee'],
    ]);
  });

  test('names the field of a line that is looked at where nothing is', async () => {
    const lines = [{ kind: 'text' as const, key: 'note', what: 'Note', system: 'tank-9' }];
    expect(await inForce(soon({ lines }), 2)).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'lines.0.system' }] },
    });
  });
});

describe('the worker', () => {
  test('keeps the due times of sixty days, the same however often it runs, and those that have come as they were', async () => {
    const count = async () => (await query('SELECT count(*)::int AS many FROM sheet_due')).rows[0].many;
    await planDues(siteId, now());
    const first = await count();
    expect(first).toBeGreaterThan(120);
    await planDues(siteId, now());
    expect(await count()).toBe(first);
    const far = new Date(now().getTime() + 70 * 86_400_000);
    const kept = await keptDues(far);
    const { ahead } = await page();
    expect(kept.filter(({ dueAt }) => dueAt > now().getTime()).length).toBeGreaterThanOrEqual(ahead.length);
    // A schedule that is changed leaves what has come by then.
    const later = new Date(now().getTime() + 3 * 86_400_000);
    const past = kept.filter(({ sheet, dueAt }) => sheet === 'floor' && dueAt <= later.getTime());
    const none: RoundSheet = {
      ...soon(),
      schedule: { rule: 'FREQ=DAILY;INTERVAL=400', from: '2020-01-01', times: [{ at: '03:00' }] },
    };
    expect(await inForce(none, 2)).toMatchObject({ ok: true });
    await planDues(siteId, later);
    const left = (await keptDues(far)).filter(({ sheet }) => sheet === 'floor');
    expect(left.filter(({ dueAt }) => dueAt <= later.getTime())).toEqual(past);
    expect(left.filter(({ dueAt }) => dueAt > later.getTime()).length).toBeLessThan(2);
  });

  test('a sheet that is retired is due no more, and its versions stay', async () => {
    expect(await retireSheet(lead, { site: SITE, sheet: 'floor', why: 'done on another' })).toMatchObject({ ok: true });
    await planDues(siteId, now());
    const { rows } = await query(
      "SELECT count(*)::int AS many FROM sheet_due d JOIN round_sheet s ON s.id = d.sheet_id WHERE s.key = 'floor' AND d.due_at > now()",
    );
    expect(rows[0].many).toBe(0);
    expect(
      (
        await query(
          "SELECT version FROM round_sheet_version v JOIN round_sheet s ON s.id = v.sheet_id WHERE s.key = 'floor'",
        )
      ).rows,
    ).toHaveLength(3);
    const { facility }: { facility: Facility } = await stored(SITE);
    expect(facility.sheets?.some(({ key }) => key === 'floor')).toBe(false);
  });
});

describe('a test of a safeguard that was missed on a sheet', () => {
  const tested = async () => {
    const entry = await findSite(SITE);
    const site = entry && (await storedSite(entry, wallClock(ZONE, now().getTime()).date));
    const cutOut = site?.reviewed.systems[0]?.safeguards.find(({ key }) => key === 'cut-out');
    if (!site || !cutOut) throw new Error('no safeguard');
    const today = wallClock(ZONE, now().getTime()).date;
    return { isTested: isTested(cutOut, today), hash: site.hashes.get('tank-1') };
  };

  test('leaves it untested at once, has the reviews looked at again, and counts as missed at its system', async () => {
    const { facility } = await stored(SITE);
    const ago = (days: number) => new Date(now().getTime() - days * 86_400_000);
    const day = (days: number) => wallClock(ZONE, ago(days).getTime()).date;
    const systems = facility.systems.map((system) => ({
      ...system,
      safeguards: system.safeguards.map((one) => ({ ...one, tests: [{ on: day(20), result: 'worked' as const }] })),
    }));
    await keep({ ...facility, systems });
    const before = await tested();
    expect(before.isTested).toBe(true);
    await reviewSite(siteId);
    await query(
      `INSERT INTO sheet_due SELECT v.site_id, v.sheet_id, $1, $2, v.version, $3, $4, $5
         FROM round_sheet_version v JOIN round_sheet s ON s.site_id = v.site_id AND s.id = v.sheet_id
        WHERE v.version = 1 AND s.retired_at IS NULL AND s.detail->>'lines' LIKE '%safeguard/cut-out%'`,
      [ago(9), day(9), ago(10), ago(8), now()],
    );
    const after = await tested();
    expect(after.isTested).toBe(false);
    expect(after.hash).not.toBe(before.hash);
    await wakeDue(new Date(now().getTime() + 1000));
    expect((await query('SELECT state FROM review_run')).rows).toEqual([{ state: 'waiting' }]);
    const site = await findSite(SITE);
    const standing = site && (await roundsStanding(site, (await stored(SITE)).facility, now()));
    expect(standing?.bySystem.get('tank-1')?.missed).toBeGreaterThan(0);
  });
});
