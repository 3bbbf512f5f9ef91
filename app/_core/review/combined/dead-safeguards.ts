import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import { safeguardsOf } from '../../plans/credit';
import { coursesOf } from '../courses';
import { gravestOutcome } from '../gravest';
import { leanedOnIn, newsOf } from '../news';
import { callsOf } from '../notice';
import { judgementOf } from '../judgement';
import { CLASSES, type Courses } from '../outcome';
import type { FaultCase, Judgement } from '../result';
import type { Combination, Part } from '../study';
import type { Subject } from '../trial';
import { WATCHDOG } from '../../simulate/build-alarms';
import { combined, faultPart } from './combination';
import { frequencyOf } from './frequency';
import type { Look, Scene } from './look';

/** A safeguard that a fault case leans on, and how. */
interface Touch {
  key: string;
  /** It acts on the water or carries an alarm's way, so the course is another without it; else it only makes somebody know. */
  acts: boolean;
}

/**
 * One fault case with each safeguard dead in turn, as far as anything changes by it. What a course does not lean on is not
 * tried: a cut-out, lock, limit, break or battery that never came into play, in the course itself, in what the state does
 * alone, in the same fault in normal running or in the normal day, leaves every run as it was; and the way of an alarm that
 * was never raised tells nobody anything.
 * @returns those that come out otherwise than the fault alone, how many were tried, and whether any alarm tells of it
 */
export function deadSafeguardsOf(
  look: Look,
  { subject, case: c }: Look['tried'][number],
): { combinations: Combination[]; tried: number; isTold: boolean } {
  const { context, view } = look;
  const courses = coursesOf(context, view, subject, 'claimed');
  prime(courses, c.claimed);
  const { touched, isTold } = touchedBy(look, subject, courses);
  const alone = gravestOutcome(c.claimed);
  const combinations = touched.flatMap((touch): Combination[] => {
    const judgement = withDead(look.without(touch.key), subject, touch.acts ? null : courses);
    const worst = gravestOutcome(judgement);
    if (worst.rank === alone.rank && worst.spareS === alone.spareS) return [];
    const parts: Part[] = [faultPart(subject), safeguardPart(look, touch.key)];
    return [
      combined({
        kind: 'safeguard-dead',
        state: subject.state,
        parts,
        because: '',
        alone: alone.verdict,
        judgement,
        perYear: frequencyOf(look, parts),
      }),
    ];
  });
  return { combinations, tried: touched.length, isTold };
}

/** A fault case with a safeguard dead, tried whether or not it leans on it. Courses that are known to stay the same may be given. */
export function withDead({ context, view }: Scene, subject: Subject, same: Courses | null): Judgement {
  const courses = same ?? coursesOf(context, view, subject, 'claimed');
  return judgementOf(context, view, subject, courses, 'claimed');
}

/** Safeguards that a fault case leans on, and whether any alarm that counts tells of it. */
function touchedBy(
  { context, view, facility, system }: Look,
  subject: Subject,
  courses: Courses,
): { touched: Touch[]; isTold: boolean } {
  const acting = new Set(view.nominal.acted);
  const telling = new Set<string | undefined>();
  let isTold = false;
  for (const trial of courses.trials) {
    for (const key of leanedOnIn(trial)) acting.add(key);
    const news = newsOf(context, view, subject, 'claimed', trial);
    for (const key of news.leanedOn) acting.add(key);
    const calls = callsOf(context, news, 'claimed');
    isTold ||= calls.length > 0;
    for (const { key } of calls) telling.add(wayOf(facility, system, key));
  }
  const touched = safeguardsOf(facility, system)
    .filter(({ key }) => context.credit.claimed(key) && (acting.has(key) || telling.has(key)))
    .map(({ key }) => ({ key, acts: acting.has(key) }));
  return { touched, isTold };
}

/** The safeguard that proves the way of an alarm to a person. */
function wayOf(facility: Facility, system: System, alarm: string): string | undefined {
  if (alarm === WATCHDOG) return facility.site.watchdog?.safeguard;
  return system.alarms.find(({ key }) => key === alarm)?.safeguard;
}

function safeguardPart({ facility, system }: Look, key: string): Part {
  const found = safeguardsOf(facility, system).find((one) => one.key === key);
  return { kind: 'safeguard', key, name: found?.name ?? key };
}

/** Last chances that the review has found already need not be found again where the water takes the same course. */
export function prime(courses: Courses, { outcomes }: FaultCase['claimed']): void {
  for (const [i] of courses.trials.entries()) {
    const hour = courses.byHour.indexOf(i);
    if (hour < 0) continue;
    for (const cls of CLASSES) {
      const outcome = outcomes.find(({ harm }) => harm.class === cls);
      if (outcome) courses.chances.set(`${i} ${cls}`, outcome.lastChanceS[hour] ?? null);
    }
  }
}
