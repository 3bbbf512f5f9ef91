import { findLink } from '#data/accounts/links';
import { verifyChain } from '#data/records/verify-chain';
import { endEverywhere } from '#server/accounts/end-account';
import { type Who, whoAsks } from '#server/gate/who';
import { changeRole } from '#server/people/change-role';
import { invite } from '#server/people/invite';
import { readRecord } from '#server/record/read-record';
import { beforeAll, describe, expect, test } from 'vitest';
import { site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { anAccount, headersOf } from '../../_support/signed-in';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();

const HARBOUR = 'harbour';
let harbour = '';
let chief: Who;
/** Administrator of the branch alone. */
let other: Who;

const as = (id: string, at: Who['at']): Who => ({ id, name: 'x', everywhere: null, at });

beforeAll(async () => {
  await keep(smallFacility());
  await keep({ ...smallFacility(), site: site({ key: 'branch', name: 'Branch' }) });
  harbour = (await stored(HARBOUR)).siteId;
  chief = as(await anAccount({ name: 'Chief' }), { harbour: 'admin' });
  other = as(await anAccount({ name: 'Other' }), { branch: 'admin' });
  const chiefAtHarbour = [harbour, chief.id];
  await query(
    "INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, 'admin', now())",
    chiefAtHarbour,
  );
});

/** Lets somebody in. @returns their account, and the address of their link if one was shown */
async function letIn(email: string, role: 'viewer' | 'aquarist' | 'lead', by = chief, at = HARBOUR) {
  const answer = await invite(by, { site: at, email, name: `Name of ${email}`, role });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  const { account, link } = answer.value;
  return { account, link: link?.way === 'shown' ? link.address : null };
}

const lastEntry = async (at: string) => {
  const page = await readRecord({ ...chief, everywhere: 'admin', at: {} }, { site: at });
  if (!page.ok) throw new Error('no record');
  return page.value.entries[0];
};

describe('a link that was shown at one site', () => {
  test('who gets a role here is not entered by a link that was shown at another site before', async () => {
    const { account, link } = await letIn('cleo@aqua.example', 'viewer', other, 'branch');
    const token = link?.slice(-43) ?? '';
    expect(await findLink('join', token, new Date())).toMatchObject({ accountId: account });
    await letIn('cleo@aqua.example', 'lead');
    expect(await findLink('join', token, new Date())).toBeNull();
  });

  test('a link made by the same administrator goes on when they give a role at another site', async () => {
    const { link } = await letIn('clem@aqua.example', 'viewer');
    const both = as(chief.id, { harbour: 'admin', branch: 'admin' });
    await letIn('clem@aqua.example', 'viewer', both, 'branch');
    expect(await findLink('join', link?.slice(-43) ?? '', new Date())).toMatchObject({ purpose: 'join' });
  });
});

describe('an account that is ended at the machine', () => {
  test('ends at each site, in its record, so that another site lets nobody back in there', async () => {
    const { account } = await letIn('nell@aqua.example', 'lead');
    await letIn('nell@aqua.example', 'viewer', other, 'branch');
    expect(await endEverywhere(account, 'local', new Date())).toBe(true);
    for (const [at, role] of [
      [HARBOUR, 'lead'],
      ['branch', 'viewer'],
    ] as const) {
      expect(await lastEntry(at)).toMatchObject({ kind: 'member-left', body: { by: 'local', account, role } });
    }
    expect(await endEverywhere(account, 'local', new Date())).toBe(false);
    await letIn('nell@aqua.example', 'aquarist', other, 'branch');
    expect((await whoAsks(await headersOf(account)))?.at).toEqual({ branch: 'aquarist' });
    expect(await verifyChain(harbour)).toMatchObject({ isWhole: true });
  });
});

describe('somebody with a role at every site', () => {
  test('is given less at one by an administrator of every site alone: nobody of a site locks them out', async () => {
    const email = 'warden@aqua.example';
    const id = await anAccount({ email, everywhere: 'manager' });
    const above = { ok: false, reason: { why: 'conflict', now: expect.stringContaining('every site') } };
    expect(await invite(chief, { site: HARBOUR, email, name: 'W', role: 'viewer' })).toMatchObject(above);
    expect(await invite(chief, { site: HARBOUR, email, name: 'W', role: 'admin' })).toMatchObject({ ok: true });
    expect(await changeRole(chief, { site: HARBOUR, account: id, role: 'lead' })).toMatchObject(above);
    const highest: Who = { ...chief, everywhere: 'admin' };
    expect(await changeRole(highest, { site: HARBOUR, account: id, role: 'lead' })).toMatchObject({ ok: true });
  });
});
