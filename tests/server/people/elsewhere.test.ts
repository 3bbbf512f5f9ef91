import { findLink } from '#data/accounts/links';
import { verifyChain } from '#data/records/verify-chain';
import { endEverywhere } from '#server/accounts/end-account';
import { whoAsks } from '#server/gate/who';
import { describe, expect, test } from 'vitest';
import { headersOf } from '../../_support/signed-in';
import { as, BRANCH, HARBOUR, twoSites } from './two-sites';

const { ground, letIn, lastEntry } = twoSites();

describe('a link that was shown at one site', () => {
  test('who gets a role here is not entered by a link that was shown at another site before', async () => {
    const { account, link } = await letIn('cleo@aqua.example', 'viewer', ground().other, BRANCH);
    const token = link?.slice(-43) ?? '';
    expect(await findLink('join', token, new Date())).toMatchObject({ accountId: account });
    await letIn('cleo@aqua.example', 'lead');
    expect(await findLink('join', token, new Date())).toBeNull();
  });

  test('a link made by the same administrator goes on when they give a role at another site', async () => {
    const { link } = await letIn('clem@aqua.example', 'viewer');
    const both = as(ground().chief.id, { harbour: 'admin', branch: 'admin' });
    await letIn('clem@aqua.example', 'viewer', both, BRANCH);
    expect(await findLink('join', link?.slice(-43) ?? '', new Date())).toMatchObject({ purpose: 'join' });
  });
});

describe('an account that is ended at the machine', () => {
  test('ends at each site, in its record, so that another site lets nobody back in there', async () => {
    const { account } = await letIn('nell@aqua.example', 'lead');
    await letIn('nell@aqua.example', 'viewer', ground().other, BRANCH);
    expect(await endEverywhere(account, 'local', new Date())).toBe(true);
    for (const [at, role] of [
      [HARBOUR, 'lead'],
      [BRANCH, 'viewer'],
    ] as const) {
      expect(await lastEntry(at)).toMatchObject({ kind: 'member-left', body: { by: 'local', account, role } });
    }
    expect(await endEverywhere(account, 'local', new Date())).toBe(false);
    await letIn('nell@aqua.example', 'aquarist', ground().other, BRANCH);
    expect((await whoAsks(await headersOf(account)))?.at).toEqual({ branch: 'aquarist' });
    expect(await verifyChain(ground().harbour)).toMatchObject({ isWhole: true });
  });
});
