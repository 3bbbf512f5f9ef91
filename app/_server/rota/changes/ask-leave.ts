import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { instantOf } from '#core/time/zone';
import { appendRecords } from '#data/records/append-records';
import { addChange, findRotaIds } from '#data/rota/changes';
import { inTransaction } from '#data/transaction';
import { type LeaveRequest, leaveRequest } from '#shape/rota/change';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite } from '../../reviews/find-stored-site';
import { tellAsked } from './tell-change';
import { mayAskFor } from './own-person';

export const askLeaveShape = leaveRequest;

/** Longest leave that is asked for at once. Common practice, no source. */
const LONGEST_MS = 366 * 86_400_000;

/** Asks for leave: one's own, or that of somebody of the rota as a lead. It takes nothing from the rota before it is approved. */
export async function askLeave(who: Who, request: LeaveRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site, entry, person, from, to, why } = request;
  const found = await findStoredSite(who, 'change-duty', site);
  if (!found.ok) return found;
  const { id: siteId, zone } = found.value.entry;
  if (!(await mayAskFor(who, { siteId, site }, person))) return refused({ why: 'not-allowed' });
  const [fromAt, toAt] = [from, to].map(({ date, time }) => new Date(instantOf(zone, date, time))) as [Date, Date];
  const at = now();
  const fault = faultOf(fromAt, toAt, at);
  if (fault !== null) return refused({ why: 'invalid', faults: [{ path: 'to', message: fault }] });
  return await inTransaction(async (tx) => {
    const personId = (await findRotaIds(tx, siteId)).people.get(person);
    if (personId === undefined) return refused({ why: 'not-found', what: 'person' });
    const change = { id: entry, kind: 'leave', personId, fromAt, toAt, why: why || null } as const;
    if (!(await addChange(tx, siteId, { ...change, askedBy: who.id, askedAt: at }))) return ok({ site });
    const body = { by: who.id, change: entry, person: personId, from: fromAt.toISOString(), to: toAt.toISOString() };
    await appendRecords(tx, siteId, [{ kind: 'leave-asked', body }], at);
    await tellAsked(tx, { siteId, change: entry, by: who.id });
    return ok({ site });
  });
}

function faultOf(from: Date, to: Date, at: Date): string | null {
  if (to <= from) return 'must be later than its beginning';
  if (to <= at) return 'must not be over already';
  return to.getTime() - from.getTime() > LONGEST_MS ? 'must be within a year of its beginning' : null;
}
