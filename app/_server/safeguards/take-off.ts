import 'server-only';
import { ok, refused } from '#core/result';
import { addDays } from '#core/time/add-days';
import { nameIdFor } from '#data/facility/names';
import { setOff } from '#data/safeguards/safeguard-row';
import { type OffRequest, offRequest } from '#shape/safeguards/requests';
import type { Who } from '../gate/who';
import { askSignatures } from '../states/ask-signatures';
import { type Changed, changeSafeguard } from './change-safeguard';

export const takeOffShape = offRequest;

/** Days a safeguard may be off without being looked at anew: an end that nobody lives to see is none. Common practice, no source. */
const LONGEST_DAYS = 366;

/** Takes a safeguard out of service: whose it is to put it back, why, and until when. */
export async function takeOff(who: Who, request: OffRequest): Promise<Changed> {
  const { owner, why, since, until } = request;
  return await changeSafeguard(who, 'switch-safeguard', request, async ({ tx, siteId, safeguard, at, today }) => {
    if (until < today)
      return refused({ why: 'invalid', faults: [{ path: 'until', message: `must not be before today, ${today}` }] });
    const latest = addDays(today, LONGEST_DAYS);
    if (until > latest)
      return refused({
        why: 'invalid',
        faults: [{ path: 'until', message: `must not be after ${latest}: a year at most` }],
      });
    if (safeguard.off && safeguard.off.until >= today)
      return refused({
        why: 'conflict',
        now: `${safeguard.name} is out of service until ${safeguard.off.until} already: put it back first.`,
      });
    const off = { why, since, until };
    const offById = await nameIdFor(tx, siteId, owner);
    await setOff(tx, siteId, safeguard, { off, offById });
    const note = `${safeguard.name}: ${why}`;
    const doing = { systemId: null, about: safeguard.id, at, by: who.id, note };
    return ok([
      { kind: 'safeguard-off', body: { by: who.id, safeguard: safeguard.id, owner: offById, ...off } },
      ...(await askSignatures(tx, siteId, ['safeguard-off'], doing)),
    ]);
  });
}
