import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { type Context, contextOf } from '#core/review/context';
import { coursesOf, firstCourses } from '#core/review/courses';
import { emptyCache } from '#core/review/review-cache';
import { reviewPiece, reviewSystem } from '#core/review/review-system';
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
/** Reviews of one process: the first also pays for compiling, as that of a worker that has just started. */
const REVIEWS = 6;
/** Fault cases compared: every so-manieth. */
const EVERY = 7;
/** Accuracy the reference is asked for: the loosest of these at which its events lie within a second. */
const TOLERANCES = [1e-5, 1e-6, 1e-7, 1e-8];

/** CPU milliseconds of this process that a piece of work takes, run after run: with the compiler and the collector beside it. */
function cpuOfEach(times: number, work: () => void): number[] {
  return Array.from({ length: times }, () => {
    const before = process.cpuUsage();
    work();
    const used = process.cpuUsage(before);
    return (used.user + used.system) / 1000;
  });
}

/** The least of some runs. */
function cpu(times: number, work: () => void): number {
  return Math.min(...cpuOfEach(times, work));
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

/** The share of the parts of a review, each made by itself: what remains is last chances, notices and words. */
function parts(site: Facility, system: System, wholeMs: number): string {
  const context = contextOf(site, system, REVIEWED_ON);
  const sides = ['nominal', 'warm', 'cold'] as const;
  const days = cpu(1, () => sides.map((side) => context.view(side)));
  const subjects = subjectsOf(site, system).filter(({ state }) => state === 'normal');
  const courses = cpu(1, () =>
    subjects.map((subject) => coursesOf(context, context.view('nominal'), subject, 'claimed')),
  );
  const whether = (side: (typeof sides)[number]) => () =>
    subjects.map((subject) => [...firstCourses(context, context.view(side), subject, 'whether')]);
  const ranges = cpu(1, whether('warm')) + cpu(1, whether('cold'));
  const share = (ms: number) => `${((100 * ms) / wholeMs).toFixed(0)} %`;
  return `  where it goes: normal days ${share(days)}, courses of normal running ${share(courses)}, both sides of the plausible ranges at most ${share(ranges)}, the rest last chances, other states, people and words`;
}

/** A change of people, of a time of work and of a heater, each against what an earlier review has kept. */
function edits(site: Facility, system: System): string[] {
  const again = (name: string, of: Facility) => {
    const [own] = of.systems;
    if (!own) throw new Error('the bench site has a system');
    const cache = emptyCache();
    reviewSystem(site, system, REVIEWED_ON, undefined, false, cache);
    const ms = cpu(1, () => reviewSystem(of, own, REVIEWED_ON, undefined, false, cache));
    return `  after a change of ${name} ${ms.toFixed(0)} ms (aim: 300 ms for what it touches)`;
  };
  const own = (name: string, key: string, of: Facility) => {
    const [its] = of.systems;
    if (!its) throw new Error('the bench site has a system');
    let cases = 0;
    const ms = cpu(3, () => {
      cases = reviewPiece(of, its, REVIEWED_ON, key).cases.length;
    });
    return `  after a change of ${name}, its own ${cases} cases first ${ms.toFixed(0)} ms (aim: 300 ms for what it touches)`;
  };
  const fitted = (equipment: System['equipment']): Facility => ({ ...site, systems: [{ ...system, equipment }] });
  const bigger = fitted(
    system.equipment.map((e) => (e.key === 'heater-1' ? { ...e, ratedW: { value: 650, origin: 'entered' } } : e)),
  );
  return [
    again('the people', { ...site, shifts: site.shifts.slice(1) }),
    again(
      'the time of work',
      fitted(system.equipment.map((e) => ({ ...e, repairMin: { value: 95, origin: 'entered' } }))),
    ),
    own('a heater', 'heater-1', bigger),
    again('a heater, and all that it may change in other cases', bigger),
  ];
}

/** Megabytes that what an earlier review has kept takes; 0 where the collector cannot be called. */
function keptMb(site: Facility, system: System): number {
  const collect = (globalThis as { gc?: () => void }).gc;
  if (!collect) return 0;
  collect();
  const before = process.memoryUsage();
  const cache = emptyCache();
  reviewSystem(site, system, REVIEWED_ON, undefined, false, cache);
  collect();
  const after = process.memoryUsage();
  const kept = after.heapUsed + after.arrayBuffers - before.heapUsed - before.arrayBuffers;
  return cache.courses.size > 0 ? kept / 1e6 : 0;
}

/** The review of a twelve-tank system, and the same courses by our integrator and by the reference library. */
export function benchReview(): string[] {
  const site = twelveTankSite();
  const [system] = site.systems;
  if (!system) throw new Error('the bench site has a system');
  let cases = 0;
  const each = cpuOfEach(REVIEWS, () => {
    cases = reviewSystem(site, system, REVIEWED_ON).cases.length;
  });
  const whole = Math.min(...each);
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
    `Review of a twelve-tank system, every single fault in every state that matters (${cases} cases), both columns, plausible ranges:`,
    `  ${whole.toFixed(0)} ms of CPU (aim: 2000 ms on one core), the least of ${REVIEWS} in a row: ${each.map((ms) => ms.toFixed(0)).join(', ')}`,
    parts(site, system, whole),
    ...edits(site, system),
    `  kept for the next review ${keptMb(site, system).toFixed(0)} MB (0: not measured)`,
    `Integrator: ${subjects.length} fault courses of ${HOURS} h on the same equations and events`,
    `  own ${ownMs.toFixed(0)} ms, events within ${error(own).toFixed(3)} s of the reference at 1e-10`,
    `  reference library at ${equal} ${referenceMs.toFixed(0)} ms, events within ${error(courses(equal)).toFixed(3)} s`,
    `  ratio ${(referenceMs / ownMs).toFixed(1)} times faster (aim: 10)`,
  ];
}
