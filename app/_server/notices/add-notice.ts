import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { instantOf } from '#core/time/zone';
import { addNotice, endNotice, findNotice } from '#data/notices/notices';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import {
  type EndNoticeRequest,
  endNoticeRequest,
  type NoticeRequest,
  noticeRequest,
} from '#shape/handover/notice-request';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

export const addNoticeShape = noticeRequest;
export const endNoticeShape = endNoticeRequest;

type Done = Result<{ site: string }, Refusal>;

/** Gives notice of work by others: whom it reaches, what to do, from when to when. It ends by its time. */
export async function addNoticeOf(who: Who, request: NoticeRequest): Promise<Done> {
  const { site, entry: id, kind, what, system, todo } = request;
  const found = await findStoredSite(who, 'set-state', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  if (system !== undefined && !stored.systemIds.has(system)) return refused({ why: 'not-found', what: 'system' });
  const from = instantIn(entry.zone, request.from);
  const until = instantIn(entry.zone, request.until);
  const at = now();
  if (from === null || until === null || until <= at)
    return refused({
      why: 'invalid',
      faults: [{ path: 'until', message: 'must be still to come, by the clock of the site' }],
    });
  return await inTransaction(async (tx): Promise<Done> => {
    const before = await findNotice(tx, entry.id, id);
    if (before?.by === who.id) return ok({ site });
    if (before) return refused({ why: 'not-found', what: 'notice' });
    const systems = system === undefined ? [] : [system];
    await addNotice(tx, entry.id, { id, kind, what, systems, todo, from, until, at, by: who.id });
    const times = { from: from.toISOString(), until: until.toISOString() };
    const body = { by: who.id, notice: id, work: kind, what, systems, todo, ...times };
    await appendRecords(tx, entry.id, [{ kind: 'notice-added', body }], at);
    await news(tx, entry.id, 'states');
    return ok({ site });
  });
}

/** Says that work by others is over before its time. */
export async function endNoticeOf(who: Who, { site, notice, note = '' }: EndNoticeRequest): Promise<Done> {
  const found = await findStoredSite(who, 'set-state', site);
  if (!found.ok) return found;
  const siteId = found.value.entry.id;
  const at = now();
  return await inTransaction(async (tx): Promise<Done> => {
    await tx.$queryRaw`SELECT 1 FROM site WHERE id = ${siteId}::uuid FOR NO KEY UPDATE`;
    const before = await findNotice(tx, siteId, notice);
    if (!before) return refused({ why: 'not-found', what: 'notice' });
    if (before.endedBy === who.id) return ok({ site });
    if (before.endedBy !== null) return refused({ why: 'conflict', now: 'Somebody else has said so already.' });
    await endNotice(tx, siteId, notice, { at, by: who.id, note: note || null });
    const body = { by: who.id, notice, what: before.what, ...(note && { note }) };
    await appendRecords(tx, siteId, [{ kind: 'notice-ended', body }], at);
    await news(tx, siteId, 'states');
    return ok({ site });
  });
}

/** A local time of a zone; the first of two in autumn, put off by the leap in spring. Null for a day that there is not. */
function instantIn(zone: string, local: string): Date | null {
  try {
    return new Date(instantOf(zone, local.slice(0, 10), local.slice(11, 16)));
  } catch {
    return null;
  }
}
