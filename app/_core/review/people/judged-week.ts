import type { Column } from '../../plans/credit';
import type { Harm, HarmClass, Verdict } from '../result';
import { verdictOf } from '../verdict';
import type { CaseDemand } from './demand';
import type { Scene } from './scene';
import { type Met, meeting, type Work } from './way';

/** One class of harm of a fault case over the hours of a line; lists are as long as the line has hours. */
export interface JudgedWeek {
  /** The first harm of the class when the fault begins at an hour; null where none comes of it. */
  harm: (Harm | null)[];
  /** Last chance, s after the onset; null without harm. */
  lastS: (number | null)[];
  met: Met[];
  /** Time to spare, s; −Infinity where nobody ever puts it right, Infinity without harm. */
  spareS: number[];
  verdict: Verdict;
}

/**
 * What the hours of a line make of one class of harm of a fault case, in a column, with who comes and how.
 *
 * @returns null where the class is not harmed at all
 */
export function judgedWeek(
  demand: Pick<CaseDemand, Column> & Work,
  scene: Scene,
  column: Column,
  cls: HarmClass,
): JudgedWeek | null {
  const { courses, byHour } = demand[column];
  const deadlines = courses.map((course) => course.deadlines.find(({ harm }) => harm.class === cls) ?? null);
  if (deadlines.every((one) => one === null)) return null;
  const meetings = courses.map((course) => meeting(course, scene, demand));
  const { hours } = scene.line;
  const indexes = hours.map(({ hourOfDay }) => byHour[hourOfDay] ?? 0);
  const met = hours.map(({ atS }, h) => meetings[indexes[h] ?? 0]?.(atS) ?? { noticeS: null, way: null });
  const found = indexes.map((index) => deadlines[index] ?? null);
  const lastS = found.map((one) => one?.lastS ?? null);
  const spareS = lastS.map((last, h) => {
    const way = met[h]?.way;
    return last === null ? Number.POSITIVE_INFINITY : way ? last - way.putRightS : Number.NEGATIVE_INFINITY;
  });
  const verdict = verdictOf({
    harmS: found.map((one) => one?.harm.atS ?? null),
    lastChanceS: lastS,
    noticeS: met.map(({ noticeS }) => noticeS),
    putRightS: met.map(({ way }) => way?.putRightS ?? null),
  });
  return { harm: found.map((one) => one?.harm ?? null), lastS, met, spareS, verdict };
}
