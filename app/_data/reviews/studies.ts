import 'server-only';
import type { Study } from '#core/review/study';
import { database } from '../client';
import { asDay } from '../day';
import { newId } from '../new-id';
import { inTransaction } from '../transaction';
import { jsonText, type ReviewMark } from './results';

/** A stored study; null when computing it broke. */
export interface StoredStudy extends ReviewMark {
  study: Study | null;
}

/** How far the studies of a site are. */
export interface StudyProgress {
  systemKey: string | null;
  partsDone: number;
  partsAll: number;
}

const NOTHING_YET: StudyProgress = { systemKey: null, partsDone: 0, partsAll: 0 };

/**
 * Opens a run of the studies of a site; one that is under way finds at its next sign that it is no longer the one, and ends.
 *
 * @returns id of the run
 */
export async function openStudyRun(siteId: string, at: Date): Promise<string> {
  const runId = newId();
  const data = { runId, beatAt: at, ...NOTHING_YET };
  await database().studyRun.upsert({ where: { siteId }, create: { siteId, ...data }, update: data });
  return runId;
}

/**
 * Says how far a run is.
 *
 * @returns whether it is still the one; if not, it must end
 */
export async function beatStudy(siteId: string, runId: string, progress: StudyProgress, at: Date): Promise<boolean> {
  const { count } = await database().studyRun.updateMany({
    where: { siteId, runId },
    data: { ...progress, beatAt: at },
  });
  return count === 1;
}

/** How far the studies of a site are; null when none is under way. */
export async function findStudyRun(siteId: string): Promise<StudyProgress | null> {
  const row = await database().studyRun.findUnique({
    where: { siteId },
    select: { systemKey: true, partsDone: true, partsAll: true },
  });
  return row?.systemKey === null ? null : row;
}

/**
 * Keeps the study of a system in the place of the one before, as long as the run it was computed in is still the one of its site.
 *
 * @returns whether it was kept
 */
export async function saveStudy(
  siteId: string,
  runId: string,
  { systemId, study, judgedOn, ...mark }: StoredStudy,
): Promise<boolean> {
  const { inputHash, engineVersion, computedAt } = mark;
  return await inTransaction(async (tx) => {
    const held = await tx.$queryRaw<unknown[]>`
      SELECT FROM study_run WHERE site_id = ${siteId}::uuid AND run_id = ${runId}::uuid FOR UPDATE`;
    if (held.length === 0) return false;
    await tx.$executeRaw`
      INSERT INTO review_study (site_id, system_id, input_hash, engine_version, judged_on, computed_at, body)
      VALUES (${siteId}::uuid, ${systemId}::uuid, ${inputHash}, ${engineVersion}, ${judgedOn}::date,
              ${computedAt.toISOString()}::timestamptz, ${jsonText(study)}::jsonb)
          ON CONFLICT (site_id, system_id) DO UPDATE SET input_hash = excluded.input_hash,
             engine_version = excluded.engine_version, judged_on = excluded.judged_on, computed_at = excluded.computed_at,
             body = excluded.body`;
    return true;
  });
}

/**
 * The stored study of a system; null when none was ever stored. It was written by the engine version it names and is not read again
 * by a shape: a reader that knows another version treats it as absent.
 */
export async function findStudy(siteId: string, systemId: string): Promise<StoredStudy | null> {
  const row = await database().reviewStudy.findUnique({
    where: { siteId_systemId: { siteId, systemId } },
    omit: { siteId: true },
  });
  if (!row) return null;
  const { body, judgedOn, ...mark } = row;
  return { ...mark, judgedOn: asDay(judgedOn), study: body as Study | null };
}

/** Marks of the stored studies of the living systems of a site. */
export async function listStudyMarks(siteId: string): Promise<ReviewMark[]> {
  const rows = await database().reviewStudy.findMany({
    where: { siteId, system: { retiredAt: null } },
    omit: { siteId: true, body: true },
  });
  return rows.map(({ judgedOn, ...mark }) => ({ ...mark, judgedOn: asDay(judgedOn) }));
}
