import pg from 'pg';
import { closePool, pointAt } from '#data/pool';
import { findSite } from '#data/sites';
import { verifyChain } from '#data/records/verify-chain';
import type { Writer } from '../_support/start-writer';

/** What a drill came to for one writer. */
export interface Toll {
  /** Writes that were answered as stored. */
  answered: number;
  /** Of those, the ones that are not there. */
  missing: string[];
  /** Writes that are there more than once. */
  doubled: string[];
  /** Writes that are there though nobody was told so: their process, or its connection, was killed before it could say. */
  unanswered: number;
  /** Writes that failed and were said to have failed. */
  failed: number;
  links: number;
  /** What is wrong with the record; null when it is whole. */
  broken: string | null;
}

const COUNTS = `
  SELECT kind, (CASE kind WHEN 'drill-entry' THEN body->>'n' ELSE body->>'revision' END)::int AS n, count(*)::int AS times
    FROM record WHERE site_id = $1 AND kind IN ('drill-entry', 'facility-imported') GROUP BY 1, 2`;

/**
 * Compares what a writer was told with what is there.
 *
 * @param url      address of the database
 * @param name     of the writer, and key of its site
 * @param lives    of this writer: it may have been killed and started again
 */
export async function tollOf(url: string, name: string, lives: readonly Writer[]): Promise<Toll> {
  pointAt(url);
  const site = await findSite(name);
  if (!site) throw new Error(`the site of ${name} is not there`);
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query<{ kind: string; n: number; times: number }>(COUNTS, [site.id]);
  await client.end();
  const chain = await verifyChain(site.id);
  const entries = rows.filter(({ kind }) => kind === 'drill-entry');
  const imports = rows.filter(({ kind }) => kind === 'facility-imported');
  const told = lives.flatMap((life) => life.entries);
  const toldImports = lives.flatMap((life) => life.imports).length;
  const there = new Set(entries.map(({ n }) => n));
  const missing = told.filter((n) => !there.has(n)).map((n) => `entry ${n}`);
  // Each description counts the site's revision up by one and enters it: both must agree, and none may be lost.
  if (imports.length < toldImports) missing.push(`${toldImports - imports.length} descriptions of the site`);
  if (imports.length !== site.revision) missing.push(`revision ${site.revision} of ${imports.length} descriptions`);
  return {
    answered: told.length + toldImports,
    missing,
    doubled: rows.filter(({ times }) => times > 1).map(({ kind, n }) => `${kind} ${n}`),
    unanswered: entries.length + imports.length - told.length - toldImports,
    failed: lives.reduce((sum, { failed }) => sum + failed.length, 0),
    links: chain.isWhole ? chain.links : 0,
    broken: chain.isWhole ? null : `link ${chain.seq}: ${chain.wrong}`,
  };
}

/** Closes what `tollOf` opened, if it did. */
export async function closeToll(): Promise<void> {
  await closePool();
}
