import { evaporationLaw } from '../water/evaporation';
import { gasTransferFactorLaw } from '../water/gas-transfer';
import type { Argument, Law } from '../water/law';
import { oxygenSaturationLaw } from '../water/oxygen-saturation';
import { respirationLaw } from '../water/respiration';
import type { Machine } from './machine';
import { SALT, STRIDE, TEMPERATURE, VOLUME } from './plant';
import { salinityOf } from './rates';
import type { Record } from './world';

interface Range {
  low: number;
  high: number;
}

/** What all of some laws allow an argument to be. */
function common(laws: readonly Pick<Law<number[]>, 'arguments'>[], name: string): Range {
  const found = laws.flatMap((law) => law.arguments.filter((a: Argument) => a.name === name));
  return { low: Math.max(...found.map((a) => a.low)), high: Math.min(...found.map((a) => a.high)) };
}

const EVERYWHERE = [oxygenSaturationLaw, gasTransferFactorLaw, evaporationLaw];
const SALINITY = common(EVERYWHERE, 'salinity');
const WATER = common(EVERYWHERE, 'temperature');
const BREATHED = common([...EVERYWHERE, respirationLaw], 'temperature');

/**
 * Whether the water of any node, at any moment of a run, was warmer, colder or saltier than the laws were published for.
 * There they go on by their documented extensions.
 */
export function leftRange({ plant }: Machine, { knots }: Record): boolean {
  for (let k = 0; k < plant.nodes; k++) {
    const at = STRIDE * k;
    const allowed = (plant.respiration[k] as number) > 0 ? BREATHED : WATER;
    for (let i = 0; i < knots.length; i++) {
      const temperature = knots.value(i, at + TEMPERATURE);
      if (temperature < allowed.low || temperature > allowed.high) return true;
      if (salinityOf(plant, knots.value(i, at + SALT), knots.value(i, at + VOLUME)) > SALINITY.high) return true;
    }
  }
  return false;
}
