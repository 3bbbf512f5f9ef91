import { demandOf } from '#core/review/people/demand-of';
import type { SystemDemand } from '#core/review/people/demand';
import { judgedWeek } from '#core/review/people/judged-week';
import { usualScenes } from '#core/review/people/scene';
import { emptyCache } from '#core/review/review-cache';
import { reviewSystem } from '#core/review/review-system';
import type { Outcome, SystemReview } from '#core/review/result';
import type { Facility } from '#core/facility/facility';
import { DAYS } from '#core/facility/site';
import { describe, expect, test } from 'vitest';
import { round, shift } from '../../../_support/build-facility';
import { REVIEWED_ON } from '../../../_support/build-system';
import { randomSite } from '../../simulate/random-system';
import { watching } from './watching';

const COLUMNS = ['claimed', 'tested'] as const;

/** A review as it is computed anew, and what the demand kept from another rota makes of this one. */
function compare(review: SystemReview, { cases }: SystemDemand, site: Facility): number {
  const scene = usualScenes(site, REVIEWED_ON)(review.system);
  let compared = 0;
  for (const c of review.cases) {
    const demand = cases.find(({ id }) => id === c.id);
    for (const column of COLUMNS) {
      for (const outcome of c[column].outcomes) {
        const judged = demand && judgedWeek(demand, scene, column, outcome.harm.class);
        expect(judged?.verdict, `${c.id} ${column}`).toBe(outcome.verdict);
        expect(judged?.met.map(({ noticeS }) => rounded(noticeS))).toEqual(outcome.noticeS.map(rounded));
        expect(judged?.met.map(({ way }) => rounded(way?.putRightS ?? null))).toEqual(outcome.putRightS.map(rounded));
        expect(judged?.spareS.map(rounded)).toEqual(sparesOf(outcome));
        compared += 1;
      }
    }
  }
  return compared;
}

const rounded = (s: number | null) => (s === null || !Number.isFinite(s) ? s : Math.round(s * 1000) / 1000);

const sparesOf = ({ harmS, spareS }: Outcome) =>
  spareS.map((s, h) => (harmS[h] === null ? Number.POSITIVE_INFINITY : (rounded(s) ?? Number.NEGATIVE_INFINITY)));

/** Other people at other times: everything about them is changed, nothing about the water. */
function otherPeople(site: Facility): Facility {
  return {
    ...site,
    people: site.people.map((one) => ({
      ...one,
      travelMin: { value: 47, origin: 'entered' as const },
      competences: one.key === 'robin' ? [{ competence: 'air', until: REVIEWED_ON }] : [],
    })),
    shifts: [
      shift({ key: 'late', people: ['robin'], days: ['mon', 'wed', 'sun'], from: '21:40', to: '05:20' }),
      shift({ key: 'call', kind: 'on-call', people: ['robin'], days: DAYS.slice(1, 6), from: '17:15', to: '17:15' }),
      shift({ key: 'early', people: ['sam'], from: '02:00', to: '09:00' }),
    ],
    site: { ...site.site, competences: [{ key: 'air', name: 'Air', types: ['air-blower', 'heater', 'chiller'] }] },
    rounds: [...site.rounds, round({ key: 'night', days: ['wed', 'sun'], at: '02:10' })],
  };
}

describe.each([2, 9])('in a system of random size (%i)', (seed) => {
  const site = watching(randomSite(seed));
  const [system] = site.systems;
  if (!system) throw new Error('nothing to review');
  const cache = emptyCache();
  const review = reviewSystem(site, system, REVIEWED_ON, undefined, false, cache);
  const demand = demandOf(site, system, REVIEWED_ON, review, cache);

  test('what the demand of a review makes of its own rota is that review, hour by hour', () => {
    expect(compare(review, demand, site)).toBeGreaterThan(5);
  });

  test('what it makes of another rota is the review anew with that rota', () => {
    const other = otherPeople(site);
    const anew = reviewSystem(other, other.systems[0] ?? system, REVIEWED_ON, undefined, false, cache);
    const kept: SystemDemand = JSON.parse(JSON.stringify(demand));
    expect(compare(anew, kept, other)).toBeGreaterThan(5);
  });
});

test('what fault cases ask of people is the same without a cache', () => {
  const site = watching(randomSite(9));
  const [system] = site.systems;
  if (!system) throw new Error('nothing to review');
  const cache = emptyCache();
  const review = reviewSystem(site, system, REVIEWED_ON, undefined, false, cache);
  expect(demandOf(site, system, REVIEWED_ON, review)).toEqual(demandOf(site, system, REVIEWED_ON, review, cache));
});
