import type { RoomAir } from '#core/simulate/air';
import { roomAir } from '#core/simulate/air';
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

/** A plant of one to five nodes with everything that can happen to water happening somewhere. */
export function randomPlant(seed: number, withHub: boolean): RandomPlant {
  const next = dice(seed);
  const between: Range = (low, high) => low + (high - low) * next();
  const nodes = (withHub ? 2 : 1) + Math.floor(4 * next());
  const hub = withHub ? nodes - 1 : -1;
  const reservoirs = Math.floor(3 * next());
  const column = (low: number, high: number) => Float64Array.from({ length: nodes }, () => between(low, high));
  const runVolume = column(0.05, 2);
  const part = (low: number, high: number) => runVolume.map((v) => v * between(low, high));
  const plant: Plant = {
    nodes,
    hub,
    reservoirs,
    size: STRIDE * nodes + reservoirs + 1,
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
    mode.makeUp[k] = next() < 0.4 ? between(1e-6, 1e-4) : 0;
  }
  mode.returnTotal = mode.returnFlow.reduce((sum, flow) => sum + flow, 0);
  mode.makeUpSalt = next() < 0.5 ? 0 : between(0, 35);
  mode.makeUpOxygen = between(5, 10);
  for (let r = 0; r < plant.reservoirs; r++) mode.draw[r] = between(0, 1e-4);
  return mode;
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
  for (let r = 0; r <= plant.reservoirs; r++) x[STRIDE * plant.nodes + r] = between(0, 0.2);
  return x;
}
