import 'server-only';
import { createHash } from 'node:crypto';
import { groupBy } from '#core/group-by';
import type { Entry, EntryKind } from '#core/incidents/incident';
import { byRecorded } from '#core/incidents/story';
import { readBody, WITHDRAWN } from '#shape/incidents/bodies';
import type { Prisma } from '../../../prisma/generated/client';
import { canonicalText } from '../canonical';
import { database } from '../client';
import type { Transaction } from '../transaction';

interface Row {
  id: string;
  incidentId: string;
  kind: string;
  at: Date;
  recordedAt: Date;
  by: string;
  body: Prisma.JsonValue;
  supersedes: string | null;
  reason: string | null;
}

/** Adds an entry to an incident. Its id may be there once; what it supersedes must be an entry of the same incident. */
export async function addEntry(tx: Transaction, siteId: string, incidentId: string, entry: Entry): Promise<void> {
  const { id, kind, atMs, recordedMs, by, body, supersedes, reason } = entry;
  await tx.incidentEntry.create({
    data: {
      siteId,
      id,
      incidentId,
      kind,
      at: new Date(atMs),
      recordedAt: new Date(recordedMs),
      by,
      body: JSON.parse(JSON.stringify(body ?? WITHDRAWN)),
      supersedes,
      reason,
    },
  });
}

/**
 * Every entry of an incident, in the order in which it was written down.
 *
 * @throws ZodError when one of them is no entry of its kind
 */
export async function entriesOf(
  siteId: string,
  incidentId: string,
  asker: Pick<Transaction, 'incidentEntry'> = database(),
): Promise<Entry[]> {
  const rows = await asker.incidentEntry.findMany({ where: { siteId, incidentId } });
  return rows.map(asEntry).sort(byRecorded);
}

/** Whether an entry with this id is there, of whichever incident of the site. */
export async function isEntryElsewhere(tx: Transaction, siteId: string, id: string): Promise<boolean> {
  return (await tx.incidentEntry.findUnique({ where: { siteId_id: { siteId, id } }, select: { id: true } })) !== null;
}

/** The entries of every incident of a site, by the id of the incident. */
export async function entriesOfSite(siteId: string): Promise<ReadonlyMap<string, Entry[]>> {
  const rows = await database().incidentEntry.findMany({ where: { siteId } });
  const byIncident = groupBy(rows, ({ incidentId }) => incidentId);
  return new Map([...byIncident].map(([id, own]) => [id, own.map(asEntry)]));
}

/**
 * The one digest of all that entries say, signatures aside: SHA-256, 64 hexadecimal digits. What a signature covers.
 *
 * @param incident   number and title, which are signed as well
 */
export function digestOf(incident: { number: number; title: string }, entries: readonly Entry[]): string {
  const signed = entries.filter(({ kind }) => kind !== 'signature').sort(byRecorded);
  const text = canonicalText([incident.number, incident.title, signed]);
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** The digest of one entry, as the record of the site holds it. */
export function entryDigest(entry: Entry): string {
  return createHash('sha256').update(canonicalText(entry), 'utf8').digest('hex');
}

function asEntry({ incidentId: _, at, recordedAt, body, ...row }: Row): Entry {
  const kind = row.kind as EntryKind;
  const { id, by, supersedes, reason } = row;
  const read = { id, kind, atMs: at.getTime(), recordedMs: recordedAt.getTime(), by, supersedes, reason };
  return { ...read, body: readBody(kind, body) } as Entry;
}
