import { vapourPressure } from '../water/vapour-pressure';
import { carbonDioxideShare, phAt } from '../water/carbonate-balance';
import {
  ALKALINITY_PER_NITROGEN,
  alkalinityUptake,
  CARBON_DIOXIDE_SPEED,
  CARBON_PER_OXYGEN,
  constantsAt,
} from './chemistry';
import { type Follower, FOLLOWERS } from './layout';
import { byAmmonia, byOxygen, nitrifyingFactor } from './nitrify';
import { gravityFlow } from './outflows';
import { type Air, type Laws, type Mode, OXYGEN, type Plant, SALT, STRIDE, TEMPERATURE } from './plant';
import { demandOf, salinityOf, uptake } from './rates';

/** Part of 101,325 Pa that one Pa is. */
const ATM_PER_PA = 1 / 101_325;

/**
 * Rates of the followers, per second, after `rates` has been asked for at the same state.
 *
 *   V dc = Σ flow·(c_in − c) − make-up·c + evaporation·c + source
 *
 *   ammonia     source = excretion − nitrification
 *   alkalinity  source = what comes in − use − 2 mol for each mol of nitrogen turned over
 *   carbon      source = what comes in − use + respiration + gas·(CO2* − CO2)
 *   oxidant     source = what comes in − decay·V·c
 */
export function followerRates(plant: Plant, mode: Mode, air: Air, x: Float64Array, dx: Float64Array, laws: Laws): void {
  const { followers } = plant.layout;
  if (followers.ammonia >= 0) nitrify(plant, mode, x, laws);
  for (const name of FOLLOWERS) {
    const from = followers[name];
    if (from < 0) continue;
    for (let k = 0; k < plant.nodes; k++) {
      const at = STRIDE * k;
      const c = x[from + k] as number;
      dx[from + k] =
        (((laws.evaporation[k] as number) - (mode.makeUp[k] as number)) * c +
          sourceOf(name, plant, mode, air, k, x, laws)) /
        (x[at] as number);
    }
    if (plant.hub >= 0) mix(plant, mode, x, dx, from);
  }
}

/** What the flows of the star bring to one substance. */
function mix(plant: Plant, mode: Mode, x: Float64Array, dx: Float64Array, from: number): void {
  const { hub, nodes } = plant;
  const there = x[from + hub] as number;
  let into = 0;
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const here = x[from + k] as number;
    const volume = x[STRIDE * k] as number;
    dx[from + k] = (dx[from + k] as number) + ((mode.returnFlow[k] as number) * (there - here)) / volume;
    into += gravityFlow(plant, mode, k, volume) * (here - there);
  }
  dx[from + hub] = (dx[from + hub] as number) + into / (x[STRIDE * hub] as number);
}

function nitrify(plant: Plant, mode: Mode, x: Float64Array, laws: Laws): void {
  const from = plant.layout.followers.ammonia;
  for (let k = 0; k < plant.nodes; k++) {
    const most = mode.nitrifying[k] as number;
    laws.nitrified[k] =
      most === 0
        ? 0
        : most *
          nitrifyingFactor(x[STRIDE * k + TEMPERATURE] as number) *
          byAmmonia(x[from + k] as number) *
          byOxygen(x[STRIDE * k + OXYGEN] as number);
  }
}

/** What is given to one substance in one node, in its unit of mass per second. */
function sourceOf(name: Follower, plant: Plant, mode: Mode, air: Air, k: number, x: Float64Array, laws: Laws): number {
  const { chemistry, layout } = plant;
  switch (name) {
    case 'ammonia':
      return (
        (chemistry.excretion[k] as number) * air.excretion +
        (mode.spoilingNitrogen[k] as number) -
        (laws.nitrified[k] as number)
      );
    case 'alkalinity':
      return (
        (mode.alkalinity[k] as number) -
        (chemistry.alkalinityUse[k] as number) * alkalinityUptake(x[layout.followers.alkalinity + k] as number) -
        ALKALINITY_PER_NITROGEN * (layout.followers.ammonia >= 0 ? (laws.nitrified[k] as number) : 0)
      );
    case 'carbon':
      return carbonSource(plant, mode, air, k, x, laws);
    case 'oxidant':
      return (
        (mode.oxidant[k] as number) -
        chemistry.oxidantDecay * (x[STRIDE * k] as number) * (x[layout.followers.oxidant + k] as number)
      );
  }
}

function carbonSource(plant: Plant, mode: Mode, air: Air, k: number, x: Float64Array, laws: Laws): number {
  const { chemistry, layout } = plant;
  const at = STRIDE * k;
  const temperature = x[at + TEMPERATURE] as number;
  const alkalinity = x[layout.followers.alkalinity + k] as number;
  const carbon = x[layout.followers.carbon + k] as number;
  const constants = constantsAt(chemistry, temperature, salinityOf(plant, x[at + SALT] as number, x[at] as number));
  const ph = phAt(constants, alkalinity, carbon, laws.ph[k] as number);
  const dissolved = carbon * carbonDioxideShare(constants, ph);
  laws.ph[k] = ph;
  laws.carbonDioxide[k] = dissolved;
  const exchange =
    (mode.gas[k] as number) *
    (laws.gas[k] as number) *
    CARBON_DIOXIDE_SPEED *
    (inAir(plant, temperature) * constants.solubility - dissolved);
  const breathed = demandOf(plant, mode, air, k, laws) * uptake(x[at + OXYGEN] as number);
  return (
    (mode.carbon[k] as number) -
    (chemistry.carbonUse[k] as number) * alkalinityUptake(alkalinity) +
    breathed * CARBON_PER_OXYGEN +
    exchange
  );
}

/** atm of carbon dioxide in air that is moist with the water's own vapour. */
export function inAir({ chemistry, pressureAtm }: Plant, temperature: number): number {
  return chemistry.airCarbonDioxide * (pressureAtm - ATM_PER_PA * vapourPressure(temperature));
}
