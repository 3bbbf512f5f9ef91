import type { System } from '../facility/system';
import { EVENLY, type Meals } from '../simulate/air';
import { DEFAULTS } from './defaults';
import { EITHER, take, type Taker } from './take';

const HOURS = 24;

/**
 * What meals at set hours make of the day: what is fed at an hour is given off evenly over the hours that follow, and part of the oxygen
 * is used along with it. Means over the day stay what they are.
 */
export function resolveMeals(t: Taker, system: System): Meals {
  const { fedAtH } = system;
  if (!fedAtH || fedAtH.length === 0) return EVENLY;
  const at = (field: string) => `systems/${system.key}/${field}`;
  const over = take(
    t,
    at('excretedOverH'),
    'hours over which a meal is given off',
    undefined,
    EITHER,
    DEFAULTS.excretedOverH,
  );
  const share = take(
    t,
    at('mealShare'),
    'part of the oxygen that follows the meals',
    undefined,
    EITHER,
    DEFAULTS.mealShare,
  );
  const hours = Math.min(HOURS, Math.max(1, Math.round(over)));
  const excretion = new Float64Array(HOURS);
  for (const hour of fedAtH)
    for (let i = 0; i < hours; i++) {
      const h = (Math.floor(hour) + i) % HOURS;
      excretion[h] = (excretion[h] as number) + HOURS / (hours * fedAtH.length);
    }
  return { excretion, breath: excretion.map((part) => 1 - share + share * part) };
}
