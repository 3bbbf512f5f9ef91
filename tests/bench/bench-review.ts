import { type Context, contextOf } from '#core/review/context';
import { reviewSystem } from '#core/review/review-system';
import { subjectsOf } from '#core/review/subjects';
import { type Subject, upsetOf } from '#core/review/trial';
import { buildMachine } from '#core/simulate/build-machine';
import { run } from '#core/simulate/run';
import type { Record } from '#core/simulate/world';
import { REVIEWED_ON } from '../_support/build-system';
import { referenceMarch } from '../core/simulate/reference-march';
import { twelveTankSite } from './twelve-tanks';

/** Hours of each course that both integrators run. */
const HOURS = 12;
/** Fault cases compared: every so-manieth. */
const EVERY = 7;
/** Accuracy the reference is asked for: the loosest of these at which its events lie within a second. */
const TOLERANCES = [1e-5, 1e-6, 1e-7, 1e-8];

/** CPU milliseconds of this process that a piece of work takes, the least of some runs. */
function cpu(times: number, work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i++) {
    const before = process.cpuUsage();
    work();
    const used = process.cpuUsage(before);
    least = Math.min(least, (used.user + used.system) / 1000);
  }
  return least;
}

function course(context: Context, subject: Subject, tolerance: number | null): Record {
  const view = context.view('nominal');
  const machine = buildMachine({
    facility: context.facility,
    system: context.system,
    resolved: view.resolved,
    upset: upsetOf(context, subject),
    credited: context.credit.claimed,
    state: subject.state,
    profileOf: context.profileOf,
    snapshot: view.nominal.at(2),
  });
  const marchTo = tolerance === null ? undefined : referenceMarch(tolerance);
  return run(machine, { untilS: HOURS * 3600, clockS: 7200, stopAt: null, settle: false, marchTo });
}

/** Greatest distance in time between the switchings of two courses, s; Infinity when one has more. */
function apart(a: Record, b: Record): number {
  if (a.switches.length !== b.switches.length) return Number.POSITIVE_INFINITY;
  return Math.max(0, ...a.switches.map((s, i) => Math.abs(s.t - (b.switches[i]?.t ?? Number.NaN))));
}

/** The review of a twelve-tank system, and the same courses by our integrator and by the reference library. */
export function benchReview(): string[] {
  const site = twelveTankSite();
  const [system] = site.systems;
  if (!system) throw new Error('the bench site has a system');
  const whole = cpu(3, () => reviewSystem(site, system, REVIEWED_ON));
  const context = contextOf(site, system, REVIEWED_ON);
  const subjects = subjectsOf(site, system).filter((s, i) => s.state === 'normal' && i % EVERY === 0);
  const courses = (tolerance: number | null) => subjects.map((subject) => course(context, subject, tolerance));
  const exact = courses(1e-10);
  const error = (list: Record[]) => Math.max(...list.map((r, i) => apart(r, exact[i] as Record)));
  const own = courses(null);
  const equal = TOLERANCES.find((tolerance) => error(courses(tolerance)) <= 1) ?? 1e-10;
  const ownMs = cpu(5, () => courses(null));
  const referenceMs = cpu(1, () => courses(equal));
  return [
    'Review of a twelve-tank system, every single fault in every state that matters, both columns, plausible ranges:',
    `  ${whole.toFixed(0)} ms of CPU on one core (aim: 2000 ms)`,
    `Integrator: ${subjects.length} fault courses of ${HOURS} h on the same equations and events`,
    `  own ${ownMs.toFixed(0)} ms, events within ${error(own).toFixed(3)} s of the reference at 1e-10`,
    `  reference library at ${equal} ${referenceMs.toFixed(0)} ms, events within ${error(courses(equal)).toFixed(3)} s`,
    `  ratio ${(referenceMs / ownMs).toFixed(1)} times faster (aim: 10)`,
  ];
}
