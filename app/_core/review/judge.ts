import { DEFAULTS } from '../equipment/defaults';
import type { Side } from '../equipment/take';
import { MORE, take, taker } from '../equipment/take';
import type { Column } from '../plans/credit';
import type { Context, View } from './context';
import { disabledBy } from './disabled';
import { type Courses, outcomesOf } from './outcome';
import type { FaultCase, Judgement, Verdict } from './result';
import { type Subject, touchesWater, tryAt, upsetOf } from './trial';
import { gravity } from './verdict';

/** Hours of the day tried first when they differ at all; every hour is tried once one of them leads to harm. */
const COARSE = [2, 8, 14, 20];

/** Judge one fault case in both columns, and whether the plausible range of the inputs would change it. */
export function judge(context: Context, subject: Subject): FaultCase {
  const { fault, thing, state } = subject;
  const head = { id: `${fault.id}:${thing.key}:${state}`, fault: fault.id, title: fault.title, thing, state, remedies: [...fault.remedies] };
  const view = context.view('nominal');
  const none = { unsure: false, outsideValidity: false, optimistic: false };
  const barred = reasonNot(view);
  if (barred) {
    const judgement: Judgement = { verdict: 'not-assessed', outcomes: [], acted: [], reason: barred };
    return { ...head, ...none, claimed: judgement, tested: judgement };
  }
  const pair = inBothColumns(context, view, subject);
  return {
    ...head,
    claimed: pair.claimed,
    tested: pair.tested,
    unsure: rangeChanges(context, subject, pair.claimed.verdict),
    outsideValidity: pair.courses.some((c) => c.trials.some((t) => t.record.outside)),
    optimistic: pair.courses.some((c) => c.trials.some((t) => t.record.optimistic)),
  };
}

/** Why a view cannot be judged at all, in words; null when it can. */
export function reasonNot(view: View): string | null {
  if (view.resolved.missing.length > 0) return `not known: ${view.resolved.missing.join(', ')}`;
  const [harm] = view.nominal.record.harms;
  if (harm) return `the plan as written leaves the limits without any fault (${harm.what} in ${harm.tank || 'the room'})`;
  return null;
}

function inBothColumns(context: Context, view: View, subject: Subject): { claimed: Judgement; tested: Judgement; courses: Courses[] } {
  const courses = coursesOf(context, view, subject, 'claimed');
  const claimed = judgementOf(context, view, subject, courses, 'claimed');
  const leansOnUntested = claimed.acted.some((key) => !context.credit.tested(key));
  if (!leansOnUntested) return { claimed, tested: judgementOf(context, view, subject, courses, 'tested'), courses: [courses] };
  const again = coursesOf(context, view, subject, 'tested');
  return { claimed, tested: judgementOf(context, view, subject, again, 'tested'), courses: [courses, again] };
}

/** Courses from every hour of the day that makes a difference. */
export function coursesOf(context: Context, view: View, subject: Subject, column: Column): Courses {
  const chances = new Map<string, number | null>();
  const all = Array.from({ length: 24 }, (_, h) => h);
  if (!touchesWater(context, upsetOf(context, subject))) return { trials: [], byHour: all.map(() => -1), chances };
  const attempt = (hour: number) => tryAt(context, view, subject, column, hour);
  const first = attempt(COARSE[0] ?? 0);
  const sameAllDay = first.machine.room.steady && first.machine.devices.every((d) => d.regulated.kind !== 'hours');
  if (sameAllDay) return { trials: [first], byHour: all.map(() => 0), chances };
  const coarse = [first, ...COARSE.slice(1).map(attempt)];
  if (coarse.every((trial) => trial.record.harms.length === 0)) {
    return { trials: coarse, byHour: all.map((h) => nearest(h)), chances };
  }
  const trials = all.map((h) => coarse[COARSE.indexOf(h)] ?? attempt(h));
  return { trials, byHour: all, chances };
}

function nearest(hour: number): number {
  const distance = (a: number, b: number) => Math.min(Math.abs(a - b), 24 - Math.abs(a - b));
  return COARSE.reduce((best, candidate, i) => (distance(candidate, hour) < distance(COARSE[best] ?? 0, hour) ? i : best), 0);
}

/** Judge courses in a column. */
export function judgementOf(context: Context, view: View, subject: Subject, courses: Courses, column: Column): Judgement {
  const outcomes = outcomesOf(context, view, subject, courses, column, repairTime(context, view, subject));
  const acted = [...new Set(courses.trials.flatMap((t) => [...t.record.acted]))];
  const [gravest] = outcomes;
  if (gravest) return { verdict: gravest.verdict, outcomes, acted };
  const dormant = disabledBy(context, subject).length > 0;
  return { verdict: dormant ? 'dormant' : 'holds', outcomes, acted };
}

/** Seconds of work once somebody stands before it; Infinity when no means are described. */
export function repairTime(context: Context, view: View, subject: Subject): number {
  const { fault, thing } = subject;
  const { powerCut } = context.facility.site;
  const t = taker(view.resolved.side, view.resolved.only);
  switch (fault.repair) {
    case 'equipment':
      return view.resolved.devices.find((d) => d.equipment.key === thing.key)?.repairS ?? Number.POSITIVE_INFINITY;
    case 'utility':
      return powerCut ? 60 * take(t, 'site/powerCut/repairMin', powerCut.means, powerCut.repairMin, MORE) : Number.POSITIVE_INFINITY;
    case 'monitor':
      return 60 * take(t, 'repair/monitor', 'work to put right', undefined, MORE, DEFAULTS.repairMin.other);
    case 'circuit':
    case 'overflow':
    case 'sensor':
    case 'state':
      return 60 * take(t, `repair/${fault.repair}`, 'work to put right', undefined, MORE, DEFAULTS.repairMin[fault.repair]);
  }
}

/** Whether the plausible range of the inputs, on the bad side for what this fault threatens, would change the verdict. */
function rangeChanges(context: Context, subject: Subject, verdict: Verdict): boolean {
  // Nothing is graver than no warning; and a fault that touches no water depends on no figure.
  if (verdict === 'no-warning' || !touchesWater(context, upsetOf(context, subject))) return false;
  return sidesOf(subject).some((side) => verdictFrom(context, subject, side) !== verdict);
}

/** The bad sides of a subject. */
export function sidesOf(subject: Subject): Side[] {
  return subject.fault.threatens === 'either' ? ['warm', 'cold'] : [subject.fault.threatens];
}

/** Verdict as claimed when inputs (or the one named) take their bad end on a side. */
export function verdictFrom(context: Context, subject: Subject, side: Side, only: string | null = null): Verdict {
  const view = context.view(side, only);
  if (reasonNot(view)) return 'not-assessed';
  return judgementOf(context, view, subject, coursesOf(context, view, subject, 'claimed'), 'claimed').verdict;
}

/** Order of fault cases, gravest first: by verdict as claimed, then as tested, then by the least time to spare. */
export function compareCases(a: FaultCase, b: FaultCase): number {
  return (
    classRank(a) - classRank(b) ||
    gravity(a.claimed.verdict) - gravity(b.claimed.verdict) ||
    gravity(a.tested.verdict) - gravity(b.tested.verdict) ||
    leastSpare(a.claimed) - leastSpare(b.claimed) ||
    (a.id < b.id ? -1 : 1)
  );
}

function classRank(c: FaultCase): number {
  const cls = c.claimed.outcomes[0]?.harm.class ?? c.tested.outcomes[0]?.harm.class;
  return cls === undefined ? 3 : cls === 'animals' ? 0 : cls === 'floor' ? 1 : 2;
}

/** Least time to spare of the gravest class, s; −Infinity where nobody ever comes, Infinity without harm. */
export function leastSpare(judgement: Judgement): number {
  const [outcome] = judgement.outcomes;
  if (!outcome) return Number.POSITIVE_INFINITY;
  const hours = outcome.harmS.map((s, h) => (s === null ? Number.POSITIVE_INFINITY : (outcome.spareS[h] ?? Number.NEGATIVE_INFINITY)));
  return Math.min(...hours);
}
