import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { type ReviewDifference, reviewDifference } from '#core/review/review-difference';
import { listVersions } from '#data/plans/versions';
import { versionPlace } from '#shape/plans/plan-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { logError } from '../log';
import type { Compute } from '../reviews/compute';
import { NOT_COMPUTED, reviewAsStored, reviewAtOnce } from '../reviews/review-at-once';
import { findPiece } from './find-piece';
import { misfits, withPlan } from './with-plan';

export const comparePlanShape = versionPlace;

/**
 * What the review would say with a version of a plan in force, beside what it says now.
 *
 * @param compute   computes a review; in a thread of its own when left out
 */
export async function comparePlan(
  who: Who,
  { version, ...address }: z.output<typeof comparePlanShape>,
  compute?: Compute,
): Promise<Result<ReviewDifference, Refusal>> {
  const piece = await findPiece(who, address);
  if (!piece.ok) return piece;
  const { entry, stored, equipmentId, on } = piece.value;
  const { system, equipment } = address;
  if (!may(who, 'write-plan', entry.key)) return refused({ why: 'not-allowed' });
  const found = (await listVersions(entry.id, equipmentId)).find((one) => one.version === version);
  if (!found) return refused({ why: 'not-found', what: 'version' });
  const faults = misfits(stored.facility, system, equipment, found.plan);
  if (faults.length > 0) return refused({ why: 'invalid', faults });
  const changed = withPlan(stored.facility, system, equipment, found.plan);
  try {
    const before = await reviewAsStored({ siteId: entry.id, stored, system, on }, { compute });
    const after = await reviewAtOnce({ facility: changed, system, on }, { compute });
    return ok(reviewDifference(before, after));
  } catch (error) {
    // A plan can be submitted and put into force all the same: the page says that this is not known.
    logError('what a plan makes of a review', error, { site: entry.key, system });
    return refused(NOT_COMPUTED);
  }
}
