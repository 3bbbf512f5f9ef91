import 'server-only';
import type { Entry } from '#core/incidents/incident';
import { ok, refused } from '#core/result';
import { type WithdrawRequest, withdrawRequest } from '#shape/incidents/investigate-request';
import { may } from '../gate/may';
import type { Who } from '../gate/who';
import { type Changed, changeIncident } from './change-incident';
import { correctionOf } from './keep-entry';

export const withdrawEntryShape = withdrawRequest;

/**
 * Takes an entry back, with a reason: it stays to be read and no longer counts. Somebody else's is taken back by those who
 * investigate; a signature by whoever gave it.
 */
export async function withdrawEntry(who: Who, request: WithdrawRequest): Promise<Changed> {
  const { entry: id, supersedes, reason } = request;
  return await changeIncident(who, 'log-incident', request, async ({ entries, at }) => {
    if (entries.some((one) => one.id === id)) return ok(null);
    const found = correctionOf(entries, null, supersedes, reason);
    if (!found.ok) return found;
    const before = found.value;
    if (!before) return refused({ why: 'not-found', what: 'entry' });
    const isOwn = before.by === who.id;
    if (!isOwn && (before.kind === 'signature' || !may(who, 'investigate', request.site)))
      return refused({ why: 'not-own-work' });
    const { kind, atMs } = before;
    return ok({ id, kind, atMs, recordedMs: at.getTime(), by: who.id, body: null, supersedes, reason } as Entry);
  });
}
