import 'server-only';
import { keepable } from '#core/review/keepable';
import type { SystemDemand } from '#core/review/people/demand';
import type { SystemReview } from '#core/review/result';
import type { ReviewSummary } from '#core/review/summary';
import { database } from '../client';
import { asDay } from '../day';
import { inTransaction } from '../transaction';
import { keepReview } from './kept';

/** What is kept of a review besides the review itself. */
export interface ReviewMark {
  systemId: string;
  /** SHA-256 over everything it depends on, in hexadecimal. */
  inputHash: string;
  engineVersion: string;
  /** ISO date in the site's zone on which tests were judged. */
  judgedOn: string;
  computedAt: Date;
}

/** A stored review; null when it broke. */
export interface StoredReview extends ReviewMark {
  review: SystemReview | null;
}

/**
 * Keeps the review of a system in the place of the one before, as long as the run it was computed in is still the one of
 * its site: a run that was overtaken cannot undo what the newer one has kept. One that says something new is kept for good
 * as well.
 *
 * @param runId     the run
 * @param stored    the review, and what it asks of people; without one, that computing it broke
 * @param summary   its short form, null with it
 * @returns         whether it was kept
 */
export async function saveReview(
  siteId: string,
  runId: string,
  { systemId, review, judgedOn, demand = null, ...mark }: StoredReview & { demand?: SystemDemand | null },
  summary: ReviewSummary | null,
): Promise<boolean> {
  const { inputHash, engineVersion, computedAt } = mark;
  return await inTransaction(async (tx) => {
    const held = await tx.$queryRaw<unknown[]>`
      SELECT FROM review_run WHERE site_id = ${siteId}::uuid AND run_id = ${runId}::uuid FOR UPDATE`;
    if (held.length === 0) return false;
    // A whole review is tens of thousands of values: as a text it is handed on in a hundredth of the time that Prisma takes to
    // look at each, during which the worker judges no alarm.
    await tx.$executeRaw`
      INSERT INTO review_result (site_id, system_id, input_hash, engine_version, judged_on, computed_at, summary, body, demand)
      VALUES (${siteId}::uuid, ${systemId}::uuid, ${inputHash}, ${engineVersion}, ${judgedOn}::date,
              ${computedAt.toISOString()}::timestamptz, ${jsonText(summary)}::jsonb, ${jsonText(review)}::jsonb,
              ${jsonText(demand)}::jsonb)
          ON CONFLICT (site_id, system_id) DO UPDATE SET input_hash = excluded.input_hash,
             engine_version = excluded.engine_version, judged_on = excluded.judged_on, computed_at = excluded.computed_at,
             summary = excluded.summary, body = excluded.body, demand = excluded.demand`;
    if (review && summary) await keepReview(tx, siteId, { systemId, judgedOn, ...mark }, keepable(review), summary);
    return true;
  });
}

/** What is kept as JSON, as one text; null is that there is nothing. */
export function jsonText(value: object | null): string | null {
  return value === null ? null : JSON.stringify(value);
}

/**
 * The stored review of a system; null when none was ever stored. It was written by the engine version it names and is not
 * read again by a shape: a reader that knows another version treats it as absent.
 */
export async function findReview(siteId: string, systemId: string): Promise<StoredReview | null> {
  const row = await database().reviewResult.findUnique({
    where: { siteId_systemId: { siteId, systemId } },
    omit: { siteId: true, summary: true, demand: true },
  });
  if (!row) return null;
  const { body, judgedOn, ...mark } = row;
  return { ...mark, judgedOn: asDay(judgedOn), review: body as SystemReview | null };
}

/** What the reviews of a site ask of people, by id of the system; null where nobody asked for it, or where the review broke. */
export async function listDemands(siteId: string): Promise<(ReviewMark & { demand: SystemDemand | null })[]> {
  const rows = await database().reviewResult.findMany({
    where: { siteId, system: { retiredAt: null } },
    omit: { siteId: true, body: true, summary: true },
  });
  return rows.map(({ judgedOn, demand, ...mark }) => ({
    ...mark,
    judgedOn: asDay(judgedOn),
    demand: demand as SystemDemand | null,
  }));
}
