import 'server-only';
import type { Entry } from '#core/incidents/incident';
import { ok, refused, type Result } from '#core/result';
import { addIncident, type IncidentRow } from '#data/incidents/incidents';
import { findOccurrence } from '#data/incidents/occurrence';
import { findSystemRow } from '#data/incidents/system-row';
import { newId } from '#data/new-id';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { holdSite, type SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { type OpenRequest, openRequest } from '#shape/incidents/place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { type Changed, keep } from './change-incident';
import { momentOf } from './local-time';

export const openIncidentShape = openRequest;

/** Opens an incident: by hand, or from an alarm. Its number is the next one of the site, without a gap. */
export async function openIncident(who: Who, request: OpenRequest): Promise<Changed> {
  const found = await siteFor(who, 'log-incident', request.site);
  if (!found.ok) return found;
  const site = found.value;
  const at = now();
  const began = beganOf(site, request, at);
  if (!began.ok) return began;
  return await inTransaction(async (tx) => {
    await holdSite(tx, site, at);
    const about = await aboutOf(tx, site.id, request);
    if (!about.ok) return about;
    const row = { id: request.entry, title: request.title, ...about.value, openedAt: at, openedBy: who.id };
    const { number, isNew } = await addIncident(tx, site.id, row);
    if (!isNew) return ok({ site: request.site, number });
    const { occurrenceId, systemId } = row;
    const body = { by: who.id, incident: number, id: row.id, system: systemId, alarm: occurrenceId, title: row.title };
    await appendRecords(tx, site.id, [{ kind: 'incident-opened', body }], at);
    await news(tx, site.id, 'incidents');
    const incident: IncidentRow = { ...row, number, system: null };
    if (began.value) await keep({ tx, site, incident, at }, beganEntry(who, began.value, at));
    return ok({ site: request.site, number });
  });
}

interface Began {
  earliest: number;
  latest: number | undefined;
}

/** When it began, as far as somebody could say; null when nothing was said. */
function beganOf(site: SiteEntry, { began, latest }: OpenRequest, at: Date): Result<Began | null, Refusal> {
  if (began === undefined && latest === undefined) return ok(null);
  const first = momentOf(site.zone, began ?? latest, 'began', at);
  if (!first.ok) return first;
  if (latest === undefined) return ok({ earliest: first.value, latest: undefined });
  const last = momentOf(site.zone, latest, 'latest', at);
  if (!last.ok) return last;
  if (last.value < first.value)
    return refused({ why: 'invalid', faults: [{ path: 'latest', message: 'must not be before the earliest' }] });
  return ok({ earliest: first.value, latest: last.value });
}

/** The system it is about, and the alarm it was opened from. An alarm brings its system with it. */
async function aboutOf(
  tx: Transaction,
  siteId: string,
  { alarm, system }: OpenRequest,
): Promise<Result<{ systemId: string | null; occurrenceId: string | null }, Refusal>> {
  const occurrence = alarm === undefined ? null : await findOccurrence(siteId, alarm, tx);
  if (alarm !== undefined && !occurrence) return refused({ why: 'not-found', what: 'alarm' });
  const occurrenceId = occurrence?.id ?? null;
  if (system === undefined) return ok({ systemId: null, occurrenceId });
  const found = await findSystemRow(siteId, system, tx);
  return found ? ok({ systemId: found.id, occurrenceId }) : refused({ why: 'not-found', what: 'system' });
}

function beganEntry(who: Who, { earliest, latest }: Began, at: Date): Entry {
  return {
    id: newId(),
    kind: 'mark',
    atMs: earliest,
    recordedMs: at.getTime(),
    by: who.id,
    body: { mark: 'fault-began', latest, source: 'witness', note: 'As far as known when it was opened' },
    supersedes: null,
    reason: null,
  };
}
