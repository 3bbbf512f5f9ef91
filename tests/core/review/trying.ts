import type { Facility } from '#core/facility/facility';
import type { StateName } from '#core/facility/system';
import type { Column } from '#core/plans/credit';
import type { Safeguard } from '#core/plans/safeguard';
import { type Context, contextOf } from '#core/review/context';
import { judge } from '#core/review/judge';
import { newsOf } from '#core/review/news';
import { callsOf, type Response, respond } from '#core/review/notice';
import type { FaultCase } from '#core/review/result';
import { subjectsOf } from '#core/review/subjects';
import { type Subject, type Trial, tryAt } from '#core/review/trial';
import { HOUR } from '#core/time/week';
import { REVIEWED_ON } from '../../_support/build-system';

/** Judging of the first system of a site, as of `REVIEWED_ON`. */
export function judging(site: Facility): Context {
  const [system] = site.systems;
  if (!system) throw new Error('a site without a system has nothing to judge');
  return contextOf(site, system, REVIEWED_ON);
}

/** The same safeguard, never tested. */
export function untested(of: Safeguard): Safeguard {
  return { ...of, tests: [] };
}

/** The fault case that is meant, out of all of a system. */
export function subject(
  { facility, system }: Context,
  fault: string,
  thing?: string,
  state: StateName = 'normal',
): Subject {
  const found = subjectsOf(facility, system).find(
    (one) => one.fault.id === fault && one.state === state && (thing === undefined || one.thing.key === thing),
  );
  if (!found) throw new Error(`there is no fault case ${fault}:${thing ?? 'anything'}:${state}`);
  return found;
}

/** Judge one fault case of a site. */
export function judged(site: Facility, fault: string, thing?: string, state?: StateName): FaultCase {
  const context = judging(site);
  return judge(context, subject(context, fault, thing, state));
}

/** Let one fault case run from an hour of the day at nominal values. */
export function tried(context: Context, of: Subject, hour = 2, column: Column = 'claimed'): Trial {
  return tryAt(context, context.view('nominal'), of, column, hour);
}

/** Who comes to know of a fault that begins at an hour of the week, and when it is put right with no time spent on the work. */
export function answered(
  context: Context,
  of: Subject,
  { hour = 2, column = 'claimed', workS = 0 }: { hour?: number; column?: Column; workS?: number } = {},
): Response {
  const view = context.view('nominal');
  const news = newsOf(context, view, of, column, tried(context, of, hour % 24, column));
  return respond(view, callsOf(context, news, column), news.signs, hour * HOUR, workS);
}
