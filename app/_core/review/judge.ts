import { alarmsOfCase } from './alarms-of-case';
import type { Context, View } from './context';
import { coursesOf } from './courses';
import { judgementOf } from './judgement';
import { leanedOnIn } from './news';
import type { Courses } from './outcome';
import { remediesOf } from './remedies-of';
import { rangeChanges } from './range';
import { reasonNot } from './reason-not';
import type { FaultCase, Judgement } from './result';
import type { Subject } from './trial';

/** Judge one fault case in both columns, and whether the plausible range of the inputs would change it. */
export function judge(context: Context, subject: Subject): FaultCase {
  const { fault, thing, state } = subject;
  const head = {
    id: `${fault.id}:${thing.key}:${state}`,
    fault: fault.id,
    title: fault.title,
    thing,
    state,
    remedies: remediesOf(context, subject),
  };
  const view = context.view('nominal');
  const none = { unsure: false, outsideValidity: false, optimistic: false };
  const barred = reasonNot(view);
  if (barred) {
    const judgement: Judgement = { verdict: 'not-assessed', outcomes: [], acted: [], reason: barred };
    return { ...head, ...none, claimed: judgement, tested: judgement };
  }
  const pair = inBothColumns(context, view, subject);
  const alarms = pair.courses[0] ? alarmsOfCase(context, view, subject, pair.courses[0], pair.claimed.outcomes) : [];
  const c: FaultCase = {
    ...head,
    claimed: pair.claimed,
    tested: pair.tested,
    unsure: unsure(context, subject, pair.claimed),
    outsideValidity: pair.courses.some((c) => c.trials.some((t) => t.record.outside)),
    optimistic: pair.courses.some((c) => c.trials.some((t) => t.record.optimistic)),
    ...stillAndBound(pair.courses),
    ...(alarms.length > 0 ? { alarms } : {}),
  };
  context.judged.set(c.id, c);
  return c;
}

/** Which tanks stood without movement, and whether an oxidant is a bound; nothing where neither is so. */
function stillAndBound(courses: readonly Courses[]): Pick<FaultCase, 'still' | 'bound'> {
  const records = courses.flatMap((c) => c.trials.map((t) => t.record));
  const still = [...new Set(records.flatMap((record) => [...record.still]))].sort();
  return {
    ...(still.length > 0 ? { still } : {}),
    ...(records.some((record) => record.bound) ? { bound: true as const } : {}),
  };
}

/**
 * A state that passes leaves the water much as it found it: where it comes to the same verdict as normal running, the plausible
 * ranges are not tried a second time.
 */
function unsure(context: Context, subject: Subject, claimed: Judgement): boolean {
  const normal = context.judged.get(`${subject.fault.id}:${subject.thing.key}:normal`);
  if (normal && normal.claimed.verdict === claimed.verdict) return normal.unsure;
  return rangeChanges(context, subject, claimed);
}

function inBothColumns(
  context: Context,
  view: View,
  subject: Subject,
): { claimed: Judgement; tested: Judgement; courses: Courses[] } {
  const courses = coursesOf(context, view, subject, 'claimed');
  const claimed = judgementOf(context, view, subject, courses, 'claimed');
  const leansOnUntested = courses.trials.some((trial) =>
    [...leanedOnIn(trial)].some((key) => !context.credit.tested(key)),
  );
  if (!leansOnUntested)
    return { claimed, tested: judgementOf(context, view, subject, courses, 'tested'), courses: [courses] };
  const again = coursesOf(context, view, subject, 'tested');
  return { claimed, tested: judgementOf(context, view, subject, again, 'tested'), courses: [courses, again] };
}
