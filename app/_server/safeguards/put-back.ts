import 'server-only';
import { ok, refused } from '#core/result';
import { setOff } from '#data/safeguards/safeguard-row';
import { type SafeguardPlace, safeguardPlace } from '#shape/safeguards/requests';
import type { Who } from '../gate/who';
import { type Changed, changeSafeguard } from './change-safeguard';

export const putBackShape = safeguardPlace;

/** Puts a safeguard back before the day it was to be out of service until. */
export async function putBack(who: Who, place: SafeguardPlace): Promise<Changed> {
  return await changeSafeguard(who, 'switch-safeguard', place, async ({ tx, siteId, safeguard, today }) => {
    const { off } = safeguard;
    if (!off || off.until < today) return refused({ why: 'conflict', now: `${safeguard.name} is not out of service.` });
    await setOff(tx, siteId, safeguard, { off: null, offById: null });
    const { since, until } = off;
    return ok([{ kind: 'safeguard-back', body: { by: who.id, safeguard: safeguard.id, since, until } }]);
  });
}
