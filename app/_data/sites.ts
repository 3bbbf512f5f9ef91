import 'server-only';
import { database } from './client';
import { newId } from './new-id';
import type { Transaction } from './transaction';

/** A site as it stands in the register. */
export interface SiteEntry {
  id: string;
  key: string;
  name: string;
  /** IANA zone. */
  zone: string;
  /** Imports that changed it so far, 1 or more. */
  revision: number;
  /** When what its people do was last measured and found to be otherwise; null: never. */
  measuredAt: Date | null;
}

const ENTRY = { id: true, key: true, name: true, zone: true, revision: true, measuredAt: true } as const;
/** A site that was registered and not yet described, in the transaction that does both, is not there for others. */
const DESCRIBED = { revision: { gt: 0 } };

/** Every site, by name. */
export async function listSites(): Promise<SiteEntry[]> {
  return await database().site.findMany({
    select: ENTRY,
    where: DESCRIBED,
    orderBy: [{ name: 'asc' }, { key: 'asc' }],
  });
}

/**
 * Every site that has a record, by name: also one that is said not to be described, for the number that says so can be set
 * back by whoever reaches the database, and its record is not to vanish with it.
 */
export async function listRecordedSites(): Promise<SiteEntry[]> {
  return await database().site.findMany({
    select: ENTRY,
    where: { OR: [DESCRIBED, { records: { some: {} } }] },
    orderBy: [{ name: 'asc' }, { key: 'asc' }],
  });
}

/** The site with this key; null when there is none. */
export async function findSite(key: string): Promise<SiteEntry | null> {
  return await database().site.findFirst({ select: ENTRY, where: { key, ...DESCRIBED } });
}

/** The site with this id; null when there is none. */
export async function findSiteById(siteId: string): Promise<SiteEntry | null> {
  return await database().site.findFirst({ select: ENTRY, where: { id: siteId, ...DESCRIBED } });
}

/** Keys of the sites of the demonstration. */
export async function listDemoSites(): Promise<string[]> {
  const found = await database().site.findMany({ where: { isDemo: true, ...DESCRIBED }, select: { key: true } });
  return found.map(({ key }) => key);
}

/**
 * Holds the site with this key until the transaction ends, registering it first when it is new. Whoever comes second
 * waits, and then sees what the first has done.
 *
 * @param site   how it is to be registered
 * @param at     the instant
 * @returns      its id, and its revision, which is 0 when it is new
 */
export async function holdSite(
  tx: Transaction,
  site: { key: string; name: string; zone: string; isDemo?: boolean },
  at: Date,
): Promise<{ id: string; revision: number }> {
  await tx.$executeRaw`
    INSERT INTO site (id, key, name, zone, revision, detail, created_at, is_demo)
    VALUES (${newId()}::uuid, ${site.key}, ${site.name}, ${site.zone}, 0, '{}', ${at.toISOString()}::timestamptz,
            ${site.isDemo ?? false})
        ON CONFLICT (key) DO NOTHING`;
  const [held] = await tx.$queryRaw<{ id: string; revision: number }[]>`
    SELECT id, revision FROM site WHERE key = ${site.key} FOR NO KEY UPDATE`;
  if (!held) throw new Error(`Site ${site.key} was registered and is gone`);
  return held;
}

/** Counts one more import that changed the site. @returns the new revision */
export async function countRevision(tx: Transaction, siteId: string): Promise<number> {
  const { revision } = await tx.site.update({ where: { id: siteId }, data: { revision: { increment: 1 } } });
  return revision;
}
