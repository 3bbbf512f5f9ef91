import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Finding, SystemReview } from '#core/review/result';
import type { StudyState } from '#core/review/study';
import type { Speech } from '../words/said';

/** Who computed a review, when and from what. */
export interface ReviewOrigin {
  /** UTC, ISO. */
  computedAt: string;
  /** ISO date in the site's zone on which tests were judged. */
  judgedOn: string;
  engineVersion: string;
  /** SHA-256 over everything it depends on, in hexadecimal. */
  inputHash: string;
}

/** What the document is made from. */
export interface DocumentData {
  facility: Facility;
  system: System;
  review: SystemReview;
  siteFindings: Finding[];
  study: StudyState;
  origin: ReviewOrigin;
  speech: Speech;
  /** Address of the system's page. */
  at: string;
  /** Fault cases whose course is at hand to be plotted, by id. */
  plotted: ReadonlySet<string>;
}
