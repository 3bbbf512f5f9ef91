import 'server-only';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { summaryOf } from '#core/review/summary';
import { listReviewStates, saveReview } from '#data/reviews/results';
import { beat, closeRun, openRun, type RunProgress } from '#data/reviews/runs';
import { findSiteById } from '#data/sites';
import { now } from '../clock';
import { dayIn } from '../local-day';
import { logError, logInfo } from '../log';
import { askForStudies } from './ask-for-studies';
import { type Compute, computeApart } from './compute';
import { staleSystems } from './review-state';
import { type StoredSite, storedSite } from './stored-site';
import { staleStudies } from './study-site';

/** ms between two signs of a run, at least. */
const SIGN_EVERY_MS = 1000;

/** A run of the reviews of a site: what it works on and how it goes about it. */
interface Run {
  siteId: string;
  runId: string;
  on: string;
  stored: StoredSite;
  compute: Compute;
  signal: AbortSignal | undefined;
}

/**
 * Computes the stale reviews of a site, one after another, and keeps each as soon as it is there. When the site is changed
 * meanwhile, or another run begins for it, this one ends: the other sees to the rest. What was kept before a process was
 * killed is not computed again.
 *
 * @param siteId    the site
 * @param compute   computes one review
 * @param signal    breaks it off
 * @throws          what broke it off; a review that cannot be computed is noted, and the others go on
 */
export async function reviewSite(
  siteId: string,
  { compute = computeApart, signal }: { compute?: Compute; signal?: AbortSignal } = {},
): Promise<void> {
  const registered = await findSiteById(siteId);
  if (!registered) return;
  const on = dayIn(registered.zone, now());
  const runId = await openRun(null, siteId, { judgedOn: on, engineVersion: ENGINE_VERSION }, 'running', now());
  // Read only now: a run that was at work until this moment can no longer keep anything.
  const entry = await findSiteById(siteId);
  const stored = entry && (await storedSite(entry, on));
  if (!stored) return;
  const kept = new Map((await listReviewStates([siteId])).map((state) => [state.systemId, state]));
  const stale = staleSystems({ ...stored, stored: kept });
  for (const [at, key] of stale.entries()) {
    const progress = { systemsDone: at, systemsAll: stale.length, systemKey: key, casesDone: 0, casesAll: 0 };
    if (!(await reviewOne({ siteId, runId, on, stored, compute, signal }, key, progress))) return;
  }
  await closeRun(siteId, runId, stale.length, now());
  if ((await staleStudies(siteId, stored)).length > 0) await askForStudies(siteId);
  if (stale.length > 0) logInfo('reviews computed', { site: siteId, systems: stale.length });
}

/** @returns whether the run is still the one */
async function reviewOne(run: Run, key: string, progress: RunProgress): Promise<boolean> {
  const { siteId, runId, on, stored } = run;
  if (!(await beat(siteId, runId, progress, now()))) return false;
  const review = await computed(run, key, progress);
  const outcome = {
    systemId: stored.systemIds.get(key) ?? '',
    inputHash: stored.hashes.get(key) ?? '',
    engineVersion: ENGINE_VERSION,
    judgedOn: on,
    computedAt: now(),
    review,
  };
  return await saveReview(siteId, runId, outcome, review && summaryOf(review));
}

/** The review of a system; null when it cannot be computed, which the same inputs would only do again. */
async function computed({ siteId, runId, on, stored, compute, signal }: Run, key: string, progress: RunProgress) {
  let signedAt = now().getTime();
  const told = (casesDone: number, casesAll: number) => {
    if (now().getTime() - signedAt < SIGN_EVERY_MS) return;
    signedAt = now().getTime();
    beat(siteId, runId, { ...progress, casesDone, casesAll }, now()).catch((error: unknown) =>
      logError('run gave no sign', error),
    );
  };
  try {
    return await compute({ facility: stored.facility, system: key, on }, told, signal);
  } catch (error) {
    if (signal?.aborted) throw error;
    logError('review broke', error, { site: siteId, system: key });
    return null;
  }
}
