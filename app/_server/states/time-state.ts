import 'server-only';
import { scheduleSaid } from '#core/rounds/schedule-words';
import { ok, type Result, refused } from '#core/result';
import { appendRecords } from '#data/records/append-records';
import { addTimed, endTimed, listTimed } from '#data/states/timed';
import { inTransaction } from '#data/transaction';
import { type EndTimedRequest, endTimedRequest, type TimedRequest, timedRequest } from '#shape/states/asked-request';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { findPlace } from '../reviews/find-place';

export const timeStateShape = timedRequest;
export const endTimedShape = endTimedRequest;

type Done = Result<{ site: string; system: string }, Refusal>;

/** Has a state begin by a schedule. What is sent twice is kept once. */
export async function timeState(who: Who, request: TimedRequest): Promise<Done> {
  const { site, system, entry: id, state, schedule, lastsMin } = request;
  const allowed = await siteFor(who, 'describe', site);
  if (!allowed.ok) return allowed;
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const siteId = allowed.value.id;
  const { systemId } = place.value;
  if ((await listTimed([siteId])).some((one) => one.id === id)) return ok({ site, system });
  const at = now();
  await inTransaction(async (tx) => {
    await addTimed(tx, { id, siteId, systemId, state, schedule, lastsMin, by: who.id }, at);
    const body = { by: who.id, system: systemId, state, timed: id, schedule: scheduleSaid(schedule), lastsMin };
    await appendRecords(tx, siteId, [{ kind: 'state-timed', body }], at);
  });
  return ok({ site, system });
}

/** Has it begin by the clock no more. */
export async function endTimedState(who: Who, request: EndTimedRequest): Promise<Done> {
  const { site, system, timed } = request;
  const allowed = await siteFor(who, 'describe', site);
  if (!allowed.ok) return allowed;
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const siteId = allowed.value.id;
  const at = now();
  return await inTransaction(async (tx): Promise<Done> => {
    if (!(await endTimed(tx, siteId, timed, who.id, at))) return refused({ why: 'not-found', what: 'state' });
    const body = { by: who.id, system: place.value.systemId, timed };
    await appendRecords(tx, siteId, [{ kind: 'state-untimed', body }], at);
    return ok({ site, system });
  });
}
