import 'server-only';
import { asDate } from '../day';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';
import type { TestForm } from './form';
import { ERASED } from './names';

/** A row that the ledger of tests gained. */
export interface LedgerRow {
  id: string;
  safeguardId: string;
  on: string;
  result: 'worked' | 'failed' | 'withdrawn';
  /** Id of the name of who looked. */
  byId: string | null;
  /** Id of the test that no longer stands. */
  withdraws: string | null;
  /** What was done, what should have happened, what was seen. */
  steps: string | null;
  expected: string | null;
  seen: string | null;
}

/** What the ledger must gain for a safeguard's tests to be as the file has them. */
export interface LedgerChange {
  /** Ids of the tests that count, in the order of the file. */
  tests: string[];
  rows: LedgerRow[];
}

interface Counted {
  id: string;
  on: string;
  result: 'worked' | 'failed';
  by: string | null;
  byId: string | null;
  steps: string | null;
  expected: string | null;
  seen: string | null;
}

/** A withdrawal says nothing of its own about the test. */
const UNSAID = { steps: null, expected: null, seen: null };

/** Tests that count today, by safeguard. */
export async function findCountedTests(tx: Transaction, siteId: string): Promise<ReadonlyMap<string, Counted[]>> {
  const rows = await tx.$queryRaw<(Counted & { safeguardId: string })[]>`
    SELECT t.id, t.safeguard_id AS "safeguardId", to_char(t.tested_on, 'YYYY-MM-DD') AS on, t.result,
           CASE WHEN t.by_id IS NOT NULL THEN coalesce(n.name, ${ERASED}) END AS by, t.by_id AS "byId",
           t.steps, t.expected, t.seen
      FROM safeguard g
      JOIN safeguard_test t ON t.site_id = g.site_id AND t.safeguard_id = g.id AND t.id = ANY (g.tests)
      LEFT JOIN person_name n ON n.site_id = t.site_id AND n.id = t.by_id
     WHERE g.site_id = ${siteId}::uuid AND g.retired_at IS NULL`;
  const bySafeguard = new Map<string, Counted[]>();
  for (const { safeguardId, ...test } of rows) {
    bySafeguard.set(safeguardId, [...(bySafeguard.get(safeguardId) ?? []), test]);
  }
  return bySafeguard;
}

/**
 * What a ledger must gain: a row for each test that is new, and one that withdraws each that no longer stands.
 *
 * @param counted   tests that count so far
 * @param wanted    tests as the file has them
 * @param nameIds   ids of the names of persons
 */
export function changeLedger(
  safeguardId: string,
  counted: readonly Counted[],
  wanted: readonly TestForm[],
  nameIds: ReadonlyMap<string, string>,
): LedgerChange {
  const left = [...counted];
  const rows: LedgerRow[] = [];
  const tests = wanted.map(({ by = null, steps = null, expected = null, seen = null, ...day }) => {
    const said = { ...day, steps, expected, seen };
    const at = left.findIndex((test) => test.by === by && isSame(test, said));
    const [kept] = at < 0 ? [] : left.splice(at, 1);
    if (kept) return kept.id;
    const id = newId();
    rows.push({ id, safeguardId, ...said, byId: by === null ? null : (nameIds.get(by) ?? null), withdraws: null });
    return id;
  });
  for (const { id, on, byId } of left) {
    rows.push({ id: newId(), safeguardId, on, result: 'withdrawn', byId, withdraws: id, ...UNSAID });
  }
  return { tests, rows };
}

type Said = Pick<Counted, 'on' | 'result' | 'steps' | 'expected' | 'seen'>;

function isSame(a: Said, b: Said): boolean {
  return (
    a.on === b.on && a.result === b.result && a.steps === b.steps && a.expected === b.expected && a.seen === b.seen
  );
}

/**
 * Adds rows to the ledger.
 *
 * @param by   account that records them, or `local`; null when it is not known
 */
export async function addToLedger(
  tx: Transaction,
  siteId: string,
  rows: readonly LedgerRow[],
  at: Date,
  by: string | null,
): Promise<void> {
  const data = rows.map(({ on, ...row }) => ({ siteId, ...row, testedOn: asDate(on), recordedAt: at, recordedBy: by }));
  await tx.safeguardTest.createMany({ data });
}
