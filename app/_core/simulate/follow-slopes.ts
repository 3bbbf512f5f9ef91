import { GAS_TRANSFER_LOG_SLOPE } from '../water/gas-transfer';
import { LATENT_HEAT_SLOPE, latentHeat } from '../water/latent-heat';
import { respirationLogSlope } from '../water/respiration';
import { vapourPressureLogSlope } from '../water/vapour-pressure';
import { carbonDioxideByAlkalinity, carbonDioxideByCarbon, carbonDioxideShare, phAt } from '../water/carbonate-balance';
import {
  ALKALINITY_PER_NITROGEN,
  alkalinityUptakeSlope,
  CARBON_DIOXIDE_SPEED,
  CARBON_PER_OXYGEN,
  constantsAt,
} from './chemistry';
import { inAir } from './follow';
import type { FollowerSlopes } from './follow-solve';
import { byAmmonia, byAmmoniaSlope, byOxygen, byOxygenSlope, nitrifyingFactor, nitrifyingLogSlope } from './nitrify';
import { gravityFlow, gravitySlope } from './outflows';
import { type Air, type Laws, type Mode, OXYGEN, type Plant, SALT, STRIDE, TEMPERATURE } from './plant';
import { demandOf, OXYGEN_FADE, salinityOf, uptake } from './rates';

/** Where and at what the slopes are asked for. */
interface Place {
  plant: Plant;
  mode: Mode;
  air: Air;
  x: Float64Array;
  laws: Laws;
  k: number;
}

/**
 * Jacobian of `followerRates` at a state, written into `rows`, one for each follower carried.
 * @param dx rates at the same state (the volume columns use them)
 * @param laws as `rates` and `followerRates` left them at that state
 */
export function followerSlopes(
  plant: Plant,
  mode: Mode,
  air: Air,
  x: Float64Array,
  dx: Float64Array,
  laws: Laws,
  rows: readonly FollowerSlopes[],
): void {
  const { hub, nodes } = plant;
  for (const row of rows) {
    let into = 0;
    for (let k = 0; k < nodes; k++) {
      if (k === hub) continue;
      ownRow({ plant, mode, air, x, laws, k }, row, dx, hub < 0 ? 0 : (mode.returnFlow[k] as number));
      if (hub < 0) continue;
      into += gravityFlow(plant, mode, k, x[STRIDE * k] as number);
      const apart = (x[row.from + k] as number) - (x[row.from + hub] as number);
      row.toV[k] = (gravitySlope(plant, mode, k) * apart) / (x[STRIDE * hub] as number);
    }
    if (hub >= 0) ownRow({ plant, mode, air, x, laws, k: hub }, row, dx, into);
  }
}

/** Slopes with the node's own numbers: first those of what evaporates, comes in and thins out, then those of the source. */
function ownRow(place: Place, row: FollowerSlopes, dx: Float64Array, inflow: number): void {
  const { plant, mode, x, laws, k } = place;
  const at = STRIDE * k;
  const volume = x[at] as number;
  const temperature = x[at + TEMPERATURE] as number;
  const c = x[row.from + k] as number;
  const heat = latentHeat(temperature);
  const latent = laws.latent[k] as number;
  const latentSlope =
    (mode.evaporation[k] as number) *
    plant.vapourFactor *
    (laws.vapour[k] as number) *
    vapourPressureLogSlope(temperature);
  const evaporationSlope = (latentSlope - (latent * LATENT_HEAT_SLOPE) / heat) / (heat * plant.density);
  row.V[k] = -(dx[row.from + k] as number) / volume;
  row.T[k] = (evaporationSlope * c) / volume;
  row.M[k] = 0;
  row.C[k] = 0;
  row.prior[k] = 0;
  row.own[k] = ((laws.evaporation[k] as number) - (mode.makeUp[k] as number) - inflow) / volume;
  switch (row.name) {
    case 'ammonia':
      addNitrification(place, row, -1, true);
      return;
    case 'alkalinity':
      row.own[k] =
        (row.own[k] as number) - ((plant.chemistry.alkalinityUse[k] as number) * alkalinityUptakeSlope(c)) / volume;
      if (plant.layout.followers.ammonia >= 0) addNitrification(place, row, -ALKALINITY_PER_NITROGEN, false);
      return;
    case 'carbon':
      addCarbon(place, row);
      return;
    case 'oxidant':
      row.own[k] = (row.own[k] as number) - plant.chemistry.oxidantDecay;
      row.V[k] = (row.V[k] as number) - (plant.chemistry.oxidantDecay * c) / volume;
  }
}

/** Slopes of `each` times what is turned over; `own`: into the substance's own column, else into that of the one before. */
function addNitrification({ plant, mode, x, laws, k }: Place, row: FollowerSlopes, each: number, own: boolean): void {
  const most = mode.nitrifying[k] as number;
  if (most === 0) return;
  const volume = x[STRIDE * k] as number;
  const temperature = x[STRIDE * k + TEMPERATURE] as number;
  const oxygen = x[STRIDE * k + OXYGEN] as number;
  const ammonia = x[plant.layout.followers.ammonia + k] as number;
  const part = (each * most * nitrifyingFactor(temperature)) / volume;
  const column = own ? row.own : row.prior;
  column[k] = (column[k] as number) + part * byAmmoniaSlope(ammonia) * byOxygen(oxygen);
  row.C[k] = (row.C[k] as number) + part * byAmmonia(ammonia) * byOxygenSlope(oxygen);
  row.T[k] = (row.T[k] as number) + (each * (laws.nitrified[k] as number) * nitrifyingLogSlope(temperature)) / volume;
}

/** K and units of salinity by which the equilibria are shifted for their slopes; an error of a ten-millionth. */
const SHIFT_T = 1e-3;
const SHIFT_S = 1e-3;

function addCarbon(place: Place, row: FollowerSlopes): void {
  const { plant, mode, air, x, laws, k } = place;
  const { density, layout, chemistry } = plant;
  const at = STRIDE * k;
  const volume = x[at] as number;
  const temperature = x[at + TEMPERATURE] as number;
  const salinity = salinityOf(plant, x[at + SALT] as number, volume);
  const alkalinity = x[layout.followers.alkalinity + k] as number;
  const carbon = x[layout.followers.carbon + k] as number;
  const gas = ((mode.gas[k] as number) * (laws.gas[k] as number) * CARBON_DIOXIDE_SPEED) / volume;
  const ph = laws.ph[k] as number;
  const apart = (t: number, s: number) => {
    const constants = constantsAt(chemistry, t, s);
    const dissolved = carbon * carbonDioxideShare(constants, phAt(constants, alkalinity, carbon, ph));
    return inAir(plant, t) * constants.solubility - dissolved;
  };
  const here = apart(temperature, salinity);
  const byT = (apart(temperature + SHIFT_T, salinity) - apart(temperature - SHIFT_T, salinity)) / (2 * SHIFT_T);
  const byS = (apart(temperature, salinity + SHIFT_S) - apart(temperature, salinity - SHIFT_S)) / (2 * SHIFT_S);
  const constants = constantsAt(chemistry, temperature, salinity);
  const oxygen = x[at + OXYGEN] as number;
  const fade = oxygen * oxygen + OXYGEN_FADE;
  const demand = demandOf(plant, mode, air, k, laws) * CARBON_PER_OXYGEN;
  const use = chemistry.carbonUse[k] as number;
  row.V[k] = (row.V[k] as number) - (gas * byS * salinity) / volume;
  row.T[k] =
    (row.T[k] as number) +
    gas * (byT + GAS_TRANSFER_LOG_SLOPE * here) +
    (demand * uptake(oxygen) * respirationLogSlope(temperature)) / volume;
  row.M[k] = (gas * byS * 1000) / (density * volume);
  row.C[k] = (demand * 2 * Math.max(0, oxygen) * OXYGEN_FADE) / (fade * fade * volume);
  row.prior[k] =
    -gas * carbonDioxideByAlkalinity(constants, carbon, ph) - (use * alkalinityUptakeSlope(alkalinity)) / volume;
  row.own[k] = (row.own[k] as number) - gas * carbonDioxideByCarbon(constants, carbon, ph);
}
