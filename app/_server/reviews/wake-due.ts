import 'server-only';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { listRuns, type ReviewRun } from '#data/reviews/runs';
import { listSites, type SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { dayIn } from '../local-day';
import { askForReviews } from './ask-for-reviews';

/** ms without a sign after which a run is taken for dead: it gives one about every second. */
const DEAD_AFTER_MS = 90_000;

/**
 * Has the reviews of a site looked at again when its day has changed (a test may have run out), when they were computed by
 * another engine, or when the process that was at it is gone.
 *
 * @param at   the instant
 */
export async function wakeDue(at: Date): Promise<void> {
  const sites = await listSites();
  const runs = new Map((await listRuns(sites.map(({ id }) => id))).map((run) => [run.siteId, run]));
  for (const site of sites) {
    if (isDue(site, runs.get(site.id), at)) await inTransaction((tx) => askForReviews(tx, site, at));
  }
}

function isDue({ zone }: SiteEntry, run: ReviewRun | undefined, at: Date): boolean {
  if (!run) return true;
  const isDead = run.state !== 'done' && at.getTime() - run.beatAt.getTime() > DEAD_AFTER_MS;
  return isDead || run.judgedOn !== dayIn(zone, at) || run.engineVersion !== ENGINE_VERSION;
}
