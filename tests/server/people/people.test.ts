import { findAccount } from '#data/accounts/accounts';
import { verifyChain } from '#data/records/verify-chain';
import { whoAsks, type Who } from '#server/gate/who';
import { changeRole } from '#server/people/change-role';
import { erasePerson } from '#server/people/erase-person';
import { invite } from '#server/people/invite';
import { letGo } from '#server/people/let-go';
import { linkToRota } from '#server/people/link-to-rota';
import { getMember, listPeople } from '#server/people/list-people';
import { makeMemberLink } from '#server/people/make-link';
import { beforeAll, describe, expect, test } from 'vitest';
import { headersOf } from '../../_support/signed-in';
import { as, facility, HARBOUR, joinSite, twoSites } from './two-sites';

const { query, ground, letIn, lastEntry } = twoSites();

let harbour = '';
let branch = '';
let chief: Who;
let other: Who;
beforeAll(() => {
  ({ harbour, branch, chief, other } = ground());
});

const join = (siteId: string, account: string, role: string) => joinSite(query, siteId, account, role);

describe('letting somebody in', () => {
  test('makes their account and a link to join, and stands in the record without their name', async () => {
    const { account, link } = await letIn('Anna@Aqua.example');
    expect(await findAccount(account)).toMatchObject({ email: 'anna@aqua.example', name: 'Name of Anna@Aqua.example' });
    expect(link).toMatch(/\/join\/[\w-]{43}$/);
    const entry = await lastEntry();
    expect(entry).toMatchObject({ kind: 'member-let-in', body: { by: chief.id, account, role: 'lead' } });
    expect(JSON.stringify(entry?.body)).not.toMatch(/anna/i);
    expect(entry?.what).toBe('Let Name of Anna@Aqua.example in as lead');
  });

  test('twice is a conflict, in whatever spelling', async () => {
    await letIn('bo@aqua.example');
    const again = await invite(chief, { site: HARBOUR, email: 'BO@aqua.example', name: 'Bo', role: 'viewer' });
    expect(again).toMatchObject({ ok: false, reason: { why: 'conflict' } });
  });

  test('who has a role at another site gets no link by which the other site could be entered', async () => {
    const { account } = await letIn('cy@aqua.example', 'admin', other, 'branch');
    expect(await letIn('cy@aqua.example', 'viewer')).toEqual({ account, link: null });
    expect(await makeMemberLink(chief, { site: HARBOUR, account })).toMatchObject({
      ok: false,
      reason: { why: 'conflict' },
    });
  });

  test('a new link is made for somebody of this site alone', async () => {
    const { account, link } = await letIn('di@aqua.example');
    const again = await makeMemberLink(chief, { site: HARBOUR, account });
    expect(again).toMatchObject({ ok: true, value: { way: 'shown', address: expect.stringMatching(/\/join\//) } });
    expect(again.ok && again.value).not.toMatchObject({ address: link });
    const entry = await lastEntry();
    expect(entry).toMatchObject({ kind: 'link-made', body: { by: chief.id, account, link: 'shown' } });
    expect(entry?.what).toMatch(/^Made a link by which Name of di@aqua\.example .* was shown it$/);
    expect(JSON.stringify(entry)).not.toContain(
      again.ok && again.value.way === 'shown' && again.value.address.slice(-43),
    );
  });
});

describe('a role', () => {
  test('is changed from the next request on, and says in the record what it was', async () => {
    const { account } = await letIn('ed@aqua.example', 'viewer');
    const headers = await headersOf(account);
    expect((await whoAsks(headers))?.at).toEqual({ harbour: 'viewer' });
    expect(await changeRole(chief, { site: HARBOUR, account, role: 'aquarist' })).toMatchObject({ ok: true });
    expect((await whoAsks(headers))?.at).toEqual({ harbour: 'aquarist' });
    expect(await lastEntry()).toMatchObject({
      kind: 'role-changed',
      body: { account, was: 'viewer', role: 'aquarist' },
    });
  });

  test('that stays as it was leaves no entry', async () => {
    const { account } = await letIn('fay@aqua.example', 'viewer');
    const before = await lastEntry();
    await changeRole(chief, { site: HARBOUR, account, role: 'viewer' });
    expect(await lastEntry()).toEqual(before);
  });

  test('of the last administrator stays, also when two let each other go at once', async () => {
    const last = { ok: false, reason: { why: 'conflict', now: expect.stringContaining('last administrator') } };
    expect(await changeRole(other, { site: 'branch', account: other.id, role: 'viewer' })).toMatchObject({ ok: true });
    await query(`UPDATE membership SET role = 'admin' WHERE site_id = $1 AND account_id = $2`, [branch, other.id]);
    const cy = (await listPeople(other, { site: 'branch' })) as { ok: true; value: { members: { account: string }[] } };
    const second = cy.value.members.find(({ account }) => account !== other.id)?.account ?? '';
    const both = await Promise.all([
      letGo(other, { site: 'branch', account: second }),
      letGo(as(second, { branch: 'admin' }), { site: 'branch', account: other.id }),
    ]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect(both.find(({ ok }) => !ok)).toMatchObject(last);
    const { rows } = await query(
      `SELECT count(*)::int AS n FROM membership WHERE site_id = $1 AND role = 'admin' AND ended_at IS NULL`,
      [branch],
    );
    expect(rows[0].n).toBe(1);
  });
});

describe('somebody who has left', () => {
  test('has no access at their next request, and what is theirs to do is told before and after', async () => {
    const { account } = await letIn('gus@aqua.example');
    await linkToRota(chief, { site: HARBOUR, account, person: facility.people[0]?.key });
    await query(
      `INSERT INTO plan_version (site_id, equipment_id, version, body, valid_from, written_by)
       SELECT site_id, equipment_id, 99, body, now(), $2 FROM plan_version WHERE site_id = $1 LIMIT 1`,
      [harbour, account],
    );
    await query(
      `INSERT INTO plan_status (site_id, equipment_id, version, status, at, by)
       SELECT site_id, equipment_id, 99, 'draft', now(), $2 FROM plan_version WHERE site_id = $1 AND version = 99`,
      [harbour, account],
    );
    await query(
      `UPDATE safeguard SET detail = detail || '{"off": {"why": "repair", "since": "2026-01-01", "until": "2999-01-01"}}',
         off_by_id = (SELECT name_id FROM person WHERE site_id = $1 AND key = $2)
       WHERE (site_id, id) = (SELECT site_id, id FROM safeguard WHERE site_id = $1 LIMIT 1)`,
      [harbour, facility.people[0]?.key],
    );
    const headers = await headersOf(account);
    const before = await getMember(chief, { site: HARBOUR, account });
    const left = await letGo(chief, { site: HARBOUR, account });
    expect(await whoAsks(headers)).toBeNull();
    if (!(left.ok && before.ok)) throw new Error('refused');
    expect(left.value.isEnded).toBe(true);
    expect(left.value.duties).toEqual(before.value.member.duties);
    const kinds = left.value.duties.map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(['on-site', 'safeguard-off', 'plan-draft']));
    const after = await getMember(chief, { site: HARBOUR, account });
    expect(after.ok && after.value.member).toMatchObject({ duties: left.value.duties, endedAt: expect.any(String) });
    expect(await letGo(chief, { site: HARBOUR, account })).toEqual({
      ok: false,
      reason: { why: 'not-found', what: 'person' },
    });
  });

  test('goes on signing in where they have a role elsewhere', async () => {
    const { account } = await letIn('hal@aqua.example');
    await join(branch, account, 'viewer');
    const headers = await headersOf(account);
    expect(await letGo(chief, { site: HARBOUR, account })).toMatchObject({ ok: true, value: { isEnded: false } });
    expect((await whoAsks(headers))?.at).toEqual({ branch: 'viewer' });
  });

  test('comes back with a new link and nothing of what they signed in by', async () => {
    const { account } = await letIn('ina@aqua.example');
    await query(`UPDATE account SET password_hash = 'old', everywhere = NULL WHERE id = $1`, [account]);
    await letGo(chief, { site: HARBOUR, account });
    await query(`UPDATE account SET everywhere = 'admin' WHERE id = $1`, [account]);
    const back = await letIn('ina@aqua.example', 'viewer');
    expect(back).toEqual({ account, link: expect.stringMatching(/\/join\//) });
    const { rows } = await query('SELECT password_hash, everywhere, ended_at FROM account WHERE id = $1', [account]);
    expect(rows[0]).toEqual({ password_hash: null, everywhere: null, ended_at: null });
  });
});

describe('erasing somebody', () => {
  test('is for those who have left everywhere', async () => {
    const { account } = await letIn('jo@aqua.example');
    const still = { ok: false, reason: { why: 'conflict' } };
    expect(await erasePerson(chief, { site: HARBOUR, account })).toMatchObject(still);
    await join(branch, account, 'viewer');
    await letGo(chief, { site: HARBOUR, account });
    expect(await erasePerson(chief, { site: HARBOUR, account })).toMatchObject(still);
  });

  test('leaves neither name nor address in any table, and every chain whole', async () => {
    const { account } = await letIn('kim.secret@aqua.example');
    await linkToRota(chief, { site: HARBOUR, account, person: facility.people[1]?.key });
    const name = facility.people[1]?.name ?? '';
    await query(
      `INSERT INTO alarm_definition (site_id, id, system_id, key, ordinal, name, detail)
       SELECT site_id, id, id, 'call', 0, 'Call', '{"answeredBy": ["robin", "sam"]}' FROM system WHERE site_id = $1 LIMIT 1`,
      [harbour],
    );
    await query(`UPDATE site SET detail = detail || '{"watchdog": {"answeredBy": ["sam"]}}' WHERE id = $1`, [harbour]);
    await join(branch, account, 'viewer');
    await query(`UPDATE membership SET ended_at = now() WHERE account_id = $1 AND site_id = $2`, [account, branch]);
    await query(`INSERT INTO person_name (site_id, id, name) VALUES ($1, $2, 'Name of kim.secret@aqua.example')`, [
      branch,
      account,
    ]);
    await letGo(chief, { site: HARBOUR, account });
    expect(await erasePerson(chief, { site: HARBOUR, account })).toEqual({ ok: true, value: { sites: 2 } });
    expect(await found('kim.secret')).toEqual([]);
    // The branch has a rota of its own, where somebody of that name may go on.
    expect(await found(name)).toEqual([]);
    const { rows } = await query(`SELECT detail->'answeredBy' AS by FROM alarm_definition WHERE key = 'call'`);
    expect(rows[0].by).toEqual(['robin', expect.stringMatching(/^erased-/)]);
    for (const id of [harbour, branch]) expect((await verifyChain(id)).isWhole).toBe(true);
    expect((await lastEntry())?.body).toEqual({ by: chief.id, account });
    expect((await lastEntry('branch'))?.kind).toBe('person-erased');
    const page = await getMember(chief, { site: HARBOUR, account });
    expect(page.ok && page.value.member).toMatchObject({ name: null, email: null });
    expect(await erasePerson(chief, { site: HARBOUR, account })).toEqual({ ok: true, value: { sites: 0 } });
  });
});

/** Tables in whose rows a text stands. */
async function found(text: string): Promise<string[]> {
  const { rows } = await query(`SELECT relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE c.relkind = 'r' AND n.nspname IN ('public', 'graphile_worker') AND relname <> '_prisma_migrations'`);
  const holding: string[] = [];
  for (const { name } of rows) {
    const schema = (await query('SELECT to_regclass($1) AS it', [`public.${name}`])).rows[0].it
      ? 'public'
      : 'graphile_worker';
    const sql = `SELECT count(*)::int AS n FROM ${schema}.${name} t WHERE t::text ILIKE $1`;
    const elsewhere = name.startsWith('person') ? ` AND site_id <> '${branch}'` : '';
    if ((await query(sql + elsewhere, [`%${text}%`])).rows[0].n > 0) holding.push(name);
  }
  return holding;
}

describe('people of a site', () => {
  test('are for its administrators alone, and not there for anybody else', async () => {
    const absent = { ok: false, reason: { why: 'not-found', what: 'site' } };
    expect(await listPeople(as('x', { harbour: 'manager' }), { site: HARBOUR })).toEqual({
      ok: false,
      reason: { why: 'not-allowed' },
    });
    expect(await listPeople(other, { site: HARBOUR })).toEqual(absent);
    expect(await letGo(other, { site: HARBOUR, account: chief.id })).toEqual(absent);
    // An administrator of one site reaches nobody of another through their own.
    expect(await changeRole(chief, { site: HARBOUR, account: other.id, role: 'viewer' })).toEqual({
      ok: false,
      reason: { why: 'not-found', what: 'person' },
    });
  });

  test('are linked to persons of the rota, each to one', async () => {
    const { account } = await letIn('lou@aqua.example');
    const { account: second } = await letIn('max@aqua.example');
    const person = facility.people[0]?.key;
    expect(await linkToRota(chief, { site: HARBOUR, account, person })).toMatchObject({ ok: true });
    expect(await linkToRota(chief, { site: HARBOUR, account: second, person })).toMatchObject({
      ok: false,
      reason: { why: 'conflict' },
    });
    expect(await linkToRota(chief, { site: HARBOUR, account: second, person: 'nobody' })).toMatchObject({
      ok: false,
      reason: { why: 'not-found' },
    });
    expect(await lastEntry()).toMatchObject({ kind: 'member-linked', body: { account } });
    expect(await linkToRota(chief, { site: HARBOUR, account })).toEqual({ ok: true, value: { person: null } });
  });
});
