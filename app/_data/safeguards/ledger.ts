import 'server-only';
import { database } from '../client';
import { asDate, asDay } from '../day';
import { ERASED } from '../facility/names';
import type { Transaction } from '../transaction';

/** What a ledger of tests gains. */
export interface NewTest {
  id: string;
  safeguardId: string;
  /** ISO date. */
  on: string;
  result: 'worked' | 'failed' | 'withdrawn';
  /** Id of the name of who looked. */
  byId: string | null;
  steps?: string;
  expected?: string;
  seen?: string;
  /** Id of the test that no longer stands, and why. */
  withdraws?: string;
  reason?: string;
}

/** One test of a safeguard, and its withdrawal if it no longer stands. */
export interface LedgerEntry {
  id: string;
  on: string;
  result: string;
  /** Who looked. */
  by: string | null;
  steps: string | null;
  expected: string | null;
  seen: string | null;
  recordedAt: Date;
  /** Account, or `local`. */
  recordedBy: string | null;
  withdrawn: { at: Date; by: string | null; reason: string | null } | null;
}

/** Adds one row to the ledger. @param by account that records it, or `local` */
export async function addTest(tx: Transaction, siteId: string, test: NewTest, at: Date, by: string): Promise<void> {
  const { on, ...row } = test;
  await tx.safeguardTest.create({ data: { siteId, ...row, testedOn: asDate(on), recordedAt: at, recordedBy: by } });
}

/** A row of the ledger by its id; null when there is none. */
export async function findTest(
  tx: Transaction,
  siteId: string,
  id: string,
): Promise<{ safeguardId: string; on: string; byId: string | null; recordedBy: string | null } | null> {
  const row = await tx.safeguardTest.findUnique({ where: { siteId_id: { siteId, id } } });
  if (!row) return null;
  const { safeguardId, testedOn, byId, recordedBy } = row;
  return { safeguardId, on: asDay(testedOn), byId, recordedBy };
}

/** Every test that was ever recorded of a safeguard, the latest day first. */
export async function ledgerOf(siteId: string, safeguardId: string): Promise<LedgerEntry[]> {
  const rows = await database().safeguardTest.findMany({
    where: { siteId, safeguardId, withdraws: null },
    include: { by: true, withdrawnBy: true },
    orderBy: [{ testedOn: 'desc' }, { recordedAt: 'desc' }, { id: 'desc' }],
  });
  return rows.map(({ by, withdrawnBy: [end], testedOn, ...row }) => ({
    id: row.id,
    on: asDay(testedOn),
    result: row.result,
    by: by && (by.name ?? ERASED),
    steps: row.steps,
    expected: row.expected,
    seen: row.seen,
    recordedAt: row.recordedAt,
    recordedBy: row.recordedBy,
    withdrawn: end ? { at: end.recordedAt, by: end.recordedBy, reason: end.reason } : null,
  }));
}
