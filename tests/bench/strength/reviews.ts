import { setTimeout as wait } from 'node:timers/promises';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { listSites } from '#data/sites';
import { dayIn } from '#server/local-day';
import { storedSite } from '#server/reviews/stored-site';
import { ask } from '../../_support/database';

const FIRST = `SELECT 1 FROM review_result WHERE summary IS NOT NULL AND engine_version = '${ENGINE_VERSION}' LIMIT 1`;
const GIVE = `
  INSERT INTO review_result (site_id, system_id, input_hash, engine_version, judged_on, computed_at, summary, body, demand)
  SELECT $1::uuid, $2::uuid, $3, $4, $5::date, now(), summary, body, demand
    FROM (SELECT summary, body, demand FROM review_result WHERE summary IS NOT NULL AND engine_version = $4 LIMIT 1) one
      ON CONFLICT DO NOTHING`;
/** What waits to be reviewed or studied, and nobody has begun. */
const SKIP = `
  DELETE FROM graphile_worker._private_jobs j USING graphile_worker._private_tasks t
   WHERE t.id = j.task_id AND t.identifier IN ('review-site', 'study-site') AND j.locked_at IS NULL`;
const UNDER_WAY = `
  SELECT count(*) FROM graphile_worker._private_jobs j JOIN graphile_worker._private_tasks t ON t.id = j.task_id
   WHERE t.identifier IN ('review-site', 'study-site')`;
const DONE = `
  UPDATE review_run SET state = 'done', systems_done = systems_all, system_key = NULL WHERE state <> 'done'`;

/**
 * Gives every system the review of the one that was reviewed first: they are alike but for their names, and whoever has just
 * described a thousand systems is not what is measured.
 */
export async function giveReviews(url: string): Promise<void> {
  while ((await ask(url, FIRST)).rows.length === 0) await wait(500);
  for (const entry of await listSites()) {
    const on = dayIn(entry.zone, new Date());
    const site = await storedSite(entry, on);
    for (const [key, hash] of site?.hashes ?? [])
      await ask(url, GIVE, [entry.id, site?.systemIds.get(key), hash, ENGINE_VERSION, on]);
  }
  await ask(url, DONE);
}

/** Takes back what waits to be reviewed or studied. @returns how many sites somebody is still at */
export async function skipReviews(url: string): Promise<number> {
  await ask(url, SKIP);
  const { rows } = await ask(url, UNDER_WAY);
  return Number(rows[0].count);
}
