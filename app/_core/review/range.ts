import type { Side } from '../equipment/take';
import type { Context, View } from './context';
import { coursesOf } from './courses';
import { avoids } from './last-chance';
import { newsOf } from './news';
import { callsOf, responder } from './notice';
import { CLASSES, type Courses } from './outcome';
import { reasonNot } from './reason-not';
import { repairTime } from './repair';
import type { HarmClass, Judgement, Verdict } from './result';
import { type Subject, type Trial, touchesWater, upsetOf } from './trial';
import { HOUR, HOURS_OF_WEEK } from '../time/week';

/**
 * Whether the plausible range of the inputs, on the bad side for what a fault threatens, would change its verdict.
 * Asked as claimed, and only about the change: the last chance itself need not be found again, only whether it still lies
 * beyond (or before) the moment that the verdict turns on.
 */
export function rangeChanges(context: Context, subject: Subject, claimed: Judgement): boolean {
  // Nothing is graver than no warning; and a fault that touches no water depends on no figure.
  if (claimed.verdict === 'no-warning' || !touchesWater(context, upsetOf(context, subject))) return false;
  return sidesOf(subject).some((side) => changesOn(context, subject, claimed, side));
}

/** The bad sides of a subject. */
export function sidesOf(subject: Subject): Side[] {
  return subject.fault.threatens === 'either' ? ['warm', 'cold'] : [subject.fault.threatens];
}

/**
 * Whether the verdict changes when inputs (or the one named) take their bad end on a side.
 * @param only path of the single figure that takes its bad end; null for all
 */
export function changesOn(
  context: Context,
  subject: Subject,
  claimed: Judgement,
  side: Side,
  only: string | null = null,
): boolean {
  const view = context.view(side, only);
  if (reasonNot(view)) return true;
  // Where nothing was harmed only a harm would change it, whoever might come to know of it.
  const quick = claimed.outcomes.length > 0 || 'unwatched';
  const courses = coursesOf(context, view, subject, 'claimed', quick);
  const cls = CLASSES.find((c) => courses.trials.some((t) => t.record.harms.some((h) => h.class === c)));
  const before = claimed.outcomes[0]?.harm.class;
  // A side on which the water does better than at nominal values is not the bad one for that harm.
  if (cls !== before) return rank(cls) < rank(before);
  return cls !== undefined && turns(context, view, subject, courses, cls, claimed.verdict);
}

/** Whether any hour of the week falls on the other side of what the verdict says of it. */
function turns(
  context: Context,
  view: View,
  subject: Subject,
  courses: Courses,
  cls: HarmClass,
  verdict: Verdict,
): boolean {
  const repairS = repairTime(context, view, subject);
  const moments = courses.trials.map(() => ({ rights: [] as number[], notices: [] as number[] }));
  const ways = courses.trials.map((trial) => {
    const news = newsOf(context, view, subject, 'claimed', trial);
    return responder(callsOf(context, news, 'claimed'), news.signs, repairS);
  });
  for (let h = 0; h < HOURS_OF_WEEK; h++) {
    const i = courses.byHour[h % 24] ?? 0;
    const way = ways[i];
    if (!way) continue;
    const { putRightS, noticeS } = way(view, h * HOUR);
    moments[i]?.rights.push(putRightS ?? Number.POSITIVE_INFINITY);
    moments[i]?.notices.push(noticeS ?? Number.POSITIVE_INFINITY);
  }
  const inTime = (trial: Trial, t: number) => t < soonest(trial, cls) && avoids(trial, cls, t);
  switch (verdict) {
    case 'covered':
      return courses.trials.some(
        (trial, i) => harmful(trial, cls) && !inTime(trial, Math.max(...(moments[i]?.rights ?? []))),
      );
    case 'some-hours':
      return !courses.trials.some(
        (trial, i) => !harmful(trial, cls) || inTime(trial, Math.min(...(moments[i]?.rights ?? []))),
      );
    case 'too-late':
      return !courses.trials.some(
        (trial, i) => !harmful(trial, cls) || inTime(trial, Math.min(...(moments[i]?.notices ?? []))),
      );
    case 'not-assessed':
    case 'dormant':
    case 'holds':
    case 'no-warning':
      return false;
  }
}

function harmful(trial: Trial, cls: HarmClass): boolean {
  return trial.record.harms.some((h) => h.class === cls);
}

/** First harm of a class, s after the onset; Infinity without one. */
function soonest(trial: Trial, cls: HarmClass): number {
  return Math.min(Number.POSITIVE_INFINITY, ...trial.record.harms.filter((h) => h.class === cls).map((h) => h.atS));
}

/** How grave a class is: 0 the gravest, no harm at all last. */
function rank(cls: HarmClass | undefined): number {
  return cls === undefined ? CLASSES.length : CLASSES.indexOf(cls);
}
