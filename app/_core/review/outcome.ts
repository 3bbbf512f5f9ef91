import type { Column } from '../plans/credit';
import { HOUR, HOURS_OF_WEEK } from '../time/week';
import type { Context, View } from './context';
import { ableFor } from './able-for';
import { lastChance } from './last-chance';
import { namedHarm } from './named-harm';
import { newsOf } from './news';
import { callsOf, responder } from './notice';
import type { Harm, HarmClass, Outcome } from './result';
import type { Subject, Trial } from './trial';
import { verdictOf } from './verdict';
import { worstHour } from './words';

/** Classes of harm, gravest first. */
export const CLASSES: readonly HarmClass[] = ['animals', 'floor', 'equipment'];

/** Courses of one fault case by hour of the day: one for every hour that makes a difference. */
export interface Courses {
  trials: Trial[];
  /** Which trial stands for each hour of the day. */
  byHour: number[];
  /** Last chances already found, by trial and class. */
  chances: Map<string, number | null>;
}

/**
 * What the hours of the week make of each class of harm that the courses reach.
 * @param repairS s of work to put it right
 * @param people who can come when it begins at an hour of the week; whoever is on the rota when left out
 * @returns gravest first; empty when nothing is harmed
 */
export function outcomesOf(
  context: Context,
  view: View,
  subject: Subject,
  courses: Courses,
  column: Column,
  repairS: number,
  people: (hour: number) => Pick<View, 'cover' | 'walks'> = () => view,
): Outcome[] {
  const able = ableFor(context, subject);
  const prepared = courses.trials.map((trial) => {
    const news = newsOf(context, view, subject, column, trial);
    return responder(callsOf(context, news, column), news.signs, repairS, able);
  });
  if (courses.trials.every((trial) => trial.record.harms.length === 0)) return [];
  const unheard = responder([], new Map(), repairS);
  const responses = Array.from({ length: HOURS_OF_WEEK }, (_, h) =>
    (prepared[courses.byHour[h % 24] ?? 0] ?? unheard)(people(h), h * HOUR),
  );
  return CLASSES.flatMap((cls) => {
    if (courses.trials.every((trial) => firstHarm(trial, cls) === null)) return [];
    const chance = courses.trials.map((trial, i) => chanceOf(courses, trial, i, cls));
    const at = courses.trials.map((trial) => firstHarm(trial, cls)?.atS ?? null);
    const by = <T>(list: T[], h: number): T => list[courses.byHour[h % 24] ?? 0] as T;
    const lastChanceS = responses.map((_, h) => by(chance, h));
    const putRightS = responses.map((r) => r.putRightS);
    const hours: Omit<Outcome, 'verdict' | 'harm'> = {
      lastChanceS,
      harmS: responses.map((_, h) => by(at, h)),
      noticeS: responses.map((r) => r.noticeS),
      noticeBy: responses.map((r) => r.notice),
      putRightS,
      spareS: lastChanceS.map((last, h) => spare(last, putRightS[h] ?? null)),
    };
    const harm = harmAt(courses, worstHour(hours), cls);
    return harm ? [{ harm: namedHarm(context.system.tanks, harm), ...hours, verdict: verdictOf(hours) }] : [];
  });
}

function spare(last: number | null, putRight: number | null): number | null {
  return last === null || putRight === null ? null : last - putRight;
}

function chanceOf(courses: Courses, trial: Trial, index: number, cls: HarmClass): number | null {
  const id = `${index} ${cls}`;
  const known = courses.chances.get(id);
  if (known !== undefined) return known;
  const found = lastChance(trial, cls);
  courses.chances.set(id, found);
  return found;
}

function firstHarm(trial: Trial, cls: HarmClass): Harm | null {
  let first: Harm | null = null;
  for (const harm of trial.record.harms)
    if (harm.class === cls && (first === null || harm.atS < first.atS)) first = harm;
  return first;
}

/** The first harm of a class when a fault begins at an hour of the week. */
function harmAt(courses: Courses, hour: number, cls: HarmClass): Harm | null {
  const trial = courses.trials[courses.byHour[hour % 24] ?? 0];
  return trial ? firstHarm(trial, cls) : null;
}
