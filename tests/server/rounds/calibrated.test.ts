import { expect, test } from 'vitest';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import { newId } from '#data/new-id';
import { listEntries } from '#data/rounds/entries';
import { findSite } from '#data/sites';
import { now } from '#server/clock';
import { LOCAL_PERSON } from '#server/gate/who';
import { getHandover } from '#server/handover/get-handover';
import { storedSite } from '#server/reviews/stored-site';
import { beginRound } from '#server/rounds/begin-round';
import { enter } from '#server/rounds/enter';
import { getRound } from '#server/rounds/get-round';
import { listSheets } from '#server/rounds/sheets/list-sheets';
import { writeSheet } from '#server/rounds/sheets/write-sheet';
import { signRound } from '#server/rounds/sign-round';
import { enterRequest } from '#shape/rounds/requests';
import { sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
const LINE = 'tank-1/sensor/display-temperature/calibration';
const today = () => wallClock('Europe/London', now().getTime()).date;

/** Until when the calibration counts, as the review sees it, and what that makes of the inputs of the review. */
async function judged(): Promise<{ due: string | undefined; hash: string | undefined }> {
  const site = await findSite(SITE);
  const found = site && (await storedSite(site, today()));
  const due = found?.reviewed.systems[0]?.sensors[0]?.calibrationDue;
  return { due, hash: found?.hashes.get('tank-1') };
}

const overdue = async () => {
  const page = await getHandover(LOCAL_PERSON, { site: SITE });
  return page.ok ? page.value.shown.overdue.map(({ what }) => what) : null;
};
const calibrate = (round: string, more: object) =>
  enter(
    LOCAL_PERSON,
    enterRequest.parse({
      ...{ site: SITE, round, check: LINE, entry: newId(), sure: 'yes' },
      ...{ 'figure.standard-1': '25', 'figure.before-1': '25.3', 'figure.after-1': '25' },
      ...more,
    }),
  );

test('a calibration on a signed round moves the day it is due: for the review, the handover and the next sheet', async () => {
  const { facility } = siteWithRoundDue();
  const due = addDays(today(), -20);
  const probe = sensor({ key: 'display-temperature', name: 'Warmth', tank: 'display', calibrationDue: due });
  await keep({ ...facility, systems: facility.systems.map((system) => ({ ...system, sensors: [probe] })) });
  const before = await judged();
  expect(before.due).toBe(due);
  expect(await overdue()).toContain('Calibration of Warmth');

  const { date, time } = wallClock('Europe/London', now().getTime() + 300_000);
  const sheet: RoundSheet = {
    ...{ key: 'probes', name: 'Probes', lines: [{ kind: 'described', key: LINE }] },
    schedule: { rule: 'FREQ=DAILY', from: date, times: [{ at: time }] },
  };
  expect(await writeSheet(LOCAL_PERSON, { site: SITE, body: sheet, put: 'yes' })).toMatchObject({ ok: true });
  const list = await listSheets(LOCAL_PERSON, { site: SITE });
  const at = list.ok ? (list.value.sheets[0]?.open?.dueAt ?? '') : '';
  const begun = await beginRound(LOCAL_PERSON, { site: SITE, sheet: 'probes', due: at });
  const round = begun.ok ? begun.value.round : '';
  const page = await getRound(LOCAL_PERSON, { site: SITE, round });
  expect(page.ok && page.value.places[0]?.lines[0]?.check).toMatchObject({ kind: 'calibration', due });

  expect(await calibrate(round, { seen: 'worked' })).toMatchObject({ value: { asked: null } });
  expect((await judged()).due).toBe(due);
  const jobs = async () =>
    Number((await query("SELECT count(*) FROM review_run WHERE state = 'waiting'")).rows[0].count);
  await query("UPDATE review_run SET state = 'done'");
  expect(await signRound(LOCAL_PERSON, { site: SITE, round })).toMatchObject({ ok: true });
  expect(await jobs()).toBe(1);
  const after = await judged();
  expect(after.due).toBe(addDays(today(), 91));
  expect(after.hash).not.toBe(before.hash);
  expect(await overdue()).not.toContain('Calibration of Warmth');

  const [kept] = await listEntries((await stored(SITE)).siteId, round);
  const said = { seen: 'failed', note: 'It drifts.', supersedes: kept?.id, reason: 'Read again.' };
  expect(await calibrate(round, said)).toMatchObject({ ok: true });
  expect((await judged()).due).toBe(due);
  expect(await overdue()).toContain('Calibration of Warmth');
});
