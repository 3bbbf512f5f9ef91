import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { OpenInput } from '#core/review/result';
import type { ReviewDifference } from '#core/review/review-difference';
import type { FormAnswer } from '../form/answer';

/** What the answers describe, and what the review says of it. */
export interface StartPreview {
  /** The site with this system alone. */
  facility: Facility;
  system: System;
  review: ReviewDifference;
  openInputs: OpenInput[];
}

/** A system that was begun. */
export interface Started {
  site: string;
  system: string;
  name: string;
}

export type PreviewAction = (before: null, form: FormData) => Promise<FormAnswer<StartPreview>>;
export type KeepAction = (before: null, form: FormData) => Promise<FormAnswer<Started>>;
