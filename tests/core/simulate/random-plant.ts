import type { RoomAir } from '#core/simulate/air';
import { roomAir } from '#core/simulate/air';
import { type Chemistry, plainChemistry } from '#core/simulate/chemistry';
import { type Follower, layoutOf } from '#core/simulate/layout';
import { emptyMode, type Mode, type Plant, SALT, STRIDE, TEMPERATURE, VOLUME, OXYGEN } from '#core/simulate/plant';
import { dice } from './random-system';

/** A plant in some regime, with a state it could be in. Nothing in it need make sense together. */
export interface RandomPlant {
  plant: Plant;
  mode: Mode;
  room: RoomAir;
  x: Float64Array;
}

type Range = (low: number, high: number) => number;

/**
 * A plant of one to five nodes with everything that can happen to water happening somewhere.
 * @param carried what is dissolved in it and followed
 * @param lagging keys of probes that lag; what they show is made up as well
 */
export function randomPlant(
  seed: number,
  withHub: boolean,
  carried: readonly Follower[] = [],
  lagging: readonly string[] = [],
): RandomPlant {
  const next = dice(seed);
  const between: Range = (low, high) => low + (high - low) * next();
  const nodes = (withHub ? 2 : 1) + Math.floor(4 * next());
  const hub = withHub ? nodes - 1 : -1;
  const reservoirs = Math.floor(3 * next());
  const layout = layoutOf(STRIDE * nodes, nodes, reservoirs, new Set(carried), lagging);
  const column = (low: number, high: number) => Float64Array.from({ length: nodes }, () => between(low, high));
  const runVolume = column(0.05, 2);
  const part = (low: number, high: number) => runVolume.map((v) => v * between(low, high));
  const plant: Plant = {
    nodes,
    hub,
    reservoirs,
    layout,
    size: layout.size,
    chemistry: randomChemistry(nodes, between),
    density: between(995, 1030),
    heatCapacity: between(4e6, 4.2e6),
    pressureAtm: between(0.7, 1.05),
    vapourFactor: between(0.97, 1),
    lossWPerK: column(0, 60),
    evaporationWPerPa: column(0, 0.4),
    respiration: column(0, 0.002),
    restVolume: part(0.9, 0.99),
    siphonVolume: part(0.7, 0.98),
    gravityPerS: column(0.001, 0.3),
    siphonPerS: column(0.001, 0.1),
    rimVolume: part(1.02, 1.2),
    wasteVolume: part(0.1, 0.6),
    standVolume: part(1, 1.1),
    leak: Float64Array.from({ length: nodes }, () => (next() < 0.3 ? between(1e-5, 1e-3) : 0)),
    leakVolume: part(0.1, 0.6),
    runVolume,
    surface: column(0.1, 3),
  };
  const mode = randomMode(plant, next, between);
  const warm = Array.from({ length: 24 }, () => between(5, 30));
  const moist = Array.from({ length: 24 }, () => between(20, 90));
  return { plant, mode, room: roomAir(warm, moist), x: randomState(plant, mode, between) };
}

function randomMode(plant: Plant, next: () => number, between: Range): Mode {
  const mode = emptyMode(plant.nodes, plant.reservoirs);
  const flows = plant.hub >= 0 && next() < 0.8;
  for (let k = 0; k < plant.nodes; k++) {
    const tank = k !== plant.hub;
    if (tank && flows) mode.returnFlow[k] = between(0, 2e-3);
    if (tank && plant.hub >= 0) mode.overflowing[k] = next() < 0.7 ? 1 : 0;
    if (tank && plant.hub >= 0 && !flows) mode.siphoning[k] = next() < 0.7 ? 1 : 0;
    mode.spilling[k] = next() < 0.3 ? 1 : 0;
    mode.waste[k] = next() < 0.4 ? between(1e-5, 1e-3) : 0;
    mode.floodRate[k] = next() < 0.3 ? between(1e-4, 1e-2) : 0;
    mode.floodFrom[k] = (plant.runVolume[k] as number) * 1.02;
    mode.power[k] = between(-500, 1500);
    mode.evaporation[k] = next() < 0.9 ? (plant.evaporationWPerPa[k] as number) : 0;
    mode.gas[k] = between(0, 1e-3);
    mode.standing[k] = next() < 0.3 ? 1 : 0;
    randomBrought(mode, k, next, between);
  }
  mode.returnTotal = mode.returnFlow.reduce((sum, flow) => sum + flow, 0);
  for (let r = 0; r < plant.reservoirs; r++) mode.draw[r] = between(0, 1e-4);
  return mode;
}

/** What comes in from outside, and what bacteria could turn over. */
function randomBrought(mode: Mode, k: number, next: () => number, between: Range): void {
  const flow = next() < 0.4 ? between(1e-6, 1e-4) : 0;
  mode.makeUp[k] = flow;
  mode.ownHeat[k] = next() < 0.5 ? 0 : flow * next();
  mode.ownHeatC[k] = (mode.ownHeat[k] as number) * between(5, 30);
  mode.salt[k] = next() < 0.5 ? 0 : flow * between(0, 35);
  mode.oxygen[k] = flow * between(5, 10);
  mode.alkalinity[k] = next() < 0.5 ? 0 : between(-1e-5, 1e-4);
  mode.carbon[k] = next() < 0.5 ? 0 : between(0, 1e-4);
  mode.oxidant[k] = next() < 0.5 ? 0 : between(0, 1e-5);
  mode.spoilingOxygen[k] = next() < 0.5 ? 0 : between(0, 1e-3);
  mode.spoilingNitrogen[k] = next() < 0.5 ? 0 : between(0, 1e-4);
  mode.nitrifying[k] = next() < 0.5 ? 0 : between(0, 1e-3);
}

/** Sea or fresh water with something of everything. */
function randomChemistry(nodes: number, between: Range): Chemistry {
  const salinity = between(0, 1) < 0.5 ? 0.3 : between(20, 40);
  const chemistry = plainChemistry(nodes, salinity);
  const column = (low: number, high: number) => Float64Array.from({ length: nodes }, () => between(low, high));
  return {
    ...chemistry,
    ionicStrength: 0.004,
    airCarbonDioxide: between(4e-4, 2e-3),
    excretion: column(0, 1e-4),
    alkalinityUse: column(-1e-5, 1e-4),
    carbonUse: column(0, 1e-5),
    oxidantDecay: between(0, 1e-3),
  };
}

function randomState(plant: Plant, mode: Mode, between: Range): Float64Array {
  const x = new Float64Array(plant.size);
  for (let k = 0; k < plant.nodes; k++) {
    const at = STRIDE * k;
    const outlet = plant.wasteVolume[k] as number;
    const high = 1.3 * (plant.runVolume[k] as number);
    // What spills stands above its rim; some wastes are in the last thousandth of their way, and some have run dry.
    const drained = outlet * (between(0, 1) < 0.5 ? 0.9 : 1.0004);
    x[at + VOLUME] = mode.spilling[k] === 1 ? high : between(0, 1) < 0.2 ? drained : between(1.01 * outlet, high);
    x[at + TEMPERATURE] = between(8, 38);
    x[at + SALT] = (x[at + VOLUME] as number) * between(0, 40);
    x[at + OXYGEN] = between(0.05, 12);
  }
  for (let r = 0; r <= plant.reservoirs; r++) x[plant.layout.reservoirs + r] = between(0, 0.2);
  const { ammonia, alkalinity, carbon, oxidant } = plant.layout.followers;
  for (let k = 0; k < plant.nodes; k++) {
    if (ammonia >= 0) x[ammonia + k] = between(0, 3);
    if (alkalinity >= 0) x[alkalinity + k] = between(0.3, 4);
    if (carbon >= 0) x[carbon + k] = between(0.1, 4);
    if (oxidant >= 0) x[oxidant + k] = between(0, 0.1);
  }
  for (let i = plant.layout.probes; i < plant.size; i++) x[i] = between(0, 30);
  return x;
}
