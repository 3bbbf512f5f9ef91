import { expect, test } from 'vitest';
import { contextOf } from '#core/review/context';
import { type Subject, upsetOf } from '#core/review/trial';
import { subjectsOf } from '#core/review/subjects';
import { buildMachine } from '#core/simulate/build-machine';
import { run } from '#core/simulate/run';
import type { Record } from '#core/simulate/world';
import { REVIEWED_ON } from '../../_support/build-system';
import { dice } from './random-system';
import { referenceMarch } from './reference-march';
import { richSite } from './rich-system';

// Outside reference: ODEX of Hairer and Wanner (package odex 2.0.4) at a tolerance of 1e-10, on the same equations.
const SYSTEMS = 200;
/** Hours that a course is followed: short and long ones in turn. */
const HOURS = [1, 2, 4, 12] as const;
const WITHIN_S = 1;
interface Course {
  untilS: number;
  own: Record;
  reference: Record;
}

function bothWays(seed: number): Course & { subject: Subject } {
  const site = richSite(seed);
  const [system] = site.systems;
  if (!system) throw new Error('a random site has a system');
  const context = contextOf(site, system, REVIEWED_ON);
  const view = context.view('nominal');
  const subjects = subjectsOf(site, system);
  const subject = subjects[Math.floor(dice(seed + 7000)() * subjects.length)];
  if (!subject) throw new Error('a random system has fault cases');
  const untilS = 3600 * (HOURS[seed % HOURS.length] ?? 8);
  // From a moment of a normal day, a little disturbed: at perfect rest the reference finds no step to begin with.
  const normal = view.nominal.at(8);
  const snapshot = { ...normal, x: normal.x.map((value, i) => value * (1 + 1e-3 * Math.sin(i + seed))) };
  const course = (marchTo?: ReturnType<typeof referenceMarch>) => {
    const machine = buildMachine({
      facility: site,
      system,
      resolved: view.resolved,
      upset: upsetOf(context, subject),
      credited: context.credit.claimed,
      state: 'normal',
      profileOf: context.profileOf,
      snapshot,
    });
    return run(machine, { untilS, clockS: 8 * 3600, stopAt: null, settle: false, marchTo });
  };
  return { subject, untilS, own: course(), reference: course(referenceMarch(1e-10)) };
}

/** Everything that happened, named, with its times. */
function happenings(record: Record): Map<string, number[]> {
  const found = new Map<string, number[]>();
  const add = (what: string, t: number) => found.set(what, [...(found.get(what) ?? []), t]);
  for (const s of record.switches) add(`device ${s.device} ${s.on ? 'on' : 'off'}`, s.t);
  for (const h of record.harms) add(`${h.what} ${h.direction} ${h.limit} in ${h.tank}`, h.atS);
  for (const [key, t] of record.signs) add(`sign ${key}`, t);
  for (const e of record.events) add(e.what, e.t);
  return found;
}

/** Events of one course that the other lacks, or has at another time by more than a second. Grazes at the very end apart. */
function differences({ own, reference, untilS }: Course): string[] {
  const a = happenings(own);
  const b = happenings(reference);
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((what) => {
    const inside = (list: number[] | undefined) => (list ?? []).filter((t) => t < untilS - WITHIN_S);
    const mine = inside(a.get(what));
    const theirs = inside(b.get(what));
    if (mine.length !== theirs.length) return [`${what}: ${mine.length} times, reference ${theirs.length}`];
    const apart = mine.map((t, i) => Math.abs(t - (theirs[i] ?? Number.NaN)));
    const worst = Math.max(0, ...apart);
    return worst <= WITHIN_S ? [] : [`${what}: ${worst.toFixed(3)} s apart`];
  });
}

test(`the same events as the reference library within ${WITHIN_S} s, on ${SYSTEMS} random systems with a random fault`, () => {
  let events = 0;
  const wrong = Array.from({ length: SYSTEMS }, (_, i) => i + 1).flatMap((seed) => {
    const course = bothWays(seed);
    events += [...happenings(course.reference).values()].flat().length;
    return differences(course).map((line) => `seed ${seed}, ${course.subject.fault.id}: ${line}`);
  });
  expect(wrong).toEqual([]);
  // The comparison means something only if much happens.
  expect(events).toBeGreaterThan(5 * SYSTEMS);
}, 300_000);
