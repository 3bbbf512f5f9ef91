import { reviewSystem } from '#core/review/review-system';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import type { Who } from '#server/gate/who';
import { getPlan } from '#server/plans/get-plan';
import { listPlans } from '#server/plans/list-plans';
import { putPlanInForce } from '#server/plans/put-plan-in-force';
import { sendBackPlan, withdrawPlan } from '#server/plans/return-plan';
import { submitPlan } from '#server/plans/submit-plan';
import { writePlan } from '#server/plans/write-plan';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { planned } from './planned';

const { query } = freshDatabase();
const SITE = 'harbour';
const PIECE = { site: SITE, system: 'tank-1', equipment: 'heater-1' };
const NOBODY: Who = { id: 'nobody', name: 'Nobody', everywhere: null, at: {} };

let siteId: string;
let wren: Who;
let robin: Who;
let avery: Who;

const base = smallFacility();
const [heater] = base.systems[0]?.equipment ?? [];
const write = (who: Who, plan: unknown, latest: number) =>
  writePlan(who, { ...PIECE, plan: JSON.stringify(plan), reason: 'the band was too wide', latest });
const page = async (who: Who) => {
  const answer = await getPlan(who, PIECE);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer.value;
};
const statuses = async () => (await page(wren)).versions.map(({ version, status }) => `${version} ${status}`);
const kinds = async () =>
  (await query(`SELECT kind, body FROM record WHERE kind LIKE 'plan-%' ORDER BY seq`)).rows.map(({ kind }) => kind);

beforeAll(async () => {
  await keep(base);
  ({ siteId } = await stored(SITE));
  wren = await letIn(query, siteId, SITE, 'Wren', 'lead');
  robin = await letIn(query, siteId, SITE, 'Robin', 'lead');
  avery = await letIn(query, siteId, SITE, 'Avery', 'aquarist');
});

/** The plan of the heater as it was imported, and nothing else of it. */
beforeEach(async () => {
  await query(`SET session_replication_role = replica;
    DELETE FROM plan_status WHERE version > 1 OR status = 'superseded'; DELETE FROM plan_version WHERE version > 1;
    UPDATE membership SET ended_at = NULL`);
});

describe('a plan', () => {
  test('is written, submitted by its author and put into force by somebody else, and the review is asked for anew', async () => {
    const { revision } = await stored(SITE);
    expect(await write(wren, planned(24.8), 1)).toEqual({
      ok: true,
      value: { version: 2, ...PIECE },
    });
    expect((await stored(SITE)).revision, 'a draft changes nothing yet').toBe(revision);
    await submitPlan(wren, { ...PIECE, version: 2 });
    expect(await putPlanInForce(wren, { ...PIECE, version: 2, inForce: 1 })).toEqual({
      ok: false,
      reason: { why: 'own-work' },
    });
    await query('DELETE FROM graphile_worker._private_jobs');
    expect((await putPlanInForce(robin, { ...PIECE, version: 2, inForce: 1 })).ok).toBe(true);
    const after = await stored(SITE);
    expect(after.facility.systems[0]?.equipment[0]?.plan).toEqual(planned(24.8));
    expect(after.revision).toBe(revision + 1);
    expect(await statuses()).toEqual(['2 in-force', '1 superseded']);
    expect((await query('SELECT task_identifier AS task FROM graphile_worker.jobs')).rows).toEqual([
      { task: 'review-site' },
    ]);
    expect((await kinds()).slice(-3)).toEqual(['plan-drafted', 'plan-submitted', 'plan-in-force']);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  });

  test('is shown with who did what and when, by name; the record holds no name', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    await putPlanInForce(robin, { ...PIECE, version: 2, inForce: 1 });
    const [second, first] = (await page(avery)).versions;
    expect(second).toMatchObject({
      writtenBy: 'Wren',
      reason: 'the band was too wide',
      isOwn: false,
      plan: planned(24.8),
    });
    expect(second?.life.map(({ status, by }) => `${status} by ${by}`)).toEqual([
      'draft by Wren',
      'submitted by Wren',
      'in-force by Robin',
    ]);
    expect(first).toMatchObject({ writtenBy: 'the machine itself', reason: 'import', status: 'superseded' });
    const { rows } = await query(`SELECT string_agg(body::text, ' ') AS said FROM record WHERE kind LIKE 'plan-%'`);
    expect(rows[0].said).not.toMatch(/Wren|Robin/);
    expect(rows[0].said).toContain(wren.id);
  });

  test('written anew by its author takes the place of the draft before; the drafts of others stay', async () => {
    await write(wren, planned(24.8), 1);
    await write(robin, planned(24.2), 2);
    await write(wren, planned(24.9), 3);
    expect(await statuses()).toEqual(['4 draft', '3 draft', '2 withdrawn', '1 in-force']);
  });

  test('is written by a lead and by nobody less; a site one may not see is not found', async () => {
    expect(await write(avery, planned(24.8), 1)).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await write(NOBODY, planned(24.8), 1)).toEqual({ ok: false, reason: { why: 'not-found', what: 'site' } });
    const unknown = await writePlan(wren, { ...PIECE, equipment: 'pump', plan: '{}', reason: 'x', latest: 1 });
    expect(unknown).toMatchObject({ ok: false, reason: { why: 'invalid' } });
    expect(await getPlan(wren, { ...PIECE, equipment: 'pump' })).toEqual({
      ok: false,
      reason: { why: 'not-found', what: 'piece of equipment' },
    });
  });

  test('with anything wrong in it is refused, each fault by its field', async () => {
    const back = {
      ...planned(26, 25),
      interlocks: [{ when: { kind: 'return-lost', provedBy: 'flow' }, then: 'off', by: 'controller' }],
    };
    expect(await write(wren, back, 1)).toMatchObject({
      ok: false,
      reason: {
        why: 'invalid',
        faults: [{ path: 'interlocks[0].when' }, { path: 'interlocks[0].when.provedBy' }, { path: 'regulation.lowC' }],
      },
    });
    const misspelt = { ...planned(24.8), regulation: { ...planned(24.8).regulation, vote: 'most' } };
    expect(await write(wren, misspelt, 1)).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'regulation.vote' }] },
    });
    expect(await statuses()).toEqual(['1 in-force']);
  });

  test('cannot say of itself that it stands on its author’s word', async () => {
    await write(wren, { ...planned(24.8), ownWord: { why: 'I say so' } }, 1);
    expect((await page(wren)).versions[0]?.plan).toEqual(planned(24.8));
  });
});

describe('two people at once', () => {
  test('a draft written while somebody else wrote one is refused and says so', async () => {
    const both = await Promise.all([write(wren, planned(24.8), 1), write(robin, planned(24.2), 1)]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    const refused = both.find(({ ok }) => !ok);
    expect(refused).toMatchObject({ reason: { why: 'conflict', now: expect.stringContaining('version 2') } });
  });

  test('of two who put the same plan into force one does, and of two plans at once one is in force', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    await write(robin, planned(24.2), 2);
    await submitPlan(robin, { ...PIECE, version: 3 });
    const three = await Promise.all([
      putPlanInForce(robin, { ...PIECE, version: 2, inForce: 1 }),
      putPlanInForce(robin, { ...PIECE, version: 2, inForce: 1 }),
      putPlanInForce(wren, { ...PIECE, version: 3, inForce: 1 }),
    ]);
    expect(three.filter(({ ok }) => ok)).toHaveLength(1);
    for (const one of three) if (!one.ok) expect(one.reason).toMatchObject({ why: 'conflict' });
    const { rows } = await query(
      `SELECT count(*)::int FROM plan_in_force p JOIN equipment e ON e.id = p.equipment_id WHERE e.key = 'heater-1'`,
    );
    expect(rows).toEqual([{ count: 1 }]);
  });

  test('an import goes on counting where the drafts have come to, and leaves them waiting', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    const [system] = base.systems;
    if (!(system && heater)) throw new Error('no heater');
    const other = {
      ...system,
      equipment: system.equipment.map((one) => (one === heater ? { ...one, plan: planned(24.1) } : one)),
    };
    await keep({ ...base, systems: [other] });
    expect(await statuses()).toEqual(['3 in-force', '2 submitted', '1 superseded']);
    expect(await putPlanInForce(robin, { ...PIECE, version: 2, inForce: 1 })).toMatchObject({
      ok: false,
      reason: { why: 'conflict', now: expect.stringContaining('Version 3') },
    });
    expect((await putPlanInForce(robin, { ...PIECE, version: 2, inForce: 3 })).ok).toBe(true);
    expect(await statuses()).toEqual(['3 superseded', '2 in-force', '1 superseded']);
    await keep(base);
    expect(await statuses()).toEqual(['4 in-force', '3 superseded', '2 superseded', '1 superseded']);
  });
});

describe('a plan that is not wanted', () => {
  test('is sent back with a reason by somebody else, and stays as it was written', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    const back = { ...PIECE, version: 2, reason: 'too narrow for this probe' };
    expect(await sendBackPlan(wren, back)).toEqual({ ok: false, reason: { why: 'own-work' } });
    expect((await sendBackPlan(robin, back)).ok).toBe(true);
    const [version] = (await page(wren)).versions;
    expect(version).toMatchObject({ status: 'sent-back', plan: planned(24.8) });
    expect(version?.life.at(-1)).toMatchObject({ by: 'Robin', reason: 'too narrow for this probe' });
    expect(await putPlanInForce(robin, { ...PIECE, version: 2, inForce: 1 })).toMatchObject({
      reason: { why: 'conflict' },
    });
    expect((await kinds()).at(-1)).toBe('plan-sent-back');
  });

  test('is withdrawn by its author alone, draft or submitted', async () => {
    await write(wren, planned(24.8), 1);
    const away = { ...PIECE, version: 2, reason: 'not needed' };
    expect(await withdrawPlan(robin, away)).toEqual({ ok: false, reason: { why: 'not-own-work' } });
    expect(await submitPlan(robin, { ...PIECE, version: 2 })).toEqual({ ok: false, reason: { why: 'not-own-work' } });
    expect((await withdrawPlan(wren, away)).ok).toBe(true);
    expect(await statuses()).toEqual(['2 withdrawn', '1 in-force']);
    expect((await kinds()).at(-1)).toBe('plan-withdrawn');
  });
});

describe('a sole keeper', () => {
  const alone = () => query('UPDATE membership SET ended_at = now() WHERE account_id = $1', [robin.id]);

  test('puts their own plan into force with a reason, which the review then finds and the file keeps', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    expect((await page(wren)).isSoleKeeper).toBe(false);
    await alone();
    expect((await page(wren)).isSoleKeeper).toBe(true);
    expect(await putPlanInForce(wren, { ...PIECE, version: 2, inForce: 1 })).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'why' }] },
    });
    const done = await putPlanInForce(wren, { ...PIECE, version: 2, inForce: 1, why: 'nobody else keeps this site' });
    expect(done).toMatchObject({ ok: true, value: { version: 3 } });
    expect(await statuses()).toEqual(['3 in-force', '2 withdrawn', '1 superseded']);
    const { facility } = await stored(SITE);
    const [system] = facility.systems;
    if (!system) throw new Error('no system');
    expect(system.equipment[0]?.plan.ownWord).toEqual({ why: 'nobody else keeps this site' });
    const found = reviewSystem(facility, system, '2026-11-25').findings.flatMap(({ lines }) => lines);
    expect(found.filter(({ from }) => 'rule' in from && from.rule === 'plan-on-own-word')).toHaveLength(1);
  });

  test('is nobody while an account that may everywhere can sign in', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    await alone();
    const chief = await letIn(query, siteId, SITE, 'Chief', 'viewer');
    await query('DELETE FROM membership WHERE account_id = $1', [chief.id]);
    await query(`UPDATE account SET everywhere = 'manager' WHERE id = $1`, [chief.id]);
    const asked = { ...PIECE, version: 2, inForce: 1, why: 'nobody else' };
    expect(await putPlanInForce(wren, asked)).toEqual({ ok: false, reason: { why: 'own-work' } });
    await query('UPDATE account SET ended_at = now() WHERE id = $1', [chief.id]);
    expect((await putPlanInForce(wren, asked)).ok).toBe(true);
    await query('DELETE FROM account WHERE id = $1', [chief.id]);
  });
});

describe('what waits', () => {
  test('is listed with the plan in force of every piece of equipment', async () => {
    await write(wren, planned(24.8), 1);
    await submitPlan(wren, { ...PIECE, version: 2 });
    await write(robin, planned(24.2), 2);
    const list = await listPlans(wren, { site: SITE });
    if (!list.ok) throw new Error('no list');
    expect(
      list.value.entries.map(({ equipment, inForce, open }) => [equipment, inForce.version, inForce.by, open.length]),
    ).toEqual([
      ['heater-1', 1, 'the machine itself', 2],
      ['air-blower', 1, 'the machine itself', 0],
    ]);
    expect(list.value.entries[0]?.open).toMatchObject([
      { version: 2, status: 'submitted', writtenBy: 'Wren', isOwn: true },
      { version: 3, status: 'draft', writtenBy: 'Robin', isOwn: false },
    ]);
  });
});
