import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { combinationsOf } from './combined/combinations';
import { demandDrift } from './combined/drift';
import { lookAt } from './combined/look';
import { CUT, minimalSets } from './combined/minimal';
import { fixFirst } from './fixes/fix-first';
import { reasonNot } from './reason-not';
import type { SystemReview } from './result';
import type { Study } from './study';

/** What is said of how far a study is: parts done, and how many there are as far as is known. */
export type Told = (done: number, of: number) => void;

/** Parts of a study that follow the fault cases: drift, and each change tried. */
const DRIFT = 1;

/**
 * The longer look at one system that was reviewed: more than one thing wrong at once, the smallest sets that do harm, what to fix
 * first, and how much more stock the aeration would carry.
 *
 * @param on       ISO date in the site's zone on which tests are judged; that of the review
 * @param review   what the review of the same system on the same day says
 * @param told     called as it goes on
 * @returns        empty but for the day where the system cannot be judged at all
 */
export function studySystem(
  facility: Facility,
  system: System,
  on: string,
  review: SystemReview,
  told: Told = () => undefined,
): Study {
  const look = lookAt(facility, system, on, review);
  const empty = { system: system.key, on, cut: CUT, combinations: [], minimalSets: [], drift: [], tried: 0 };
  if (reasonNot(look.view)) return { ...empty, fixFirst: { alone: [], order: [], open: 0 } };
  const cases = look.tried.length;
  const { combinations, tried } = combinationsOf(look, (done) => told(done, 2 * cases + DRIFT));
  const drift = demandDrift(look);
  const fixes = fixFirst(look, (done, of) => told(cases + DRIFT + done, cases + DRIFT + of));
  return {
    ...empty,
    combinations,
    minimalSets: minimalSets(look, combinations),
    fixFirst: fixes,
    drift,
    tried: cases + tried,
  };
}
