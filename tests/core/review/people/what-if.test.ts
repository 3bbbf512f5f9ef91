import type { Facility } from '#core/facility/facility';
import { coverChanges, worthOf } from '#core/review/people/compare-cover';
import type { SystemDemand } from '#core/review/people/demand';
import { demandOf } from '#core/review/people/demand-of';
import { usualScenes } from '#core/review/people/scene';
import { decided, leastHours, systemCover } from '#core/review/people/system-cover';
import { weakStretches } from '#core/review/people/weakest';
import { isNothing, type WhatIf, withChanges } from '#core/review/people/what-if';
import { emptyCache } from '#core/review/review-cache';
import { reviewSystem } from '#core/review/review-system';
import { DAYS } from '#core/facility/site';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { REVIEWED_ON } from '../../../_support/build-system';
import { anyTimeOfDay } from '../../rota/any-rota';
import { randomSite } from '../../simulate/random-system';
import { watching } from './watching';

const site = watching(randomSite(9));
let demand: SystemDemand;

beforeAll(() => {
  const [system] = site.systems;
  if (!system) throw new Error('nothing to review');
  const cache = emptyCache();
  demand = demandOf(site, system, REVIEWED_ON, reviewSystem(site, system, REVIEWED_ON, undefined, false, cache), cache);
});

const coverIn = (of: Facility) => systemCover(demand, usualScenes(of, REVIEWED_ON)(demand.system), 'claimed');
const spares = (of: Facility) => coverIn(of).cases.map(({ week }) => week.spareS);
/** No hour of any case has less to spare than before. */
const noLess = (before: Facility, after: Facility) => {
  const [was, is] = [spares(before), spares(after)];
  for (const [i, hours] of is.entries())
    for (const [h, s] of hours.entries()) expect(s).toBeGreaterThanOrEqual((was[i]?.[h] ?? Number.NaN) - 1e-6);
};
const anyDays = fc.subarray([...DAYS], { minLength: 1 });
const anyMore = fc.record({
  kind: fc.constantFrom('on-site' as const, 'on-call' as const),
  days: anyDays,
  from: anyTimeOfDay(),
  to: anyTimeOfDay(),
  travelMin: fc.integer({ min: 0, max: 300 }),
});
const runs = { numRuns: 6 };

describe('what if', () => {
  test('of nothing is the site as it is', () => {
    expect(isNothing({})).toBe(true);
    expect(withChanges(site, {})).toEqual(site);
    expect(coverChanges(coverIn(site), coverIn(withChanges(site, {})))).toEqual([]);
  });

  test('there is one more person, or one more round, no hour of any fault case has less to spare', () => {
    fc.assert(
      fc.property(anyMore, (more) => noLess(site, withChanges(site, { more }))),
      runs,
    );
    const anyCheck = fc.record({ at: anyTimeOfDay(), days: anyDays });
    fc.assert(
      fc.property(anyCheck, (check) => noLess(site, withChanges(site, { check }))),
      runs,
    );
  });

  test('somebody has a longer way, no hour of any fault case has more to spare', () => {
    const anyWays = fc.tuple(fc.integer({ min: 0, max: 120 }), fc.integer({ min: 1, max: 300 }));
    fc.assert(
      fc.property(anyMore, anyWays, (more, [near, further]) => {
        const called = withChanges(site, { more: { ...more, kind: 'on-call', travelMin: near } });
        const person = called.people.at(-1)?.key ?? '';
        noLess(withChanges(called, { way: { person, travelMin: near + further } }), called);
      }),
      runs,
    );
  });

  test('cases that come out otherwise are told, with what is won', () => {
    const what: WhatIf = {
      more: { kind: 'on-site', days: DAYS, from: '00:00', to: '00:00', travelMin: 0 },
      check: { at: '02:00', days: DAYS },
    };
    const changes = coverChanges(coverIn(site), coverIn(withChanges(site, what)));
    expect(changes.length).toBeGreaterThan(0);
    for (const change of changes) {
      expect(worthOf(change)).toBeGreaterThan(0);
      expect(change.toS).toBeGreaterThanOrEqual(change.fromS);
    }
  });
});

describe('the weakest hours of a week', () => {
  test('are every hour once, with the least that any case has to spare then, and whoever would come', () => {
    const cover = coverIn(site);
    const cases = decided(cover);
    const least = leastHours(cases, 168);
    const stretches = weakStretches(cover.system, least, true);
    expect(stretches.reduce((sum, { hours }) => sum + hours, 0)).toBe(least.filter((one) => one !== null).length);
    for (const { from, hours, worst, spareS, way, lastS } of stretches) {
      const own = Array.from({ length: hours }, (_, k) => least[(from + k) % 168]?.spareS ?? Number.NaN);
      expect(spareS).toBe(Math.min(...own));
      expect(spareS).toBe(Math.min(...cases.map(({ week }) => week.spareS[worst] ?? Number.NaN)));
      expect(way ? lastS - way.putRightS : Number.NEGATIVE_INFINITY).toBe(spareS);
      if (way) {
        const { noticeS, come, spareS: partS, workS } = way;
        const parts = noticeS + (come ? come.waitS + come.answerS + come.travelS : 0) + partS + workS;
        expect(parts).toBeCloseTo(way.putRightS, 6);
      }
    }
  });
});

test('a round is walked every night, it is walked on those nights alone, also just after midnight', () => {
  const what: WhatIf = { check: { at: '00:05', days: ['mon'] } };
  const changed = withChanges(site, what);
  const looks = usualScenes(changed, REVIEWED_ON)(demand.system).looks.filter(({ key }) => key === 'what-if-check');
  expect(looks.map(({ atS }) => atS / 60)).toEqual([5, 7 * 1440 + 5]);
});
