import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import type { Equipment } from '#core/facility/system';
import type { Upset } from '#core/faults/upset';
import { contextOf } from '#core/review/context';
import { subjectsOf } from '#core/review/subjects';
import { type Subject, upsetOf } from '#core/review/trial';
import { cutOut, heater, plan } from '../../_support/build-equipment';
import { REVIEWED_ON } from '../../_support/build-system';
import { type Course, courseOf, onlySystem, profileWith, timeTo } from './course';
import { aloneIn } from './plain';
import { dice, randomSite } from './random-system';
import { renamed, reordered } from '../review/renamed';

const SEED = 20_260_603;
const seeds = fc.integer({ min: 1, max: 1_000_000 });

/** One of a random site's fault cases in normal running, as a change of an upset. */
function randomFault(site: Facility, seed: number): { subject: Subject; fault: (upset: Upset) => void } {
  const system = onlySystem(site);
  const subjects = subjectsOf(site, system).filter((s) => s.state === 'normal' && s.fault.id !== 'gateway-silent');
  const subject = subjects[Math.floor(dice(seed + 7)() * subjects.length)];
  if (!subject) throw new Error('a random system has fault cases');
  const meant = upsetOf(contextOf(site, system, REVIEWED_ON), subject);
  return { subject, fault: (upset) => Object.assign(upset, meant) };
}

/** Harms and switches with their times, named without regard to order. */
function happenings({ machine, record }: Course, back = (key: string) => key): [string, number][] {
  const named: [string, number][] = [
    ...record.harms.map((h): [string, number] => [`${h.what} ${h.direction} ${h.limit} ${back(h.tank)}`, h.atS]),
    ...record.switches.map((s): [string, number] => [
      `${back(machine.devices[s.device]?.key ?? '')} ${s.on ? 'on' : 'off'}`,
      s.t,
    ]),
    ...[...record.signs].map(([key, t]): [string, number] => [`sign ${key}`, t]),
  ];
  return named.sort(([a, s], [b, t]) => (a < b ? -1 : a > b ? 1 : s - t));
}

describe(`on random systems with random faults (seed ${SEED})`, () => {
  // In another order sums come out a rounding apart, and the events with them.
  const close = (one: [string, number][], other: [string, number][]) => {
    expect(other.map(([what]) => what)).toEqual(one.map(([what]) => what));
    for (const [i, [, t]] of one.entries()) expect(Math.abs((other[i]?.[1] ?? Number.NaN) - t)).toBeLessThan(1e-4);
  };

  test('other names change nothing at all, and another order of the lists no event by a tenth of a millisecond', () => {
    let events = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const site = randomSite(seed);
        const { subject, fault } = randomFault(site, seed);
        const plainly = happenings(courseOf(site, { hours: 24, fault }));
        events += plainly.length;
        close(plainly, happenings(courseOf(reordered(site), { hours: 24, fault })));

        const other = renamed(site);
        const thing = { ...subject.thing, key: `x-${subject.thing.key}` };
        const befall = (upset: Upset) => subject.fault.befall(upset, thing, other, onlySystem(other));
        const course = courseOf(other, { hours: 24, fault: befall });
        expect(happenings(course, (key) => key.replace(/^x-/, ''))).toEqual(plainly);
      }),
      { numRuns: 12, seed: SEED },
    );
    expect(events).toBeGreaterThan(80);
  });

  test('ending early, because nothing is left to happen, misses no harm of the whole seven days', () => {
    let [harms, early] = [0, 0];
    fc.assert(
      fc.property(seeds, (seed) => {
        const site = randomSite(seed);
        const { fault } = randomFault(site, seed);
        const course = (settle: boolean) => courseOf(site, { hours: 168, fault, options: { settle } });
        const [whole, short] = [course(false), course(true)];
        const of = ({ record }: Course) => record.harms.map((h) => [h.what, h.direction, h.tank, h.limit, h.atS]);
        expect(of(short)).toEqual(of(whole));
        harms += whole.record.harms.length;
        if (short.record.endS < whole.record.endS) early++;
      }),
      { numRuns: 14, seed: SEED },
    );
    expect(harms).toBeGreaterThan(5);
    expect(early).toBeGreaterThan(2);
  });

  test('a cut-out that acts never brings forward the overheating it is there against', () => {
    let [acted, spared] = [0, 0];
    fc.assert(
      fc.property(seeds, (seed) => {
        const site = randomSite(seed);
        const guarded = (above: number | null): Facility => ({
          ...site,
          systems: site.systems.map((s) => ({
            ...s,
            equipment: s.equipment
              .filter((e) => e.type !== 'chiller')
              .map((e) => (e.type === 'heater' ? withCutOut(e, above) : e)),
          })),
        });
        const hot = (above: number | null) =>
          courseOf(guarded(above), { hours: 72, fault: (upset) => upset.health.set('heater-1', 'stuck-on') });
        const bare = hot(null);
        const safe = hot(27.5);
        for (const limit of [29, 31, 30, 32]) {
          const [without, withIt] = [bare, safe].map((course) => reached(course, limit));
          expect(withIt).toBeGreaterThanOrEqual((without ?? 0) - 1);
          if (withIt === Number.POSITIVE_INFINITY && without !== withIt) spared++;
        }
        if (safe.record.acted.has('heater-1-cut-out')) acted++;
      }),
      { numRuns: 10, seed: SEED },
    );
    expect(acted).toBeGreaterThan(4);
    expect(spared).toBeGreaterThan(3);
  });
});

function withCutOut(e: Equipment, above: number | null): Equipment {
  const line = above === null ? [] : [cutOut({ tank: e.tank, above, reset: 'automatic' })];
  // Twice its size, so that it would overheat its water.
  const watts = 2 * (e.ratedW?.value ?? 0);
  return { ...e, ratedW: { value: watts, origin: 'entered' }, plan: { ...e.plan, cutOuts: line } };
}

function reached({ record }: Course, limit: number): number {
  const first = record.harms.find((h) => h.what === 'temperature' && h.direction === 'above' && h.limit === limit);
  return first?.atS ?? Number.POSITIVE_INFINITY;
}

test(`in a passive system a stronger stuck heater never takes longer to overheat it (seed ${SEED})`, () => {
  const watts = fc.integer({ min: 60, max: 1500 });
  const litres = fc.integer({ min: 60, max: 900 });
  const roomC = fc.integer({ min: 12, max: 27 });
  let finite = 0;
  fc.assert(
    fc.property(watts, watts, litres, roomC, (one, other, volumeL, room) => {
      const time = (ratedW: number) => {
        const stuck = heater({ tank: 'display', ratedW, plan: plan() });
        const site = aloneIn(room, [stuck], profileWith({ quantity: 'temperature', above: 30 }));
        const sized = {
          ...site,
          systems: site.systems.map((s) => ({
            ...s,
            tanks: s.tanks.map((t) => ({ ...t, volumeL: { value: volumeL, origin: 'entered' as const } })),
          })),
        };
        return timeTo(courseOf(sized, { hours: 168, fresh: true }), 'temperature');
      };
      const [weak, strong] = [time(Math.min(one, other)), time(Math.max(one, other))];
      expect(strong).toBeLessThanOrEqual(weak);
      if (weak < Number.POSITIVE_INFINITY) finite++;
    }),
    { numRuns: 25, seed: SEED },
  );
  expect(finite).toBeGreaterThan(5);
});
