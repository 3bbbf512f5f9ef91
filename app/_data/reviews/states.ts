import 'server-only';
import { groupBy } from '#core/group-by';
import type { ReviewSummary } from '#core/review/summary';
import { pool } from '../pool';
import type { ReviewMark } from './results';

/** A stored review in short; the summary is null when the review broke. */
export interface ReviewState extends ReviewMark {
  siteId: string;
  summary: ReviewSummary | null;
}

type Marked = Omit<ReviewState, 'summary'>;

/** What was read of a site, and the mark it had before that: whatever is computed anew has another. */
interface SiteStates {
  mark: string;
  states: readonly ReviewState[];
}

/** Sites in memory, and systems of which the short form is: a thousand of them are megabytes. */
const MOST_SITES = 200;
const MOST_SUMMARIES = 5000;
const sites = new Map<string, SiteStates>();
const summaries = new Map<string, { computedMs: number; inputHash: string; summary: ReviewSummary | null }>();

/**
 * What is stored of the living systems of these sites, in short: one question where nothing was computed since the last time.
 * Else the sites where something was are read again, and the short forms of what it was.
 */
export async function listReviewStates(siteIds: readonly string[]): Promise<ReviewState[]> {
  const { rows: marks } = await pool().query<{ siteId: string; mark: string }>(
    `SELECT r.site_id AS "siteId", count(*) || ' ' || bit_xor(hashtextextended(
              concat_ws(' ', r.system_id, r.input_hash, r.engine_version, r.judged_on, r.computed_at), 0)) AS mark
       FROM review_result r JOIN system s ON s.site_id = r.site_id AND s.id = r.system_id AND s.retired_at IS NULL
      WHERE r.site_id = ANY($1::uuid[]) GROUP BY r.site_id`,
    [[...siteIds]],
  );
  const held = new Map(marks.map(({ siteId, mark }) => [siteId, keptAs(siteId, mark)]));
  const changed = marks.filter(({ siteId }) => !held.get(siteId));
  const read = await readStates(changed.map(({ siteId }) => siteId));
  for (const { siteId, mark } of changed) keepIn(sites, siteId, { mark, states: read.get(siteId) ?? [] });
  drop(sites, MOST_SITES);
  return marks.flatMap(({ siteId }) => held.get(siteId) ?? read.get(siteId) ?? []);
}

function keptAs(siteId: string, mark: string): readonly ReviewState[] | null {
  const kept = sites.get(siteId);
  return kept?.mark === mark ? kept.states : null;
}

async function readStates(siteIds: readonly string[]): Promise<Map<string, ReviewState[]>> {
  if (siteIds.length === 0) return new Map();
  const { rows } = await pool().query<Marked>(
    `SELECT r.site_id AS "siteId", r.system_id AS "systemId", r.input_hash AS "inputHash", r.engine_version AS "engineVersion",
            r.judged_on::text AS "judgedOn", r.computed_at AS "computedAt"
       FROM review_result r JOIN system s ON s.site_id = r.site_id AND s.id = r.system_id AND s.retired_at IS NULL
      WHERE r.site_id = ANY($1::uuid[])`,
    [siteIds],
  );
  await readSummaries(rows.filter((row) => !isKnown(row)));
  // One that was computed anew between the two questions counts as it was asked for last.
  const states = rows.map((row) => ({ ...row, summary: summaries.get(row.systemId)?.summary ?? null }));
  drop(summaries, MOST_SUMMARIES);
  return groupBy(states, ({ siteId }) => siteId);
}

function isKnown({ systemId, computedAt, inputHash }: Marked): boolean {
  const known = summaries.get(systemId);
  return known?.computedMs === computedAt.getTime() && known.inputHash === inputHash;
}

async function readSummaries(wanted: readonly Marked[]): Promise<void> {
  if (wanted.length === 0) return;
  const { rows } = await pool().query<ReviewState>(
    `SELECT system_id AS "systemId", input_hash AS "inputHash", computed_at AS "computedAt", summary
       FROM review_result WHERE site_id = ANY($1::uuid[]) AND system_id = ANY($2::uuid[])`,
    [[...new Set(wanted.map(({ siteId }) => siteId))], wanted.map(({ systemId }) => systemId)],
  );
  for (const { systemId, inputHash, computedAt, summary } of rows)
    keepIn(summaries, systemId, { computedMs: computedAt.getTime(), inputHash, summary });
}

/** Keeps it as the youngest. */
function keepIn<V>(map: Map<string, V>, key: string, value: V): void {
  map.delete(key);
  map.set(key, value);
}

/** Drops the oldest beyond so many. */
function drop(map: Map<string, unknown>, most: number): void {
  for (const oldest of map.keys()) if (map.size > most) map.delete(oldest);
}
