import 'server-only';
import type { SystemReview } from '#core/review/result';
import type { Refusal } from '../gate/refusal';
import { type Compute, computeApart, type ReviewJob } from './compute';
import { currentReview } from './current-review';
import { inTurn } from './in-turn';
import { inputHash } from './input-hash';
import type { StoredSite } from './stored-site';

/** A system as it is stored, and the day its tests are judged on. */
export interface StoredSystem {
  siteId: string;
  stored: StoredSite;
  /** Its key. */
  system: string;
  /** ISO date at the site. */
  on: string;
}

/** How a review that somebody waits for is computed. */
export interface AtOnce {
  /** Computes it; in a thread of its own when left out. */
  compute?: Compute;
  /** Called after each fault case with how many are judged and how many there are. */
  told?: (done: number, of: number) => void;
  /** Breaks it off; after a minute when left out. */
  signal?: AbortSignal;
}

/** ms that computing a review may take; one of a system of twelve tanks takes a few seconds. */
const LONGEST_MS = 60_000;
/** Reviews kept in memory by what they depend on: what is looked at again is not computed again. */
const MOST = 24;
const kept = new Map<string, SystemReview>();

/** What is said when a review that somebody waited for is not there. What it was asked for can be kept all the same. */
export const NOT_COMPUTED: Refusal = {
  why: 'conflict',
  now: 'Computing the review broke or took too long; the reason is in the log.',
};

/**
 * The review of a system for somebody who waits for it: one is computed after the other in each process.
 *
 * @throws   what the computation threw, or that it was broken off
 */
export async function reviewAtOnce(
  job: ReviewJob,
  { compute = computeApart, told = () => undefined, signal = AbortSignal.timeout(LONGEST_MS) }: AtOnce,
): Promise<SystemReview> {
  const system = job.facility.systems.find(({ key }) => key === job.system);
  if (!system) throw new Error(`No system "${job.system}" to review`);
  const hash = `${inputHash(job.facility, system, job.on)} ${job.piece ?? ''}`;
  return await inTurn(async () => {
    const known = kept.get(hash);
    if (known) return known;
    const review = await compute(job, told, signal);
    kept.set(hash, review);
    for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
    return review;
  }, signal);
}

/** The review of a system as it is stored: the one that is kept while it still holds, else computed as well. */
export async function reviewAsStored({ siteId, stored, system, on }: StoredSystem, how: AtOnce): Promise<SystemReview> {
  const held = await currentReview(siteId, stored, system);
  return held ?? (await reviewAtOnce({ facility: stored.reviewed, system, on }, how));
}
