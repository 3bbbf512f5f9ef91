import { GAS_TRANSFER_LOG_SLOPE } from '../water/gas-transfer';
import { LATENT_HEAT_SLOPE, latentHeat } from '../water/latent-heat';
import { oxygenSaturationLogBySalinity, oxygenSaturationLogByTemperature } from '../water/oxygen-saturation';
import { respirationLogSlope } from '../water/respiration';
import { vapourPressureLogSlope } from '../water/vapour-pressure';
import { drainFlow, drainSlope, floorFlow, floorSlope, gravityFlow, gravitySlope } from './outflows';
import { type Laws, type Air, type Mode, OXYGEN, type Plant, SALT, STRIDE, TEMPERATURE } from './plant';
import { FOLLOWERS } from './layout';
import { demandOf, OXYGEN_FADE, salinityOf, uptake } from './rates';
import type { Star } from './star';

/**
 * Jacobian of `rates` at a state, written into `star`.
 * @param dx rates at the same state (the volume columns use them)
 * @param laws as `rates` left them at that state
 */
export function slopes(
  plant: Plant,
  mode: Mode,
  air: Air,
  x: Float64Array,
  dx: Float64Array,
  laws: Laws,
  star: Star,
): void {
  const { nodes, hub } = plant;
  let into = 0;
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const out = gravityFlow(plant, mode, k, x[STRIDE * k] as number);
    const inflow = hub < 0 ? 0 : (mode.returnFlow[k] as number);
    ownSlopes(plant, mode, air, k, x, dx, laws, out, gravitySlope(plant, mode, k), inflow, star);
    if (hub < 0) continue;
    inflowSlopes(k, hub, inflow, x, star);
    outflowSlopes(plant, mode, k, hub, out, x, star);
    into += out;
  }
  if (hub >= 0) ownSlopes(plant, mode, air, hub, x, dx, laws, mode.returnTotal, 0, into, star);
}

function ownSlopes(
  plant: Plant,
  mode: Mode,
  air: Air,
  k: number,
  x: Float64Array,
  dx: Float64Array,
  laws: Laws,
  out: number,
  outSlope: number,
  inflow: number,
  star: Star,
): void {
  const at = STRIDE * k;
  const volume = x[at] as number;
  const temperature = x[at + TEMPERATURE] as number;
  const salt = x[at + SALT] as number;
  const oxygen = x[at + OXYGEN] as number;
  const latent = laws.latent[k] as number;
  const latentSlope =
    (mode.evaporation[k] as number) *
    plant.vapourFactor *
    (laws.vapour[k] as number) *
    vapourPressureLogSlope(temperature);
  const heat = latentHeat(temperature);
  const evaporation = latent / (heat * plant.density);
  const evaporationSlope = (latentSlope - (latent * LATENT_HEAT_SLOPE) / heat) / (heat * plant.density);
  const leaving = out + floorFlow(plant, mode, k, volume) + drainFlow(plant, mode, k, volume);
  const toFloor = floorSlope(plant, mode, k, volume);
  const leavingSlope = outSlope + toFloor + drainSlope(plant, mode, k, volume);
  const makeUp = mode.makeUp[k] as number;
  star.VV[k] = -leavingSlope;
  star.VT[k] = -evaporationSlope;
  star.floorV[k] = toFloor;
  star.TV[k] = -(dx[at + TEMPERATURE] as number) / volume;
  star.TT[k] = -(inflow + makeUp + ((plant.lossWPerK[k] as number) + latentSlope) / plant.heatCapacity) / volume;
  star.MV[k] = ((leaving / volume - leavingSlope) * salt) / volume;
  star.MM[k] = -leaving / volume;
  oxygenSlopes(plant, mode, air, k, x, dx, laws, inflow + makeUp - evaporation, evaporationSlope * oxygen, star);
}

function oxygenSlopes(
  plant: Plant,
  mode: Mode,
  air: Air,
  k: number,
  x: Float64Array,
  dx: Float64Array,
  laws: Laws,
  exchange: number,
  evaporationTerm: number,
  star: Star,
): void {
  const at = STRIDE * k;
  const volume = x[at] as number;
  const temperature = x[at + TEMPERATURE] as number;
  const oxygen = x[at + OXYGEN] as number;
  const salinity = salinityOf(plant, x[at + SALT] as number, volume);
  const saturation = laws.saturation[k] as number;
  const bySalinity = saturation * oxygenSaturationLogBySalinity(temperature, salinity);
  const byTemperature = saturation * oxygenSaturationLogByTemperature(temperature, salinity, plant.pressureAtm);
  const gas = (mode.gas[k] as number) * (laws.gas[k] as number);
  const demand = demandOf(plant, mode, air, k, laws);
  const fade = oxygen * oxygen + OXYGEN_FADE;
  star.CV[k] = (-(dx[at + OXYGEN] as number) - (gas * bySalinity * salinity) / volume) / volume;
  star.CT[k] =
    (gas * (GAS_TRANSFER_LOG_SLOPE * (saturation - oxygen) + byTemperature) -
      demand * respirationLogSlope(temperature) * uptake(oxygen) +
      evaporationTerm) /
    volume;
  star.CM[k] = (gas * bySalinity * 1000) / (plant.density * volume * volume);
  star.CC[k] = -(exchange + gas + (demand * 2 * Math.max(0, oxygen) * OXYGEN_FADE) / (fade * fade)) / volume;
}

function inflowSlopes(k: number, hub: number, inflow: number, x: Float64Array, star: Star): void {
  const volume = x[STRIDE * k] as number;
  const hubVolume = x[STRIDE * hub] as number;
  star.fromTT[k] = inflow / volume;
  star.fromCC[k] = inflow / volume;
  star.fromMM[k] = inflow / hubVolume;
  star.fromMV[k] = (-inflow * (x[STRIDE * hub + SALT] as number)) / (hubVolume * hubVolume);
}

function outflowSlopes(
  plant: Plant,
  mode: Mode,
  k: number,
  hub: number,
  out: number,
  x: Float64Array,
  star: Star,
): void {
  const at = STRIDE * k;
  const hubAt = STRIDE * hub;
  const volume = x[at] as number;
  const hubVolume = x[hubAt] as number;
  const slope = gravitySlope(plant, mode, k);
  const salt = x[at + SALT] as number;
  star.toVV[k] = slope;
  star.toTT[k] = out / hubVolume;
  star.toTV[k] = (slope * ((x[at + TEMPERATURE] as number) - (x[hubAt + TEMPERATURE] as number))) / hubVolume;
  star.toMM[k] = out / volume;
  star.toMV[k] = ((slope - out / volume) * salt) / volume;
  star.toCC[k] = out / hubVolume;
  star.toCV[k] = (slope * ((x[at + OXYGEN] as number) - (x[hubAt + OXYGEN] as number))) / hubVolume;
}

/**
 * Explicit dependence of the rates on time, through the room's air, per s².
 * @param ft receives it; rows the air does not reach stay 0
 */
export function timeSlopes(plant: Plant, mode: Mode, air: Air, x: Float64Array, ft: Float64Array): void {
  for (let k = 0; k < plant.nodes; k++) {
    const at = STRIDE * k;
    const volume = x[at] as number;
    const temperature = x[at + TEMPERATURE] as number;
    const latentSlope = -(mode.evaporation[k] as number) * air.vapourSlope;
    const evaporationSlope = latentSlope / (latentHeat(temperature) * plant.density);
    const warming = (plant.lossWPerK[k] as number) * air.temperatureSlope - latentSlope;
    const atRoom = (mode.makeUp[k] as number) - (mode.ownHeat[k] as number);
    ft[at] = -evaporationSlope;
    ft[at + TEMPERATURE] = (atRoom * air.temperatureSlope + warming / plant.heatCapacity) / volume;
    ft[at + OXYGEN] = (evaporationSlope * (x[at + OXYGEN] as number)) / volume;
    for (const name of FOLLOWERS) {
      const from = plant.layout.followers[name];
      if (from >= 0) ft[from + k] = (evaporationSlope * (x[from + k] as number)) / volume;
    }
  }
}
