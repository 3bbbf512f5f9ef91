import { latentHeat } from '../water/latent-heat';
import { lawsOf } from './law-table';
import { drainFlow, floorFlow, gravityFlow } from './outflows';
import { type Air, type Laws, type Mode, OXYGEN, type Plant, SALT, STRIDE, TEMPERATURE, VOLUME } from './plant';

/** g²/m⁶: below about 0.1 g/m³ uptake fades, so that oxygen never falls below nothing. An extension of ours; harm lies far above. */
export const OXYGEN_FADE = 0.01;

/** Practical salinity of a node: grams of salt per kilogram of water. */
export function salinityOf(plant: Plant, salt: number, volume: number): number {
  return (1000 * salt) / (plant.density * volume);
}

/** Uptake as a part of full respiration, 0 to 1; where a step has gone below nothing, nothing is taken, or it would go on falling. */
export function uptake(oxygen: number): number {
  if (oxygen <= 0) return 0;
  const square = oxygen * oxygen;
  return square / (square + OXYGEN_FADE);
}

/**
 * Rates of the whole state vector, per second.
 *
 *   dV = in − gravity − evaporation − floor − drain + make-up
 *   V dT = Σ flow·(T_in − T) + (power − loss·(T − room) − latent)/ρc
 *   dM = Σ flow·concentration           (salt stays behind when water evaporates)
 *   V dC = Σ flow·(C_in − C) + gas·θ^(T−20)·(C* − C) − respiration + evaporation·C
 *
 * The rates of followers and probes, if any, are those of `followerRates` and `probeRates`.
 *
 * @param x state vector, laid out as in `Plant`
 * @param dx receives the rates; same length
 * @param laws receives the laws evaluated on the way, for the Jacobian at the same state
 */
export function rates(plant: Plant, mode: Mode, air: Air, x: Float64Array, dx: Float64Array, laws: Laws): void {
  const { nodes, hub } = plant;
  let intoV = 0;
  let intoT = 0;
  let intoM = 0;
  let intoC = 0;
  let floor = 0;
  const hubAt = STRIDE * hub;
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const at = STRIDE * k;
    const volume = x[at + VOLUME] as number;
    const out = gravityFlow(plant, mode, k, volume);
    floor += ownRates(plant, mode, air, k, x, dx, laws, out);
    if (hub < 0) continue;
    const inflow = mode.returnFlow[k] as number;
    if (inflow > 0) {
      dx[at] = (dx[at] as number) + inflow;
      dx[at + TEMPERATURE] =
        (dx[at + TEMPERATURE] as number) +
        (inflow * ((x[hubAt + TEMPERATURE] as number) - (x[at + TEMPERATURE] as number))) / volume;
      dx[at + SALT] = (dx[at + SALT] as number) + (inflow * (x[hubAt + SALT] as number)) / (x[hubAt] as number);
      dx[at + OXYGEN] =
        (dx[at + OXYGEN] as number) + (inflow * ((x[hubAt + OXYGEN] as number) - (x[at + OXYGEN] as number))) / volume;
    }
    intoV += out;
    intoT += out * ((x[at + TEMPERATURE] as number) - (x[hubAt + TEMPERATURE] as number));
    intoM += (out * (x[at + SALT] as number)) / volume;
    intoC += out * ((x[at + OXYGEN] as number) - (x[hubAt + OXYGEN] as number));
  }
  if (hub >= 0) {
    floor += ownRates(plant, mode, air, hub, x, dx, laws, mode.returnTotal);
    const volume = x[hubAt] as number;
    dx[hubAt] = (dx[hubAt] as number) + intoV;
    dx[hubAt + TEMPERATURE] = (dx[hubAt + TEMPERATURE] as number) + intoT / volume;
    dx[hubAt + SALT] = (dx[hubAt + SALT] as number) + intoM;
    dx[hubAt + OXYGEN] = (dx[hubAt + OXYGEN] as number) + intoC / volume;
  }
  const { reservoirs } = plant.layout;
  for (let r = 0; r < plant.reservoirs; r++) dx[reservoirs + r] = -(mode.draw[r] as number);
  dx[plant.layout.floor] = floor;
}

/** g/s of oxygen that a node would use with plenty of it, at the laws just worked out. */
export function demandOf(plant: Plant, mode: Mode, air: Air, k: number, laws: Laws): number {
  return (
    ((plant.respiration[k] as number) * air.breath + (mode.spoilingOxygen[k] as number)) * (laws.breath[k] as number)
  );
}

/** Rates of one node from everything but the star's inflow; `out` leaves it for elsewhere in the star. Returns the flow to the floor, m³/s. */
function ownRates(
  plant: Plant,
  mode: Mode,
  air: Air,
  k: number,
  x: Float64Array,
  dx: Float64Array,
  laws: Laws,
  out: number,
): number {
  const at = STRIDE * k;
  const volume = x[at] as number;
  const temperature = x[at + TEMPERATURE] as number;
  const salt = x[at + SALT] as number;
  const oxygen = x[at + OXYGEN] as number;
  lawsAt(plant, mode, air, k, temperature, salinityOf(plant, salt, volume), laws);
  const latent = laws.latent[k] as number;
  const evaporation = latent / (latentHeat(temperature) * plant.density);
  laws.evaporation[k] = evaporation;
  const floor = floorFlow(plant, mode, k, volume);
  const drain = drainFlow(plant, mode, k, volume);
  const makeUp = mode.makeUp[k] as number;
  const heat = (mode.power[k] as number) - (plant.lossWPerK[k] as number) * (temperature - air.temperature) - latent;
  const transfer = (mode.gas[k] as number) * (laws.gas[k] as number) * ((laws.saturation[k] as number) - oxygen);
  const demand = demandOf(plant, mode, air, k, laws) * uptake(oxygen);
  const brought = (makeUp - (mode.ownHeat[k] as number)) * air.temperature + (mode.ownHeatC[k] as number);
  dx[at] = makeUp - out - evaporation - floor - drain;
  dx[at + TEMPERATURE] = (brought - makeUp * temperature + heat / plant.heatCapacity) / volume;
  dx[at + SALT] = (mode.salt[k] as number) - ((out + floor + drain) * salt) / volume;
  dx[at + OXYGEN] = ((mode.oxygen[k] as number) + (evaporation - makeUp) * oxygen + transfer - demand) / volume;
  return floor;
}

/** The laws of a node at its temperature and salinity; latent heat below 0 means that water condenses on it. */
function lawsAt(
  plant: Plant,
  mode: Mode,
  air: Air,
  k: number,
  temperature: number,
  salinity: number,
  laws: Laws,
): void {
  lawsOf(temperature, salinity, plant.pressureAtm, k, laws);
  laws.latent[k] = (mode.evaporation[k] as number) * (plant.vapourFactor * (laws.vapour[k] as number) - air.vapour);
}
