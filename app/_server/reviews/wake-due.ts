import 'server-only';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { listRuns, type ReviewRun } from '#data/reviews/runs';
import { lastMissedBySite } from '#data/rounds/missed-sheets';
import { listSites, type SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { dayIn } from '../local-day';
import { askForReviews } from './ask-for-reviews';

/** ms without a sign after which a run is taken for dead: it gives one about every second. */
const DEAD_AFTER_MS = 90_000;

/**
 * Has the reviews of a site looked at again when its day has changed (a test may have run out), when a test was missed on a round sheet, when they were computed by
 * another engine, or when the process that was at it is gone.
 *
 * @param at   the instant
 */
export async function wakeDue(at: Date): Promise<void> {
  const sites = await listSites();
  const runs = new Map((await listRuns(sites.map(({ id }) => id))).map((run) => [run.siteId, run]));
  const missed = await lastMissedBySite(at);
  for (const site of sites) {
    const run = runs.get(site.id);
    if (isDue(site, run, at) || wasMissedSince(run, missed.get(site.id)))
      await inTransaction((tx) => askForReviews(tx, site, at));
  }
}

/** Whether a round sheet was missed after the reviews were last looked at: a safeguard whose test stood on it is unproven. */
function wasMissedSince(run: ReviewRun | undefined, missedAt: Date | undefined): boolean {
  return run !== undefined && missedAt !== undefined && missedAt > run.beatAt;
}

function isDue({ zone }: SiteEntry, run: ReviewRun | undefined, at: Date): boolean {
  if (!run) return true;
  const isDead = run.state !== 'done' && at.getTime() - run.beatAt.getTime() > DEAD_AFTER_MS;
  return isDead || run.judgedOn !== dayIn(zone, at) || run.engineVersion !== ENGINE_VERSION;
}
