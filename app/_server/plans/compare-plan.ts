import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import type { Facility } from '#core/facility/facility';
import type { SystemReview } from '#core/review/result';
import { type ReviewDifference, reviewDifference } from '#core/review/review-difference';
import { isOf } from '#core/review/review-system';
import { listVersions } from '#data/plans/versions';
import { versionPlace } from '#shape/plans/plan-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { logError } from '../log';
import type { Compute } from '../reviews/compute';
import { currentReview } from '../reviews/current-review';
import { NOT_COMPUTED, reviewAsStored, reviewAtOnce } from '../reviews/review-at-once';
import type { StoredSite } from '../reviews/stored-site';
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
  asked: z.output<typeof comparePlanShape>,
  compute?: Compute,
): Promise<Result<ReviewDifference, Refusal>> {
  return await compared(who, asked, async ({ siteId, stored, changed, system, on }) => {
    const before = await reviewAsStored({ siteId, stored, system, on }, { compute });
    return reviewDifference(before, await reviewAtOnce({ facility: changed, system, on }, { compute }));
  });
}

/**
 * The same of the faults that befall the piece of equipment itself, which is there long before the rest.
 *
 * @param compute   computes a review; in a thread of its own when left out
 */
export async function comparePiece(
  who: Who,
  asked: z.output<typeof comparePlanShape>,
  compute?: Compute,
): Promise<Result<ReviewDifference, Refusal>> {
  const { equipment: piece } = asked;
  return await compared(who, asked, async ({ siteId, stored, changed, system, on }) => {
    const held = await currentReview(siteId, stored, system);
    const before = held ?? (await reviewAtOnce({ facility: stored.reviewed, system, on, piece }, { compute }));
    const after = await reviewAtOnce({ facility: changed, system, on, piece }, { compute });
    return reviewDifference(ownOf(before, piece), ownOf(after, piece));
  });
}

/** Of a review what befalls one piece of equipment. */
function ownOf(review: SystemReview, piece: string): SystemReview {
  return { ...review, cases: review.cases.filter(({ thing }) => isOf(piece, thing)), findings: [] };
}

/** A site as it is and as it would be, and which system of it is looked at. */
interface Sides {
  siteId: string;
  stored: StoredSite;
  changed: Facility;
  system: string;
  on: string;
}

async function compared(
  who: Who,
  { version, ...address }: z.output<typeof comparePlanShape>,
  difference: (sides: Sides) => Promise<ReviewDifference>,
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
    return ok(await difference({ siteId: entry.id, stored, changed, system, on }));
  } catch (error) {
    // A plan can be submitted and put into force all the same: the page says that this is not known.
    logError('what a plan makes of a review', error, { site: entry.key, system });
    return refused(NOT_COMPUTED);
  }
}
