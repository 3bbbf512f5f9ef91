import 'server-only';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { summaryOf } from '#core/review/summary';
import { saveReview } from '#data/reviews/results';
import { listReviewStates } from '#data/reviews/states';
import { beat, closeRun, openRun, type RunProgress } from '#data/reviews/runs';
import { now } from '../clock';
import { logError, logInfo } from '../log';
import { askForStudies } from './ask-for-studies';
import { beginRun, type Begun, nowAndThen } from './begin-run';
import { type Compute, type Computed, computeApart } from './compute';
import { staleSystems } from './review-state';
import { staleStudies } from './study-site';

/** A run of the reviews of a site: what it works on and how it goes about it. */
interface Run extends Begun {
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
  const begun = await beginRun(siteId, (on) =>
    openRun(null, siteId, { judgedOn: on, engineVersion: ENGINE_VERSION }, 'running', now()),
  );
  if (!begun) return;
  const { runId, stored } = begun;
  const kept = new Map((await listReviewStates([siteId])).map((state) => [state.systemId, state]));
  const stale = staleSystems({ ...stored, stored: kept });
  for (const [at, key] of stale.entries()) {
    const progress = { systemsDone: at, systemsAll: stale.length, systemKey: key, casesDone: 0, casesAll: 0 };
    if (!(await reviewOne({ ...begun, compute, signal }, key, progress))) return;
  }
  await closeRun(siteId, runId, stale.length, now());
  if ((await staleStudies(siteId, stored)).length > 0) await askForStudies(siteId);
  if (stale.length > 0) logInfo('reviews computed', { site: siteId, systems: stale.length });
}

/** @returns whether the run is still the one */
async function reviewOne(run: Run, key: string, progress: RunProgress): Promise<boolean> {
  const { siteId, runId, on, stored } = run;
  if (!(await beat(siteId, runId, progress, now()))) return false;
  const { review, demand } = parted(await computed(run, key, progress));
  const outcome = {
    systemId: stored.systemIds.get(key) ?? '',
    inputHash: stored.hashes.get(key) ?? '',
    engineVersion: ENGINE_VERSION,
    judgedOn: on,
    computedAt: now(),
    review,
    demand,
  };
  return await saveReview(siteId, runId, outcome, review && summaryOf(review));
}

/** A review as it is kept, and apart from it what its fault cases ask of people. */
function parted(found: Computed | null) {
  if (found === null) return { review: null, demand: null };
  const { demand = null, ...review } = found;
  return { review, demand };
}

/** The review of a system; null when it cannot be computed, which the same inputs would only do again. */
async function computed({ siteId, runId, on, stored, compute, signal }: Run, key: string, progress: RunProgress) {
  const told = nowAndThen((casesDone, casesAll) => {
    beat(siteId, runId, { ...progress, casesDone, casesAll }, now()).catch((error: unknown) =>
      logError('run gave no sign', error),
    );
  });
  try {
    return await compute({ facility: stored.reviewed, system: key, on, wantsDemand: true }, told, signal);
  } catch (error) {
    if (signal?.aborted) throw error;
    logError('review broke', error, { site: siteId, system: key });
    return null;
  }
}
