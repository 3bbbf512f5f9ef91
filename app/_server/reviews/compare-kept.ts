import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { type ReviewDifference, reviewDifference } from '#core/review/review-difference';
import { findKept, listKept } from '#data/reviews/kept';
import { recordsBetween } from '#data/records/records-between';
import { reviewPair } from '#shape/reviews/review-pair';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { toldEntries } from '../record/told-entries';
import { findPlace, type Place } from './find-place';

/** Kinds of entries of the record that may make a review come out otherwise. */
const CHANGES = [
  'facility-imported',
  'description-changed',
  'system-described',
  'plan-in-force',
  'safeguard-tested',
  'test-withdrawn',
  'safeguard-off',
  'safeguard-back',
  'calibration-accepted',
];
/** Changes that are told. */
const TOLD = 60;
/** Kept reviews among which one may choose. */
const LISTED = 50;

/** A kept review that is compared. Instants are UTC, ISO. */
export interface ComparedSide {
  id: string;
  computedAt: string;
  judgedOn: string;
  engineVersion: string;
}

/** What tells one kept review of a system from another, and what was changed at the site between them. */
export interface KeptComparison {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  from: ComparedSide | null;
  to: ComparedSide | null;
  /** Null where there are not two reviews to compare. */
  difference: ReviewDifference | null;
  /** Null for those who may not read the record. */
  changes: { at: string; what: string }[] | null;
  kept: ComparedSide[];
}

export const compareKeptShape = reviewPair;

/** Compares two kept reviews of a system. */
export async function compareKept(
  who: Who,
  { site, system, from, to }: z.output<typeof compareKeptShape>,
): Promise<Result<KeptComparison, Refusal>> {
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const { entry, systemId, system: found } = place.value;
  const kept = await listKept(entry.id, systemId, LISTED);
  const ids = { from: from ?? kept[1]?.id, to: to ?? kept[0]?.id };
  const [was, is] = await Promise.all([sideOf(place.value, ids.from), sideOf(place.value, ids.to)]);
  if ((from !== undefined && !was) || (to !== undefined && !is)) return refused({ why: 'not-found', what: 'review' });
  const both = was && is;
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    system: { key: found.key, name: found.name },
    from: was && lineOf(was),
    to: is && lineOf(is),
    difference: both ? reviewDifference(was.review, is.review) : null,
    changes:
      both && may(who, 'read-record', site) ? await changesBetween(entry.id, was.computedAt, is.computedAt) : null,
    kept: kept.map(lineOf),
  });
}

async function sideOf({ entry, systemId }: Place, id: string | undefined) {
  return id === undefined ? null : await findKept(entry.id, systemId, id);
}

function lineOf({ id, computedAt, judgedOn, engineVersion }: Omit<ComparedSide, 'computedAt'> & { computedAt: Date }) {
  return { id, computedAt: computedAt.toISOString(), judgedOn, engineVersion };
}

/** What was changed at a site between two instants, whichever comes first, in words. */
async function changesBetween(siteId: string, a: Date, b: Date): Promise<{ at: string; what: string }[]> {
  const [after, until] = a < b ? [a, b] : [b, a];
  const links = await recordsBetween(siteId, CHANGES, after, until, TOLD);
  return (await toldEntries(siteId, links)).map(({ at, what }) => ({ at, what }));
}
