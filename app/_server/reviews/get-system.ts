import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { ok, type Result } from '#core/result';
import type { Finding, SystemReview } from '#core/review/result';
import type { UsedRate } from '#core/rounds/rate';
import type { UsedLine } from '#core/rounds/used-lines';
import { firstFix, type FirstFix } from '#core/review/first-fix';
import { heldStudy } from '#core/review/study';
import { siteFindings } from '#core/review/review-facility';
import { findReview } from '#data/reviews/results';
import { listReviewStates } from '#data/reviews/states';
import { listRuns } from '#data/reviews/runs';
import { systemPlace } from '#shape/reviews/case-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findUse } from '../rounds/find-use';
import { findPlace } from './find-place';
import { studyState } from './get-study';
import { reviewStateOf, type SystemReviewState } from './review-state';

/** One system: what it is and what its review says. */
export interface SystemPage {
  facility: Facility;
  system: System;
  /** The day at the site, ISO date. */
  today: string;
  state: SystemReviewState;
  /** The review that `state` speaks of; while one is under way, the one before the change, if there was any. */
  review: SystemReview | null;
  /** Findings about the site as a whole. */
  siteFindings: Finding[];
  /** The change to make first, by the longer look of now or of before a change; null while there is none. */
  firstFix: FirstFix | null;
  mayDescribe: boolean;
  /** What is used a day, by the rounds: water, doses. */
  use: { line: UsedLine; rate: UsedRate | null }[];
}

export const getSystemShape = systemPlace;

/** One system with its stored review. */
export async function getSystem(
  who: Who,
  { site, system }: z.output<typeof getSystemShape>,
): Promise<Result<SystemPage, Refusal>> {
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const { entry, on, stored, system: found, systemId } = place.value;
  const [states, runs, held, study, use] = await Promise.all([
    listReviewStates([entry.id]),
    listRuns([entry.id]),
    findReview(entry.id, systemId),
    studyState(place.value),
    findUse(entry.id, stored.facility, on, system),
  ]);
  const known = { ...stored, stored: new Map(states.map((state) => [state.systemId, state])), run: runs[0] };
  return ok({
    facility: stored.facility,
    system: found,
    today: on,
    state: reviewStateOf(known, system),
    review: held?.review ?? null,
    siteFindings: siteFindings(stored.reviewed),
    firstFix: firstFix(heldStudy(study)),
    mayDescribe: may(who, 'describe', site),
    use,
  });
}
