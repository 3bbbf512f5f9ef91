import 'server-only';
import type { Facility } from '#core/facility/facility';
import { ok, type Result, refused } from '#core/result';
import { loadFacility } from '#data/facility/load-facility';
import { listVersions, type StoredVersion } from '#data/plans/versions';
import type { RecordEntry } from '#data/records/seal';
import { appendRecords } from '#data/records/append-records';
import { holdSite } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { now } from '../clock';
import { may, type Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPiece, type Piece, type PieceAddress } from './find-piece';

/** What a change of a plan has before it, the site being held so that nobody else changes anything meanwhile. */
export interface Held extends Piece {
  tx: Transaction;
  at: Date;
  facility: Facility;
  /** All versions of the plan, the latest first. */
  versions: StoredVersion[];
}

/** What a change of a plan did: its entries in the record, and the version it is about. */
export interface Changed {
  entries: RecordEntry[];
  version: number;
}

/** What became of a plan: whose it is, and the version it is about. */
export interface PlanChanged extends PieceAddress {
  version: number;
}

/**
 * Changes a plan for somebody who may: the change and its entries in the record are kept together.
 *
 * @param verb     what they must be allowed to do
 * @param change   does it; a refusal keeps nothing
 */
export async function changePlan(
  who: Who,
  verb: Verb,
  address: PieceAddress,
  change: (held: Held) => Promise<Result<Changed, Refusal>>,
): Promise<Result<PlanChanged, Refusal>> {
  const piece = await findPiece(who, address);
  if (!piece.ok) return piece;
  const { entry, equipmentId } = piece.value;
  if (!may(who, verb, entry.key)) return refused({ why: 'not-allowed' });
  return await inTransaction(async (tx) => {
    const at = now();
    await holdSite(tx, entry, at);
    const loaded = await loadFacility(entry.id, tx);
    if (!loaded) return refused({ why: 'not-found', what: 'site' });
    const versions = await listVersions(entry.id, equipmentId, tx);
    const done = await change({ ...piece.value, tx, at, facility: loaded.facility, versions });
    if (!done.ok) return done;
    await appendRecords(tx, entry.id, done.value.entries, at);
    const { site, system, equipment } = address;
    return ok({ site, system, equipment, version: done.value.version });
  });
}

/**
 * The version of a plan that somebody means, if it still is what they take it for.
 *
 * @returns   the version, or what it has become in words
 */
export function still(
  versions: readonly StoredVersion[],
  version: number,
  status: StoredVersion['status'],
): Result<StoredVersion, Refusal> {
  const found = versions.find((one) => one.version === version);
  if (!found) return refused({ why: 'not-found', what: 'version' });
  if (found.status === status) return ok(found);
  return refused({ why: 'conflict', now: `Version ${version} ${STATUS_SAID[found.status]} meanwhile.` });
}

const STATUS_SAID: Record<StoredVersion['status'], string> = {
  draft: 'is a draft',
  submitted: 'was submitted',
  'in-force': 'was put into force',
  superseded: 'was in force and has been superseded',
  withdrawn: 'was withdrawn or sent back',
};
