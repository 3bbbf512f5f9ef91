import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';
import type { Facility } from '#core/facility/facility';
import { findingChanges, type FindingChange } from '#core/review/difference/finding-changes';
import { type ReviewDifference, reviewDifference } from '#core/review/review-difference';
import { siteFindings } from '#core/review/review-facility';
import { logError } from '../log';
import type { Compute } from '../reviews/compute';
import { inputHash } from '../reviews/input-hash';
import { type AtOnce, reviewAsStored, reviewAtOnce } from '../reviews/review-at-once';
import type { StoredSite } from '../reviews/stored-site';

/** What becomes known of what a change does to the reviews, one after another. */
export type ReviewNews =
  /** How far the review of a system is: fault cases judged, of how many. */
  | { is: 'progress'; name: string; done: number; of: number }
  | { is: 'system'; key: string; name: string; difference: ReviewDifference }
  /** Findings about the site as a whole. */
  | { is: 'site'; findings: FindingChange[] }
  /** It took too long, or broke: for these systems nothing is known yet. */
  | { is: 'not-known'; names: string[]; why: 'late' | 'broken' };

/** A change whose reviews are asked for. */
export interface ReviewedChange {
  siteId: string;
  /** The site as stored, with what its reviews depend on. */
  stored: StoredSite;
  after: Facility;
  /** ISO date at the site. */
  on: string;
  /** Key of the system the person is at; it comes first. */
  first: string | undefined;
}

/** ms after which the person is no longer kept waiting: they may keep the change, and the worker sees to the rest. */
const LONGEST_MS = 25_000;
/** ms between two signs of progress. */
const SIGN_EVERY_MS = 400;

/** Keys of the systems whose review a change may touch, the one named first before the others. */
export function touchedSystems({ stored, after, on, first }: Omit<ReviewedChange, 'siteId'>): string[] {
  const seen = stored.asReviewed(after);
  const hashes = new Map(seen.systems.map((system) => [system.key, inputHash(seen, system, on)]));
  const keys = new Set([...stored.hashes.keys(), ...hashes.keys()]);
  const touched = [...keys].filter((key) => stored.hashes.get(key) !== hashes.get(key));
  return touched.sort((a, b) => Number(b === first) - Number(a === first));
}

/**
 * What a change does to the reviews of the systems it touches. Each is computed in a thread, one person's change after the
 * other's; what is not there in time is said to be not known.
 *
 * @param compute   computes one review
 * @param longest   ms it may take
 */
export async function* reviewsOfChange(
  change: ReviewedChange,
  compute?: Compute,
  longest = LONGEST_MS,
): AsyncGenerator<ReviewNews> {
  const findings = findingChanges(siteFindings(change.stored.facility), siteFindings(change.after));
  if (findings.length > 0) yield { is: 'site', findings };
  const broken = new AbortController();
  const signal = AbortSignal.any([broken.signal, AbortSignal.timeout(longest)]);
  const left = touchedSystems(change);
  const nameOf = (key: string) =>
    [...change.after.systems, ...change.stored.facility.systems].find((system) => system.key === key)?.name ?? key;
  try {
    for (let key = left[0]; key !== undefined; key = left[0]) {
      yield* withProgress(nameOf(key), (told) => oneSystem(change, key, { compute, told, signal }));
      left.shift();
    }
  } catch (error) {
    if (!signal.aborted) logError('review of a change broke', error, { site: change.siteId });
    yield { is: 'not-known', names: left.map(nameOf), why: signal.aborted ? 'late' : 'broken' };
  } finally {
    // Whoever asked may have gone: nothing is computed for nobody.
    broken.abort();
  }
}

type Told = (done: number, of: number) => void;

/** Tells how far it is until it is there. */
async function* withProgress(name: string, work: (told: Told) => Promise<ReviewNews>): AsyncGenerator<ReviewNews> {
  let at = { done: 0, of: 0 };
  const result = work((done, of) => {
    at = { done, of };
  }).then(
    (news) => ({ news }),
    (error: unknown) => ({ error }),
  );
  for (;;) {
    const settled = await Promise.race([result, wait(SIGN_EVERY_MS, null)]);
    if (settled === null) yield { is: 'progress', name, ...at };
    else if ('error' in settled) throw settled.error;
    else {
      yield settled.news;
      return;
    }
  }
}

async function oneSystem({ siteId, stored, after, on }: ReviewedChange, key: string, how: AtOnce): Promise<ReviewNews> {
  const find = ({ systems }: Facility) => systems.find((one) => one.key === key);
  const [was, is] = [find(stored.facility), find(after)];
  const before = was ? await reviewAsStored({ siteId, stored, system: key, on }, { ...how, told: undefined }) : null;
  const review = is ? await reviewAtOnce({ facility: stored.asReviewed(after), system: key, on }, how) : null;
  return { is: 'system', key, name: (is ?? was)?.name ?? key, difference: reviewDifference(before, review) };
}
