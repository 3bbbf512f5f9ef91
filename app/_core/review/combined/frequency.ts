import type { Facility } from '../../facility/facility';
import type { Figure } from '../../facility/figure';
import { FAILS_UNSEEN, type System } from '../../facility/system';
import { isTested, safeguardsOf } from '../../plans/credit';
import type { Part } from '../study';
import { mitigated, pfdOfTests } from './pfd';

/** Where rates are looked for, and the day tests are judged on. */
interface Where {
  facility: Facility;
  system: System;
  on: string;
}

/**
 * How often a combination happens, a year: the rate of its one fault times, for each dead safeguard, the probability that it
 * fails when needed. Nothing is assumed: every part needs a figure that somebody entered with its source.
 * @returns null where any part has none, or where more than one fault begins by itself (how long the first lasts is not known)
 */
export function frequencyOf(where: Where, parts: readonly Part[]): number | null {
  const rates = parts.flatMap((part) => (part.kind === 'fault' ? [rateOf(where, part.fault, part.thing.key)] : []));
  const pfds = parts.flatMap((part) => (part.kind === 'safeguard' ? [pfdOf(where, part.key)] : []));
  const [rate] = rates;
  if (rates.length !== 1 || rate === null || rate === undefined) return null;
  const known = pfds.filter((pfd) => pfd !== null);
  return known.length === pfds.length ? mitigated(rate, known) : null;
}

/** Failures a year of a thing, as entered with a source; null without. */
function rateOf({ system }: Pick<Where, 'system'>, fault: string, thing: string): number | null {
  const found = system.rates?.find((rate) => rate.fault === fault && rate.thing === thing);
  return found ? sourced(found.perYear) : null;
}

/**
 * Probability that a safeguard fails when it is needed: as entered, else from its own rate and the interval it is tested at.
 * @returns 0 to 1; null where nothing is entered, and where its tests are overdue, so that the interval says nothing
 */
export function pfdOf({ facility, system, on }: Where, key: string): number | null {
  const safeguard = safeguardsOf(facility, system).find((one) => one.key === key);
  if (!safeguard) return null;
  const entered = safeguard.failsOnDemand ? sourced(safeguard.failsOnDemand) : null;
  if (entered !== null) return entered;
  const rate = rateOf({ system }, FAILS_UNSEEN, key);
  return rate !== null && isTested(safeguard, on) ? pfdOfTests(rate, safeguard.testEveryDays) : null;
}

function sourced({ value, source }: Figure): number | null {
  return source === undefined ? null : value;
}
