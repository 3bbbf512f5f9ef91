import 'server-only';
import { ok, refused } from '#core/result';
import { type TestRequest, testRequest } from '#shape/safeguards/requests';
import type { Who } from '../gate/who';
import { type Changed, changeSafeguard } from './change-safeguard';
import { keepTest } from './keep-test';

export const recordTestShape = testRequest;

/** Records that a safeguard was tested: what was done, what should have happened, what was seen, who looked. */
export async function recordTest(who: Who, test: TestRequest): Promise<Changed> {
  return await changeSafeguard(who, 'test-safeguard', test, async (held) => {
    if (test.on > held.today)
      return refused({ why: 'invalid', faults: [{ path: 'on', message: `must not be after today, ${held.today}` }] });
    return ok(await keepTest(held, who, test));
  });
}
