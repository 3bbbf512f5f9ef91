import { simpleParser } from 'mailparser';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { onNow } from '#core/rota/on-now';
import { addDays } from '#core/time/add-days';
import { instantOf } from '#core/time/zone';
import { openDuties } from '#data/accounts/open-duties';
import { newId } from '#data/new-id';
import { verifyChain } from '#data/records/verify-chain';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { dayIn } from '#server/local-day';
import { answerChange } from '#server/rota/changes/answer-change';
import { askLeave } from '#server/rota/changes/ask-leave';
import { askSwap } from '#server/rota/changes/ask-swap';
import { mailChange } from '#server/rota/changes/mail-change';
import { rotaOf } from '#server/rota/rota-of';
import { changeAnswer, leaveRequest, swapRequest } from '#shape/rota/change';
import { freshDatabase } from '../../_support/database';
import { startMailServer } from '../../_support/mail-server';
import { letIn } from '../../_support/people';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const ZONE = 'Europe/London';
const day = addDays(dayIn(ZONE, now()), 3);
const site = 'harbour';
let siteId = '';
let robin: Who;
let sam: Who;
let lead: Who;

/** Robin is on site by day, Sam on call by night. */
async function onAt(time: string): Promise<string[]> {
  const { facility } = smallFacilityStored;
  const at = instantOf(ZONE, day, time);
  return onNow(await rotaOf(siteId, facility, at), at).map(({ person }) => person);
}
const smallFacilityStored = { facility: smallFacility() };

const leave = (who: Who, more: object = {}) =>
  askLeave(
    who,
    leaveRequest.parse({
      site,
      entry: newId(),
      person: 'robin',
      from: `${day}T00:00`,
      to: `${addDays(day, 1)}T00:00`,
      ...more,
    }),
  );
const swap = (who: Who, more: object = {}) =>
  askSwap(who, swapRequest.parse({ site, entry: newId(), turn: `${day}/day/robin`, takes: 'sam', ...more }));
const newest = async () =>
  (await query('SELECT id FROM rota_change ORDER BY asked_at DESC, id DESC LIMIT 1')).rows[0]?.id;
const comes = async (who: Who, what: string, more: object = {}) =>
  await answerChange(who, changeAnswer.parse({ site, change: await newest(), comes: what, ...more }));
const why = (answer: { ok: boolean; reason?: { why: string } }) => (answer.ok ? 'done' : answer.reason?.why);

beforeAll(async () => {
  await keep(smallFacilityStored.facility);
  ({ siteId } = await stored(site));
  robin = await letIn(query, siteId, site, 'Robin', 'aquarist');
  sam = await letIn(query, siteId, site, 'Sam', 'lead');
  lead = await letIn(query, siteId, site, 'Lee', 'lead');
  for (const [person, { id }] of [
    ['robin', robin],
    ['sam', sam],
  ] as const)
    await query(
      'UPDATE membership SET person_id = (SELECT id FROM person WHERE site_id = $1 AND key = $2) WHERE account_id = $3',
      [siteId, person, id],
    );
});
beforeEach(async () => {
  await query(
    'SET session_replication_role = replica; DELETE FROM rota_change_event; DELETE FROM rota_change; SET session_replication_role = origin',
  );
});

describe('leave', () => {
  test('takes nothing from the rota before somebody else has approved it, and all of it then', async () => {
    expect(why(await leave(robin))).toBe('done');
    expect(await onAt('12:00')).toEqual(['robin']);
    expect(why(await comes(robin, 'approved', { shownMin: 600 }))).toBe('not-allowed');
    expect(why(await comes(lead, 'approved', { shownMin: 600 }))).toBe('done');
    expect(await onAt('12:00')).toEqual([]);
    expect(why(await comes(lead, 'taken-back'))).toBe('done');
    expect(await onAt('12:00')).toEqual(['robin']);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  });

  test('that leaves hours with nobody is approved only by who was told how many', async () => {
    await leave(robin);
    expect(why(await comes(lead, 'approved'))).toBe('conflict');
    expect(why(await comes(lead, 'approved', { shownMin: 500 }))).toBe('conflict');
    expect(why(await comes(lead, 'approved', { shownMin: 600 }))).toBe('done');
  });

  test('of a lead is approved by another while there is one, and by themselves when there is none', async () => {
    expect(why(await leave(sam, { person: 'sam' }))).toBe('done');
    expect(why(await comes(sam, 'approved', { shownMin: 5000 }))).toBe('own-work');
    await query('UPDATE account SET ended_at = now() WHERE id = $1', [lead.id]);
    expect(why(await comes(sam, 'approved', { shownMin: 5000 }))).toBe('done');
    await query('UPDATE account SET ended_at = NULL WHERE id = $1', [lead.id]);
  });

  test('of somebody else is asked for by a lead alone, and its ends are in order and not past', async () => {
    expect(why(await leave(robin, { person: 'sam' }))).toBe('not-allowed');
    expect(why(await leave(lead, { person: 'sam' }))).toBe('done');
    for (const wrong of [
      { to: `${day}T00:00` },
      { from: '2020-01-01T00:00', to: '2020-01-02T00:00' },
      { to: `${addDays(day, 500)}T00:00` },
    ])
      expect(await leave(robin, wrong)).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'to' }] } });
  });

  test('sent twice is asked for once', async () => {
    const entry = newId();
    await leave(robin, { entry });
    await leave(robin, { entry });
    expect((await query('SELECT count(*)::int AS n FROM rota_change')).rows[0].n).toBe(1);
  });
});

describe('a swap', () => {
  test('is agreed by who takes the turn, then approved by a lead who has no part in it', async () => {
    expect(why(await swap(robin, { back: `${day}/night/sam` }))).toBe('done');
    expect(why(await comes(lead, 'approved'))).toBe('conflict');
    expect(why(await comes(robin, 'agreed'))).toBe('not-allowed');
    expect(why(await comes(sam, 'agreed'))).toBe('done');
    expect(why(await comes(sam, 'approved'))).toBe('own-work');
    expect(await onAt('12:00')).toEqual(['robin']);
    expect(why(await comes(lead, 'approved'))).toBe('done');
    expect([await onAt('12:00'), await onAt('20:00')]).toEqual([['sam'], ['robin']]);
    const kinds = (await query(`SELECT kind FROM record ORDER BY seq DESC LIMIT 3`)).rows.map(({ kind }) => kind);
    expect(kinds).toEqual(['duty-change-approved', 'duty-change-agreed', 'swap-asked']);
  });

  test('of a turn that went to somebody else meanwhile is not approved', async () => {
    await swap(robin);
    await comes(sam, 'agreed');
    const first = await newest();
    await swap(robin);
    await comes(sam, 'agreed');
    expect(why(await comes(lead, 'approved'))).toBe('done');
    expect(why(await answerChange(lead, changeAnswer.parse({ site, change: first, comes: 'approved' })))).toBe(
      'conflict',
    );
  });

  test('names a turn to come that its giver has, and somebody else', async () => {
    for (const wrong of [
      { turn: `${day}/night/robin` },
      { turn: '2020-01-01/day/robin' },
      { takes: 'robin' },
      { back: `${day}/day/robin` },
    ])
      expect(why(await swap(robin, wrong))).toBe('invalid');
    expect(why(await swap(robin, { takes: 'nobody-here' }))).toBe('not-found');
    expect(why(await swap(robin, { turn: `${day}/night/sam`, takes: 'robin' }))).toBe('not-allowed');
  });

  test('that was withdrawn or declined comes to nothing more', async () => {
    await swap(robin);
    expect(why(await comes(robin, 'withdrawn'))).toBe('done');
    expect(why(await comes(sam, 'agreed'))).toBe('conflict');
    await swap(robin);
    expect(why(await comes(sam, 'declined'))).toBe('done');
    expect(why(await comes(lead, 'approved'))).toBe('conflict');
  });

  test('of a part of a turn gives that part alone, and is a part that its giver has', async () => {
    for (const [from, to] of [
      [`${day}T13:00`, `${day}T13:00`],
      [`${day}T01:00`, `${day}T13:00`],
    ])
      expect(why(await swap(robin, { from, to }))).toBe('invalid');
    expect(
      swapRequest.safeParse({ site, entry: newId(), turn: `${day}/day/robin`, takes: 'sam', from: `${day}T13:00` })
        .success,
    ).toBe(false);
    expect(why(await swap(robin, { from: `${day}T11:00`, to: `${day}T13:00` }))).toBe('done');
    await comes(sam, 'agreed');
    expect(why(await comes(lead, 'approved'))).toBe('done');
    expect([await onAt('10:59'), await onAt('11:00'), await onAt('13:00')]).toEqual([['robin'], ['sam'], ['robin']]);
    const taken = (await openDuties(siteId, dayIn(ZONE, now()))).get(sam.id) ?? [];
    expect(taken).toContainEqual({ kind: 'swap-taken', shift: 'day', date: day });
    expect(why(await comes(lead, 'taken-back'))).toBe('done');
    expect((await openDuties(siteId, dayIn(ZONE, now()))).get(sam.id)).not.toContainEqual(
      expect.objectContaining({ kind: 'swap-taken' }),
    );
  });
});

describe('a mail', () => {
  const mails = async () =>
    (
      await query(
        `SELECT j.payload->>'account' AS account, j.payload->>'news' AS news FROM graphile_worker._private_jobs j
           JOIN graphile_worker._private_tasks t ON t.id = j.task_id WHERE t.identifier = 'duty-mail' ORDER BY j.id`,
      )
    ).rows.map(({ account, news }) => [[robin, sam, lead].find(({ id }) => id === account)?.name, news]);
  beforeEach(async () => {
    await query('SELECT graphile_worker.complete_jobs(array(SELECT id FROM graphile_worker._private_jobs))');
  });

  test('tells those who have to answer that leave waits, and who asked what came of it', async () => {
    await leave(robin);
    expect((await mails()).sort()).toEqual([
      ['Lee', 'waits'],
      ['Sam', 'waits'],
    ]);
    await comes(lead, 'refused');
    expect((await mails()).slice(2)).toEqual([['Robin', 'refused']]);
  });

  test('of a swap goes to who takes it, then to a lead with no part in it, then to both', async () => {
    await swap(robin);
    expect(await mails()).toEqual([['Sam', 'waits']]);
    await comes(sam, 'agreed');
    expect((await mails()).slice(1)).toEqual([
      ['Robin', 'agreed'],
      ['Lee', 'waits'],
    ]);
    await comes(lead, 'approved');
    expect((await mails()).slice(3).sort()).toEqual([
      ['Robin', 'approved'],
      ['Sam', 'approved'],
    ]);
  });

  test('says whose turn it is and where to answer, not why; and is not sent for what waits no longer', async () => {
    const server = await startMailServer();
    process.env.HOLDFAST_MAIL_URL = server.url;
    await leave(robin, { why: 'a thing of my own' });
    const news = { site: siteId, change: await newest(), account: lead.id };
    await mailChange({ ...news, news: 'waits' });
    await comes(robin, 'withdrawn');
    await mailChange({ ...news, news: 'waits' });
    await mailChange({ ...news, news: 'withdrawn' });
    await server.close();
    delete process.env.HOLDFAST_MAIL_URL;
    expect(server.taken).toHaveLength(2);
    const [waits, came] = await Promise.all(server.taken.map(async ({ raw }) => (await simpleParser(raw)).text ?? ''));
    expect(waits).toContain('Leave of Robin');
    expect(waits).toContain('/sites/harbour/rota/changes');
    expect(waits).not.toContain('a thing of my own');
    expect(came).toContain('withdrawn');
  });
});
