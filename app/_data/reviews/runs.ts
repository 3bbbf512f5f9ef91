import 'server-only';
import { database } from '../client';
import { asDate, asDay } from '../day';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** How far the reviews of a site are. */
export interface ReviewRun {
  siteId: string;
  runId: string;
  state: 'waiting' | 'running' | 'done';
  /** ISO date in the site's zone on which tests are judged. */
  judgedOn: string;
  engineVersion: string;
  systemsDone: number;
  systemsAll: number;
  systemKey: string | null;
  casesDone: number;
  casesAll: number;
  beatAt: Date;
}

/** What a run is about. */
export type RunAim = Pick<ReviewRun, 'judgedOn' | 'engineVersion'>;
/** How far a run is. */
export type RunProgress = Pick<ReviewRun, 'systemsDone' | 'systemsAll' | 'systemKey' | 'casesDone' | 'casesAll'>;

const NOTHING_YET: RunProgress = { systemsDone: 0, systemsAll: 0, systemKey: null, casesDone: 0, casesAll: 0 };

/**
 * Opens a run of a site's reviews; a run that is under way for the same site finds at its next sign that it is no longer
 * the one, and ends.
 *
 * @returns id of the run
 */
export async function openRun(
  asker: Pick<Transaction, 'reviewRun'> | null,
  siteId: string,
  { judgedOn, engineVersion }: RunAim,
  state: 'waiting' | 'running',
  at: Date,
): Promise<string> {
  const runId = newId();
  const data = { runId, state, judgedOn: asDate(judgedOn), engineVersion, beatAt: at, ...NOTHING_YET };
  const { reviewRun } = asker ?? database();
  await reviewRun.upsert({ where: { siteId }, create: { siteId, ...data }, update: data });
  return runId;
}

/**
 * Says how far a run is.
 *
 * @returns whether it is still the one; if not, it must end
 */
export async function beat(siteId: string, runId: string, progress: RunProgress, at: Date): Promise<boolean> {
  const { count } = await database().reviewRun.updateMany({
    where: { siteId, runId },
    data: { ...progress, beatAt: at },
  });
  return count === 1;
}

/** Closes a run that has come to its end with so many systems, unless another has taken over. */
export async function closeRun(siteId: string, runId: string, systems: number, at: Date): Promise<void> {
  const progress = { ...NOTHING_YET, systemsDone: systems, systemsAll: systems };
  await database().reviewRun.updateMany({ where: { siteId, runId }, data: { ...progress, state: 'done', beatAt: at } });
}

/** The runs of these sites. */
export async function listRuns(siteIds: readonly string[]): Promise<ReviewRun[]> {
  const rows = await database().reviewRun.findMany({ where: { siteId: { in: [...siteIds] } } });
  return rows.map((row) => ({ ...row, state: row.state as ReviewRun['state'], judgedOn: asDay(row.judgedOn) }));
}
