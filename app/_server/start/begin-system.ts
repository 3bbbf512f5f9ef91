import 'server-only';
import type { z } from 'zod';
import type { DraftGroup, Field } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import { type ReviewDifference, reviewDifference } from '#core/review/review-difference';
import type { Facility } from '#core/facility/facility';
import type { OpenInput, SystemReview } from '#core/review/result';
import type { System } from '#core/facility/system';
import { emptyGroup } from '#core/forms/draft';
import { startForm, startRequest } from '#shape/start/start-request';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { logError } from '../log';
import type { Compute } from '../reviews/compute';
import { findStoredSite } from '../reviews/find-stored-site';
import { NOT_COMPUTED, reviewAtOnce } from '../reviews/review-at-once';
import { readAnswers, startFields } from './read-answers';

export const startFormShape = startForm;
export const previewStartShape = startRequest;

/** The form that begins a system. */
export interface StartForm {
  site: { key: string; name: string };
  /** Revision of the site, to be given with the answers. */
  revision: number;
  fields: Field[];
  draft: DraftGroup;
}

/** The questions a system of a site is begun with. */
export async function getStartForm(
  who: Who,
  { site, units }: z.output<typeof startFormShape>,
): Promise<Result<StartForm, Refusal>> {
  const place = await findStoredSite(who, 'describe', site);
  if (!place.ok) return place;
  const { entry, stored } = place.value;
  const fields = startFields(stored.facility, units);
  return ok({
    site: { key: entry.key, name: entry.name },
    revision: entry.revision,
    fields,
    draft: emptyGroup(fields),
  });
}

/** What the answers describe, and what the review says of it. */
export interface StartPreview {
  facility: Facility;
  system: System;
  review: ReviewDifference;
  /** The figures that would settle most, if there are any. */
  openInputs: OpenInput[];
}

/** What the answers come to. Nothing is kept. */
export async function previewStart(
  who: Who,
  { site, units, draft }: z.output<typeof previewStartShape>,
  compute?: Compute,
): Promise<Result<StartPreview, Refusal>> {
  const place = await findStoredSite(who, 'describe', site);
  if (!place.ok) return place;
  const { stored, today: on } = place.value;
  const read = readAnswers(stored.facility, draft, units);
  if (!read.ok) return read;
  const { facility, system } = read.value;
  let review: SystemReview;
  try {
    review = await reviewAtOnce({ facility, system: system.key, on }, { compute });
  } catch (error) {
    logError('the first review of a system', error, { site });
    return refused(NOT_COMPUTED);
  }
  const openInputs = review.inputs.filter(({ changes }) => changes.length > 0);
  return ok({
    facility: { ...facility, systems: [system] },
    system,
    review: reviewDifference(null, review),
    openInputs,
  });
}
