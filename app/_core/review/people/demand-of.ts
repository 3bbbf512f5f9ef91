import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import type { Column } from '../../plans/credit';
import { typeToMend } from '../able-for';
import { type Context, contextOf, type View } from '../context';
import { coursesOf } from '../courses';
import { lastChance } from '../last-chance';
import { namedHarm } from '../named-harm';
import { leanedOnIn, newsOf } from '../news';
import { callsOf } from '../notice';
import { CLASSES, type Courses } from '../outcome';
import { reasonNot } from '../reason-not';
import { spareTime, workTime } from '../repair';
import type { HarmClass, SystemReview } from '../result';
import type { ReviewCache } from '../review-cache';
import { subjectsOf } from '../subjects';
import type { Subject, Trial } from '../trial';
import { caseTitle } from '../words';
import type { CaseDemand, ColumnDemand, CourseDemand, Deadline, SystemDemand } from './demand';

/**
 * What the fault cases of a review ask of people. With the cache of that review it costs no run of the model; without one it
 * costs what the review did.
 *
 * @param review   of the same system on the same day: its cases are the ones that are told of
 * @param on       ISO date in the site's zone on which tests are judged
 */
export function demandOf(
  facility: Facility,
  system: System,
  on: string,
  { cases }: Pick<SystemReview, 'cases'>,
  cache: ReviewCache | null = null,
): SystemDemand {
  const context = contextOf(facility, system, on, null, cache);
  const view = context.view('nominal');
  const harmful = new Set(
    cases.filter((c) => c.claimed.outcomes.length + c.tested.outcomes.length > 0).map(({ id }) => id),
  );
  const asked = reasonNot(view) ? [] : subjectsOf(facility, system);
  return {
    system: system.key,
    cases: asked.flatMap((subject) => {
      const id = `${subject.fault.id}:${subject.thing.key}:${subject.state}`;
      return harmful.has(id) ? [caseDemand(context, view, subject, id)] : [];
    }),
  };
}

function caseDemand(context: Context, view: View, subject: Subject, id: string): CaseDemand {
  const courses = coursesOf(context, view, subject, 'claimed');
  const isUntested = courses.trials.some((trial) => [...leanedOnIn(trial)].some((key) => !context.credit.tested(key)));
  const again = isUntested ? coursesOf(context, view, subject, 'tested') : courses;
  const workS = workTime(context, view, subject);
  return {
    id,
    title: caseTitle({ title: subject.fault.title, thing: subject.thing, state: subject.state }),
    type: typeToMend(context.system, subject),
    spareS: spareTime(context, view, subject),
    workS: Number.isFinite(workS) ? workS : null,
    claimed: columnDemand(context, view, subject, 'claimed', courses),
    tested: columnDemand(context, view, subject, 'tested', again),
  };
}

function columnDemand(context: Context, view: View, subject: Subject, column: Column, courses: Courses): ColumnDemand {
  const told = courses.trials.map((trial, index): CourseDemand => {
    const news = newsOf(context, view, subject, column, trial);
    const deadlines = CLASSES.flatMap((cls) => deadlineOf(context, courses, trial, index, cls));
    return { calls: callsOf(context, news, column), signs: [...news.signs], deadlines };
  });
  return { courses: told, byHour: courses.byHour };
}

function deadlineOf(context: Context, courses: Courses, trial: Trial, index: number, cls: HarmClass): Deadline[] {
  const harms = trial.record.harms.filter((harm) => harm.class === cls);
  const [first] = [...harms].sort((a, b) => a.atS - b.atS);
  if (!first) return [];
  const id = `${index} ${cls}`;
  const lastS = courses.chances.get(id) ?? lastChance(trial, cls);
  courses.chances.set(id, lastS);
  return lastS === null ? [] : [{ harm: namedHarm(context.system.tanks, first), lastS }];
}
