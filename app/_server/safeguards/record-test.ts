import 'server-only';
import { ok, refused } from '#core/result';
import { nameIdFor } from '#data/facility/names';
import { addTest, findTest } from '#data/safeguards/ledger';
import { setCountedTests } from '#data/safeguards/safeguard-row';
import { type TestRequest, testRequest } from '#shape/safeguards/requests';
import type { Who } from '../gate/who';
import { type Changed, changeSafeguard } from './change-safeguard';

export const recordTestShape = testRequest;

/** Records that a safeguard was tested: what was done, what should have happened, what was seen, who looked. */
export async function recordTest(who: Who, test: TestRequest): Promise<Changed> {
  const { entry: id, on, result, steps, expected, seen, looked } = test;
  return await changeSafeguard(who, 'test-safeguard', test, async ({ tx, siteId, safeguard, at, today }) => {
    if (on > today)
      return refused({ why: 'invalid', faults: [{ path: 'on', message: `must not be after today, ${today}` }] });
    // What a slow line made somebody send twice is kept once.
    if (await findTest(tx, siteId, id)) return ok([]);
    const said = { on, result, steps, expected, seen };
    const byId = await nameIdFor(tx, siteId, looked);
    await addTest(tx, siteId, { id, safeguardId: safeguard.id, byId, ...said }, at, who.id);
    await setCountedTests(tx, siteId, safeguard.id, [...safeguard.tests, id]);
    const body = { by: who.id, safeguard: safeguard.id, test: id, looked: byId, ...said };
    return ok([{ kind: 'safeguard-tested', body }]);
  });
}
