import type { Side } from '../equipment/take';
import type { Context, View } from './context';
import { type Course, firstCourses } from './courses';
import { avoids } from './last-chance';
import { newsOf } from './news';
import { callsOf, responder } from './notice';
import { CLASSES } from './outcome';
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
  const before = claimed.outcomes[0]?.harm.class;
  if (before !== undefined) return turns(context, view, subject, before, claimed.verdict);
  // Where nothing was harmed only a harm would change it, whoever might come to know of it.
  for (const { trial } of firstCourses(context, view, subject, 'whether'))
    if (trial.record.harms.length > 0) return true;
  return false;
}

/**
 * Whether a graver harm comes of it, or any hour of the week falls on the other side of what the verdict says of the harm
 * there was before. A side on which the water does better than at nominal values is not the bad one for that harm. No course
 * is run once the answer is known.
 */
function turns(context: Context, view: View, subject: Subject, cls: HarmClass, verdict: Verdict): boolean {
  const repairS = repairTime(context, view, subject);
  const isGravest = rank(cls) === 0;
  let comes = false;
  let isSafe = false;
  for (const course of firstCourses(context, view, subject, 'when')) {
    const { trial } = course;
    if (trial.record.harms.some((harm) => rank(harm.class) < rank(cls))) return true;
    const isHarmed = harmful(trial, cls);
    const isAvoided = () =>
      !isHarmed || inTime(trial, cls, turningMoment(context, view, subject, course, verdict, repairS));
    comes ||= isHarmed;
    if (verdict === 'covered' && !isAvoided()) return true;
    if (verdict !== 'covered' && !isSafe && isAvoided()) isSafe = true;
    // One course that is safe settles it, unless another may bring a graver harm.
    if (isSafe && isGravest) return false;
  }
  return comes && !isSafe && (verdict === 'some-hours' || verdict === 'too-late');
}

/** s after the onset at which a verdict turns, in a course: the latest or the soonest putting right of its hours, or the soonest notice. */
function turningMoment(
  context: Context,
  view: View,
  subject: Subject,
  { trial, hours }: Course,
  verdict: Verdict,
  repairS: number,
): number {
  const news = newsOf(context, view, subject, 'claimed', trial);
  const way = responder(callsOf(context, news, 'claimed'), news.signs, repairS);
  const all = Array.from({ length: HOURS_OF_WEEK }, (_, h) => h).filter((h) => hours.includes(h % 24));
  const responses = all.map((h) => way(view, h * HOUR));
  const never = Number.POSITIVE_INFINITY;
  if (verdict === 'covered') return Math.max(...responses.map(({ putRightS }) => putRightS ?? never));
  if (verdict === 'some-hours') return Math.min(...responses.map(({ putRightS }) => putRightS ?? never));
  return Math.min(...responses.map(({ noticeS }) => noticeS ?? never));
}

function inTime(trial: Trial, cls: HarmClass, t: number): boolean {
  return t < soonest(trial, cls) && avoids(trial, cls, t);
}

function harmful(trial: Trial, cls: HarmClass): boolean {
  return trial.record.harms.some((h) => h.class === cls);
}

/** First harm of a class, s after the onset; Infinity without one. */
function soonest(trial: Trial, cls: HarmClass): number {
  return Math.min(Number.POSITIVE_INFINITY, ...trial.record.harms.filter((h) => h.class === cls).map((h) => h.atS));
}

/** How grave a class is: 0 the gravest. */
function rank(cls: HarmClass): number {
  return CLASSES.indexOf(cls);
}
