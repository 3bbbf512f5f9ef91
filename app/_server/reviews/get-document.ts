import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { ok, type Result } from '#core/result';
import { coursesOfCases } from '#core/review/courses-of-cases';
import { leadingCases } from '#core/review/leading-cases';
import type { Finding, SystemReview } from '#core/review/result';
import { siteFindings } from '#core/review/review-facility';
import type { StudyState } from '#core/review/study';
import type { CaseTrajectory } from '#core/review/trajectory';
import { listKept, type KeptReview } from '#data/reviews/kept';
import { findReview } from '#data/reviews/results';
import { systemPlace } from '#shape/reviews/case-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { coursesOnce } from './courses-kept';
import { findPlace } from './find-place';
import { studyState } from './get-study';
import { isCurrent } from './review-state';

/** Courses that are plotted on the page; those of other cases stand on their own pages. */
const PLOTTED = 3;
/** Kept reviews that are listed. */
const LISTED = 50;

/** The review of a system with all that it is told by. */
export interface ReviewDocument {
  facility: Facility;
  system: System;
  siteFindings: Finding[];
  study: StudyState;
  /** Null when there is none yet, or computing it broke. */
  held: {
    review: SystemReview;
    origin: { computedAt: string; judgedOn: string; engineVersion: string; inputHash: string };
    /** Whether it says what its inputs say now; otherwise one is under way. */
    isCurrent: boolean;
  } | null;
  /** Courses at hand, by id of the fault case. */
  courses: Record<string, CaseTrajectory>;
  /** Newest first; instants UTC, ISO. */
  kept: KeptLine[];
}

/** A kept review in a list. */
export interface KeptLine extends Pick<KeptReview, 'id' | 'judgedOn' | 'engineVersion' | 'summary'> {
  computedAt: string;
}

export const getDocumentShape = systemPlace;

/**
 * The review of one system as a document. Only the courses of the fault cases that lead are computed now.
 *
 * @param plotted   at most so many courses
 */
export async function getDocument(
  who: Who,
  asked: z.output<typeof getDocumentShape>,
  plotted = PLOTTED,
): Promise<Result<ReviewDocument, Refusal>> {
  const place = await findPlace(who, asked.site, asked.system);
  if (!place.ok) return place;
  const { entry, stored, system, systemId, on } = place.value;
  const [stand, kept] = await Promise.all([findReview(entry.id, systemId), listKept(entry.id, systemId, LISTED)]);
  const seen = stored.reviewed.systems.find(({ key }) => key === system.key) ?? system;
  const isNow = isCurrent(stand, stored.hashes.get(system.key));
  const held = stand?.review
    ? { review: stand.review, origin: { ...stand, computedAt: stand.computedAt.toISOString() }, isCurrent: isNow }
    : null;
  return ok({
    facility: stored.facility,
    system,
    siteFindings: siteFindings(stored.reviewed),
    study: await studyState(place.value),
    held: held && { ...held, origin: originOf(held.origin) },
    courses:
      held && isNow && plotted > 0
        ? coursesOnce(`${held.origin.inputHash} ${on} ${plotted}`, () =>
            coursesOfCases(stored.reviewed, seen, on, leadingCases(held.review, plotted)),
          )
        : {},
    kept: kept.map(({ computedAt, ...mark }) => ({ ...mark, computedAt: computedAt.toISOString() })),
  });
}

function originOf({ computedAt, judgedOn, engineVersion, inputHash }: NonNullable<ReviewDocument['held']>['origin']) {
  return { computedAt, judgedOn, engineVersion, inputHash };
}
