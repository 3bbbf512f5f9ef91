import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Column } from '#core/plans/credit';
import { ok, type Result, refused } from '#core/result';
import { type Context, contextOf } from '#core/review/context';
import { judge } from '#core/review/judge';
import type { FaultCase } from '#core/review/result';
import { subjectsOf } from '#core/review/subjects';
import type { CaseTrajectory } from '#core/review/trajectory';
import { trajectoryOf } from '#core/review/trajectory-of';
import type { Subject } from '#core/review/trial';
import { findReview } from '#data/reviews/results';
import { casePlace } from '#shape/reviews/case-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPlace, type Place } from './find-place';
import { isCurrent } from './review-state';

/** One fault case, judged, with its course in both columns. */
export interface CasePage {
  facility: Facility;
  system: System;
  /** The day on which tests are judged, ISO date. */
  today: string;
  case: FaultCase;
  /** Null when the case is not assessed: then there is nothing to draw. */
  trajectories: Record<Column, CaseTrajectory> | null;
}

export const getCaseShape = casePlace;

/** One fault case. Its course is computed now; its judgement is the stored one while that still holds, else computed too. */
export async function getCase(who: Who, asked: z.output<typeof getCaseShape>): Promise<Result<CasePage, Refusal>> {
  const place = await findPlace(who, asked.site, asked.system);
  if (!place.ok) return place;
  const { stored, system, on } = place.value;
  const seen = stored.reviewed.systems.find(({ key }) => key === system.key) ?? system;
  const subject = subjectsOf(stored.reviewed, seen).find((one) => nameOf(one) === asked.case);
  if (!subject) return refused({ why: 'not-found', what: 'fault case' });
  const context = contextOf(stored.reviewed, seen, on);
  const found = (await storedCase(place.value, asked.case)) ?? judge(context, subject);
  return ok({
    facility: stored.facility,
    system,
    today: on,
    case: found,
    trajectories: trajectories(context, subject, found),
  });
}

function trajectories(context: Context, subject: Subject, found: FaultCase): CasePage['trajectories'] {
  if (found.claimed.verdict === 'not-assessed') return null;
  const inColumn = (column: Column) => trajectoryOf(context, subject, found, column);
  return { claimed: inColumn('claimed'), tested: inColumn('tested') };
}

/** The name under which a review speaks of a subject. */
function nameOf({ fault, thing, state }: Subject): string {
  return `${fault.id}:${thing.key}:${state}`;
}

async function storedCase({ entry, stored, system, systemId }: Place, id: string): Promise<FaultCase | undefined> {
  const held = await findReview(entry.id, systemId);
  if (!isCurrent(held, stored.hashes.get(system.key))) return undefined;
  return held?.review?.cases.find((one) => one.id === id);
}
