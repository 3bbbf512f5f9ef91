import 'server-only';
import { ok, refused } from '#core/result';
import { newId } from '#data/new-id';
import { addTest, findTest } from '#data/safeguards/ledger';
import { setCountedTests } from '#data/safeguards/safeguard-row';
import { type WithdrawRequest, withdrawRequest } from '#shape/safeguards/requests';
import { may } from '../gate/may';
import type { Who } from '../gate/who';
import { type Changed, changeSafeguard } from './change-safeguard';

export const withdrawTestShape = withdrawRequest;

/**
 * Withdraws a test that was entered by mistake. It stays in the ledger, with why it no longer counts. Somebody else's is
 * withdrawn by those who may take the safeguard out of service: without a test that failed, the one before counts again.
 */
export async function withdrawTest(who: Who, request: WithdrawRequest): Promise<Changed> {
  const { test, reason } = request;
  return await changeSafeguard(who, 'test-safeguard', request, async ({ tx, siteId, safeguard, at }) => {
    const found = await findTest(tx, siteId, test);
    if (!found || found.safeguardId !== safeguard.id) return refused({ why: 'not-found', what: 'test' });
    if (found.recordedBy !== who.id && !may(who, 'switch-safeguard', request.site))
      return refused({ why: 'not-own-work' });
    if (!safeguard.tests.includes(test))
      return refused({ why: 'conflict', now: 'This test has been withdrawn already.' });
    const id = newId();
    const { on, byId } = found;
    const row = { id, safeguardId: safeguard.id, on, result: 'withdrawn', byId, withdraws: test, reason } as const;
    await addTest(tx, siteId, row, at, who.id);
    const left = safeguard.tests.filter((counted) => counted !== test);
    await setCountedTests(tx, siteId, safeguard.id, left);
    const body = { by: who.id, safeguard: safeguard.id, test: id, on, withdraws: test, reason };
    return ok([{ kind: 'test-withdrawn', body }]);
  });
}
