import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** An incident as it is opened. */
export interface NewIncident {
  id: string;
  title: string;
  /** Null for the whole site. */
  systemId: string | null;
  occurrenceId: string | null;
  openedAt: Date;
  /** Account, or `local`. */
  openedBy: string;
}

/** An incident of a site. */
export interface IncidentRow extends NewIncident {
  /** Counted from 1 at each site, without a gap. */
  number: number;
  system: { key: string; name: string } | null;
}

const SHOWN = { include: { system: { select: { key: true, name: true } } } } as const;

/**
 * Opens an incident. The site must be held by the transaction: its number is the next one, and two who open at once must
 * not get the same.
 *
 * @returns   its number, and whether it is new: one that was opened before keeps the number it has
 */
export async function addIncident(
  tx: Transaction,
  siteId: string,
  incident: NewIncident,
): Promise<{ number: number; isNew: boolean }> {
  const had = await tx.incident.findUnique({ where: { siteId_id: { siteId, id: incident.id } } });
  if (had) return { number: had.number, isNew: false };
  const { _max } = await tx.incident.aggregate({ where: { siteId }, _max: { number: true } });
  const number = (_max.number ?? 0) + 1;
  await tx.incident.create({ data: { siteId, number, ...incident } });
  return { number, isNew: true };
}

/** The incident of a site with this number; null when there is none. */
export async function findIncident(
  siteId: string,
  number: number,
  asker: Pick<Transaction, 'incident'> = database(),
): Promise<IncidentRow | null> {
  return await asker.incident.findUnique({ where: { siteId_number: { siteId, number } }, ...SHOWN });
}

/** Every incident of a site, the newest first. */
export async function listIncidentRows(siteId: string): Promise<IncidentRow[]> {
  return await database().incident.findMany({ where: { siteId }, orderBy: { number: 'desc' }, ...SHOWN });
}
