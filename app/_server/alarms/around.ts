import 'server-only';
import { type Around, type Condition, NOTHING_AROUND } from '#core/alarms/condition';
import { spellsSince } from '#data/states/spells';
import type { Transaction } from '#data/transaction';
import type { DefinedSite } from './defined-alarms';

/** ms for which a state that ended is still needed: readings that came late are held to what was so when they were taken. */
const BACK_MS = 86_400_000;

/**
 * What else is so at a site, by which some of its alarms are judged. States are asked for only where one is held to them.
 *
 * @param at   the present
 */
export async function aroundOf(
  tx: Transaction,
  siteId: string,
  { alarms, daySecond }: DefinedSite,
  at: Date,
): Promise<Around> {
  const needs = [...alarms.values()].some(({ condition }) => condition !== null && goesByStates(condition));
  const spells = needs ? await spellsSince(tx, siteId, new Date(at.getTime() - BACK_MS)) : NOTHING_AROUND.spells;
  return { spells, daySecond };
}

function goesByStates(condition: Condition): boolean {
  if (condition.kind === 'outstayed') return true;
  return condition.kind === 'limits' && condition.of?.kind === 'watts' && condition.of.meant.states.length > 0;
}
