import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { FieldFault } from '#core/forms/field';
import type { OpenInput } from '#core/review/result';
import type { ReviewDifference } from '#core/review/review-difference';

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

/** What the form gets back: a value, or a refusal with every fault by its field. */
export type StartAnswer<T> =
  | { ok: true; value: T }
  | { ok: false; said: string; reason: { why: string; faults?: FieldFault[] } };

export type PreviewAction = (before: null, form: FormData) => Promise<StartAnswer<StartPreview>>;
export type KeepAction = (before: null, form: FormData) => Promise<StartAnswer<Started>>;
