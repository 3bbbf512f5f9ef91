import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result, refused } from '#core/result';
import type { SystemReview } from '#core/review/result';
import { type ReviewDifference, reviewDifference } from '#core/review/review-difference';
import { listVersions } from '#data/plans/versions';
import { findReview } from '#data/reviews/results';
import { versionPlace } from '#shape/plans/plan-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { logError } from '../log';
import { type Compute, computeApart } from '../reviews/compute';
import { inputHash } from '../reviews/input-hash';
import { isCurrent } from '../reviews/review-state';
import { findPiece, type Piece } from './find-piece';
import { misfits, withPlan } from './with-plan';

export const comparePlanShape = versionPlace;

/** ms that computing a review may take; a system of twelve tanks takes a few seconds. */
const LONGEST_MS = 60_000;
/** Reviews kept in memory by what they depend on: a page that is looked at again does not compute again. */
const MOST = 24;
const kept = new Map<string, Promise<SystemReview>>();

/**
 * What the review would say with a version of a plan in force, beside what it says now.
 *
 * @param compute   computes a review; in a thread of its own when left out
 */
export async function comparePlan(
  who: Who,
  { version, ...address }: z.output<typeof comparePlanShape>,
  compute: Compute = computeApart,
): Promise<Result<ReviewDifference, Refusal>> {
  const piece = await findPiece(who, address);
  if (!piece.ok) return piece;
  const { entry, stored, equipmentId } = piece.value;
  if (!may(who, 'write-plan', entry.key)) return refused({ why: 'not-allowed' });
  const found = (await listVersions(entry.id, equipmentId)).find((one) => one.version === version);
  if (!found) return refused({ why: 'not-found', what: 'version' });
  const faults = misfits(stored.facility, address.system, address.equipment, found.plan);
  if (faults.length > 0) return refused({ why: 'invalid', faults });
  const changed = withPlan(stored.facility, address.system, address.equipment, found.plan);
  try {
    const [before, after] = await Promise.all([
      reviewAsItIs(piece.value, compute),
      reviewOf(changed, address.system, piece.value.on, compute),
    ]);
    return ok(reviewDifference(before, after));
  } catch (error) {
    // A plan can be submitted and put into force all the same: the page says that this is not known.
    logError('what a plan makes of a review', error, { site: entry.key, system: address.system });
    return refused({ why: 'conflict', now: 'Computing it broke or took too long; the reason is in the log.' });
  }
}

/** The stored review if it is of what is stored now, else one computed anew. */
async function reviewAsItIs({ entry, stored, system, systemId, on }: Piece, compute: Compute): Promise<SystemReview> {
  const held = await findReview(entry.id, systemId);
  if (held?.review && isCurrent(held, stored.hashes.get(system.key))) return held.review;
  return await reviewOf(stored.facility, system.key, on, compute);
}

async function reviewOf(facility: Facility, key: string, on: string, compute: Compute): Promise<SystemReview> {
  const system = facility.systems.find((one) => one.key === key);
  if (!system) throw new Error(`No system "${key}" to review`);
  const hash = inputHash(facility, system, on);
  const known = kept.get(hash);
  if (known) return await known;
  const asked = compute({ facility, system: key, on }, () => undefined, AbortSignal.timeout(LONGEST_MS));
  kept.set(hash, asked);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  try {
    return await asked;
  } catch (error) {
    kept.delete(hash);
    throw error;
  }
}
