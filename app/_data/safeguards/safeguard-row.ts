import 'server-only';
import type { Prisma } from '../../../prisma/generated/client';
import type { Transaction } from '../transaction';

/** Out of service: why and from when to when, ISO dates. */
export interface OffPeriod {
  why: string;
  since: string;
  until: string;
}

/** A safeguard as it stands in its table. */
export interface SafeguardRow {
  id: string;
  name: string;
  /** Ids of the tests that count, in order. */
  tests: string[];
  off: OffPeriod | null;
  /** What else is described of it. */
  rest: Record<string, unknown>;
}

/**
 * The living safeguard of a site with this key.
 *
 * @param system   key of its system; null for one of the site itself
 * @returns        null when there is none
 */
export async function findSafeguard(
  tx: Transaction,
  siteId: string,
  system: string | null,
  key: string,
): Promise<SafeguardRow | null> {
  const owner = system === null ? { systemId: null } : { system: { key: system, retiredAt: null } };
  const row = await tx.safeguard.findFirst({ where: { siteId, key, retiredAt: null, ...owner } });
  if (!row) return null;
  const { off = null, ...rest } = row.detail as { off?: OffPeriod };
  return { id: row.id, name: row.name, tests: row.tests, off, rest };
}

/** Has a safeguard count these tests, in this order. */
export async function setCountedTests(tx: Transaction, siteId: string, id: string, tests: string[]): Promise<void> {
  await tx.safeguard.update({ where: { siteId_id: { siteId, id } }, data: { tests } });
}

/**
 * Takes a safeguard out of service, or puts it back.
 *
 * @param off         why and how long; null when it is back
 * @param offById     id of the name of whose it is to put it back
 */
export async function setOff(
  tx: Transaction,
  siteId: string,
  { id, rest }: SafeguardRow,
  { off, offById }: { off: OffPeriod; offById: string } | { off: null; offById: null },
): Promise<void> {
  const detail = (off ? { ...rest, off: { ...off } } : rest) as Prisma.InputJsonObject;
  await tx.safeguard.update({ where: { siteId_id: { siteId, id } }, data: { detail, offById } });
}
