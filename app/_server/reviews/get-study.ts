import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import type { StudyState } from '#core/review/study';
import { findStudy, findStudyRun, type StudyProgress } from '#data/reviews/studies';
import { systemPlace } from '#shape/reviews/case-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { isLookedLonger } from './ask-for-studies';
import { findPlace, type Place } from './find-place';
import { isCurrent } from './review-state';

/** The longer look at a system, or how far it is. */
export interface StudyPage {
  state: StudyState;
  /** How far the study of this very system is; null while it waits or where there is nothing to do. */
  progress: { done: number; of: number } | null;
}

export const getStudyShape = systemPlace;

/** The longer look at a system: the stored one while its inputs are the same. */
export async function getStudy(who: Who, asked: z.output<typeof getStudyShape>): Promise<Result<StudyPage, Refusal>> {
  const place = await findPlace(who, asked.site, asked.system);
  if (!place.ok) return place;
  const { entry, system } = place.value;
  const [state, run] = await Promise.all([studyState(place.value), findStudyRun(entry.id)]);
  return ok({ state, progress: state.state === 'under-way' ? progressOf(run, system.key) : null });
}

/** The stored study of a system that was found, and whether it says what its inputs say now. */
export async function studyState({ entry, stored, system, systemId }: Place): Promise<StudyState> {
  const held = await findStudy(entry.id, systemId);
  if (!(held && isCurrent(held, stored.hashes.get(system.key)))) {
    if (!isLookedLonger()) return { state: 'left-out' };
    return { state: 'under-way', before: held?.study ?? null };
  }
  return held.study ? { state: 'ready', study: held.study } : { state: 'broken' };
}

function progressOf(run: StudyProgress | null, key: string): StudyPage['progress'] {
  return run?.systemKey === key && run.partsAll > 0 ? { done: run.partsDone, of: run.partsAll } : null;
}
