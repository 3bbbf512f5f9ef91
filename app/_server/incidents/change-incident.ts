import 'server-only';
import type { Entry } from '#core/incidents/incident';
import { ok, refused, type Result } from '#core/result';
import { addEntry, entriesOf } from '#data/incidents/entries';
import { findIncident, type IncidentRow } from '#data/incidents/incidents';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { holdSite, type SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import type { IncidentPlace } from '#shape/incidents/place';
import { now } from '../clock';
import type { Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { recordOf } from './record-of';

/** An incident held by a transaction, with its entries as they stand, and when that is. */
export interface Held {
  tx: Transaction;
  site: SiteEntry;
  incident: IncidentRow;
  entries: Entry[];
  at: Date;
}

/** What adding to an incident answers: where it is. */
export type Changed = Result<Pick<IncidentPlace, 'site' | 'number'>, Refusal>;

/**
 * Adds to an incident. The entry, its line in the record and the news of it are kept together or not at all; two who add to
 * incidents of one site wait for one another.
 *
 * @param verb   what it takes to be allowed
 * @param work   makes the entry; answers null when it is there already
 */
export async function changeIncident(
  who: Who,
  verb: Verb,
  { site: key, number }: IncidentPlace,
  work: (held: Held) => Promise<Result<Entry | null, Refusal>>,
): Promise<Changed> {
  const found = await siteFor(who, verb, key);
  if (!found.ok) return found;
  const site = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    await holdSite(tx, site, at);
    const incident = await findIncident(site.id, number, tx);
    if (!incident) return refused({ why: 'not-found', what: 'incident' });
    const entries = await entriesOf(site.id, incident.id, tx);
    const done = await work({ tx, site, incident, entries, at });
    if (!done.ok) return done;
    if (done.value) await keep({ tx, site, incident, at }, done.value);
    return ok({ site: key, number });
  });
}

/** Keeps an entry, with its line in the record. */
export async function keep({ tx, site, incident, at }: Omit<Held, 'entries'>, entry: Entry): Promise<void> {
  await addEntry(tx, site.id, incident.id, entry);
  await appendRecords(tx, site.id, [recordOf(incident.number, entry)], at);
  await news(tx, site.id, 'incidents');
}
