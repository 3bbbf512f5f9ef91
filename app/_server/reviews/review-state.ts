import 'server-only';
import { lastFor } from '#core/last-for';
import { ENGINE_VERSION } from '#core/review/engine-version';
import type { ReviewSummary } from '#core/review/summary';
import type { ReviewState } from '#data/reviews/states';
import type { ReviewRun } from '#data/reviews/runs';

/** Whether the review of a system says what its inputs say now. Plain values; instants are ISO 8601 in UTC. */
export type SystemReviewState =
  | { state: 'current'; summary: ReviewSummary; judgedOn: string; computedAt: string }
  /** Being computed, or waiting for it: `done` of `of` systems of the site are. `before` is what was said before a change. */
  | {
      state: 'under-way';
      done: number;
      of: number;
      cases: { done: number; of: number } | null;
      before: ReviewSummary | null;
    }
  /** Computing it broke; the reason is in the log. */
  | { state: 'broken' };

/** What is known of the reviews of one site. */
export interface KnownReviews {
  hashes: ReadonlyMap<string, string>;
  systemIds: ReadonlyMap<string, string>;
  /** By id of the system. */
  stored: ReadonlyMap<string, ReviewState>;
  run: ReviewRun | undefined;
}

/** Whether a stored review was computed from these inputs by this engine. */
export function isCurrent(
  stored: { inputHash: string; engineVersion: string } | null | undefined,
  hash: string | undefined,
): boolean {
  return stored?.inputHash === hash && stored?.engineVersion === ENGINE_VERSION;
}

/** Keys of the systems of a site whose review has to be computed, in the order of the file. */
export function staleSystems({ hashes, systemIds, stored }: Omit<KnownReviews, 'run'>): string[] {
  return [...hashes].flatMap(([key, hash]) => (isCurrent(stored.get(systemIds.get(key) ?? ''), hash) ? [] : [key]));
}

/** What a stored review says of inputs: worked out once, for what is stored is remembered while it is the same. */
const currentOf = lastFor<SystemReviewState | null>();

function whatIsStored({ summary, judgedOn, computedAt }: ReviewState): SystemReviewState {
  return summary === null
    ? { state: 'broken' }
    : { state: 'current', summary, judgedOn, computedAt: computedAt.toISOString() };
}

/**
 * The state of one system's review. It is worked out when read: a worker that is late never makes a screen lie.
 *
 * @param key   key of the system
 */
export function reviewStateOf(known: KnownReviews, key: string): SystemReviewState {
  const stored = known.stored.get(known.systemIds.get(key) ?? '');
  const hash = known.hashes.get(key);
  const current = stored && currentOf(stored, [hash], () => (isCurrent(stored, hash) ? whatIsStored(stored) : null));
  if (current) return current;
  const { run } = known;
  const isRunning = run?.state === 'running' && run.systemsAll > 0;
  const cases =
    isRunning && run.systemKey === key && run.casesAll > 0 ? { done: run.casesDone, of: run.casesAll } : null;
  const progress = isRunning
    ? { done: run.systemsDone, of: run.systemsAll }
    : { done: 0, of: staleSystems(known).length };
  return { state: 'under-way', ...progress, cases, before: stored?.summary ?? null };
}
