import 'server-only';
import { ok, type Result } from '#core/result';
import { type EditRequest, editRequest } from '#shape/describe/edit';
import { type DifferenceGroup, groupDifferences } from '../facility/compare';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { type ReviewNews, reviewsOfChange, touchedSystems } from './change-reviews';
import { findStoredSite } from '../reviews/find-stored-site';
import { prepareChange } from './prepare-change';
import { testAgain } from './test-again';

export const previewChangeShape = editRequest;

/** What a change would make different. */
export interface ChangePreview {
  /** Revision the difference was made with, to be given when the change is kept. */
  basedOn: number;
  /** What would be different; empty when nothing would. */
  groups: DifferenceGroup[];
  /** Labels of fields that somebody else changed since the form was opened, and that this changes as well. */
  clashes: string[];
  /** Names of safeguards that were tested with what is replaced. */
  testAgain: string[];
  /** How many systems have their review touched. */
  touched: number;
}

/** A change looked at before it is kept: every fault by its field, or what would be different. Nothing is stored. */
export async function previewChange(who: Who, edit: EditRequest): Promise<Result<ChangePreview, Refusal>> {
  const found = await findStoredSite(who, 'describe', edit.site);
  if (!found.ok) return found;
  const { entry, stored, today } = found.value;
  const prepared = prepareChange(stored.facility, edit, today);
  if (!prepared.ok) return prepared;
  const { after, clashes } = prepared.value;
  return ok({
    basedOn: entry.revision,
    groups: groupDifferences(stored.facility, after, edit.units),
    clashes,
    testAgain: edit.act === 'replace' ? testAgain(stored.facility, edit) : [],
    touched: touchedSystems({ stored, after, on: today, first: edit.system }).length,
  });
}

/** What a change would do to the reviews, told as it becomes known. */
export async function reviewChange(who: Who, edit: EditRequest): Promise<Result<AsyncIterable<ReviewNews>, Refusal>> {
  const found = await findStoredSite(who, 'describe', edit.site);
  if (!found.ok) return found;
  const { entry, stored, today } = found.value;
  const prepared = prepareChange(stored.facility, edit, today);
  if (!prepared.ok) return prepared;
  const { after } = prepared.value;
  return ok(reviewsOfChange({ siteId: entry.id, stored, after, on: today, first: edit.system }));
}
