import type { Facility } from '#core/facility/facility';
import { type Look, lookAt } from '#core/review/combined/look';
import { reviewSystem } from '#core/review/review-system';
import { REVIEWED_ON } from '../../../_support/build-system';

/** A longer look at the first system of a site, as of `REVIEWED_ON`. */
export function looking(site: Facility): Look {
  const [first] = site.systems;
  if (!first) throw new Error('a site without a system has nothing to look at');
  return lookAt(site, first, REVIEWED_ON, reviewSystem(site, first, REVIEWED_ON));
}

/** The same, of what a test needs without any fault case judged: for questions that no review is asked for. */
export function unreviewed(site: Facility): Look {
  const [first] = site.systems;
  if (!first) throw new Error('a site without a system has nothing to look at');
  const empty = {
    system: first.key,
    name: first.name,
    cases: [],
    findings: [],
    inputs: [],
    askNext: null,
    notModelled: [],
  };
  const worst = { verdict: 'holds', case: null, spareS: null } as const;
  return lookAt(site, first, REVIEWED_ON, { ...empty, worst: { claimed: worst, tested: worst } });
}
