import 'server-only';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { beatStudy, listStudyMarks, openStudyRun, type StudyProgress, saveStudy } from '#data/reviews/studies';
import { now } from '../clock';
import { logError, logInfo } from '../log';
import { beginRun, type Begun, nowAndThen } from './begin-run';
import { type ComputeStudy, computeStudyApart } from './compute-study';
import { currentReview } from './current-review';
import { isCurrent } from './review-state';
import type { StoredSite } from './stored-site';

/** A run of the studies of a site: what it works on and how it goes about it. */
interface Run extends Begun {
  compute: ComputeStudy;
  /** Breaks off what is under way: from outside, or because another run has taken over. */
  over: AbortController;
  signal: AbortSignal;
}

/**
 * Computes the stale studies of a site whose review is there, one after another, and keeps each as soon as it is there. A run that
 * begins for the same site takes over: this one breaks off at its next sign, and can keep nothing more. A system whose review is
 * still to come is left to the run that follows it.
 *
 * @throws   what broke it off from outside; a study that cannot be computed is noted, and the others go on
 */
export async function studySite(
  siteId: string,
  { compute = computeStudyApart, signal }: { compute?: ComputeStudy; signal?: AbortSignal } = {},
): Promise<void> {
  const begun = await beginRun(siteId, () => openStudyRun(siteId, now()));
  if (!begun) return;
  const { runId, stored } = begun;
  const over = new AbortController();
  const either = signal ? AbortSignal.any([signal, over.signal]) : over.signal;
  const run: Run = { ...begun, compute, over, signal: either };
  let made = 0;
  for (const key of await staleStudies(siteId, stored)) {
    const kept = await studyOne(run, key);
    signal?.throwIfAborted();
    if (kept === 'overtaken') return;
    if (kept === 'kept') made += 1;
  }
  await beatStudy(siteId, runId, { systemKey: null, partsDone: 0, partsAll: 0 }, now());
  if (made > 0) logInfo('studies computed', { site: siteId, systems: made });
}

/** Keys of the systems of a site whose study has to be computed, in the order of the file. */
export async function staleStudies(siteId: string, { hashes, systemIds }: StoredSite): Promise<string[]> {
  const marks = new Map((await listStudyMarks(siteId)).map((mark) => [mark.systemId, mark]));
  return [...hashes].flatMap(([key, hash]) => (isCurrent(marks.get(systemIds.get(key) ?? ''), hash) ? [] : [key]));
}

async function studyOne(run: Run, key: string): Promise<'kept' | 'left' | 'overtaken'> {
  const { siteId, runId, on, stored } = run;
  const review = await currentReview(siteId, stored, key);
  if (!review) return 'left';
  if (!(await beatStudy(siteId, runId, { systemKey: key, partsDone: 0, partsAll: 0 }, now()))) return 'overtaken';
  const study = await computed(run, { facility: stored.reviewed, system: key, on, review });
  if (run.over.signal.aborted) return 'overtaken';
  const kept = await saveStudy(siteId, runId, {
    systemId: stored.systemIds.get(key) ?? '',
    inputHash: stored.hashes.get(key) ?? '',
    engineVersion: ENGINE_VERSION,
    judgedOn: on,
    computedAt: now(),
    study,
  });
  return kept ? 'kept' : 'overtaken';
}

/** A study; null when it cannot be computed, which the same inputs would only do again. */
async function computed({ siteId, runId, compute, over, signal }: Run, job: Parameters<ComputeStudy>[0]) {
  const told = nowAndThen((partsDone, partsAll) =>
    sign(siteId, runId, { systemKey: job.system, partsDone, partsAll }, over),
  );
  try {
    return await compute(job, told, signal);
  } catch (error) {
    if (!signal.aborted) logError('study broke', error, { site: siteId, system: job.system });
    return null;
  }
}

/** Gives a sign, and breaks the run off where another has taken over. */
function sign(siteId: string, runId: string, progress: StudyProgress, over: AbortController): void {
  beatStudy(siteId, runId, progress, now())
    .then((isTheOne) => {
      if (!isTheOne) over.abort(new Error('another run has taken over'));
    })
    .catch((error: unknown) => logError('study gave no sign', error));
}
