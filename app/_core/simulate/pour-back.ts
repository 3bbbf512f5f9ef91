import type { Plant } from './plant';
import { SALT, STRIDE, TEMPERATURE, VOLUME } from './plant';
import type { World } from './world';

/** s after a state's end at which its water is back: once the return has lifted what had drained down. Common practice, no source. */
export const POUR_S = 600;

/** Water that is unlike that of the node it is poured into. */
export type UnlikeWater = { salinity?: number; temperatureC?: number; oxidantMgL?: number };

/** Give back what the state had drawn, as far as there is room below the running level. */
export function pourBack(world: World, drawn: Float64Array): void {
  const { plant, putBack } = world.machine;
  for (let k = 0; k < plant.nodes; k++) {
    const room = (plant.runVolume[k] as number) - (world.x[STRIDE * k + VOLUME] as number);
    const volume = Math.max(0, Math.min(drawn[k] as number, room));
    if (putBack && volume > 0) makeUnlike(plant, world.x, k, volume, putBack);
    addMatched(world.x, k, volume);
  }
}

/** What water that is about to be added does to a node by being unlike it: as if it were added matched, and this beside it. */
function makeUnlike(plant: Plant, x: Float64Array, k: number, volume: number, water: UnlikeWater): void {
  const at = STRIDE * k;
  const before = x[at + VOLUME] as number;
  const part = volume / (before + volume);
  if (water.salinity !== undefined) {
    const wanted = (water.salinity / 1000) * plant.density * before;
    x[at + SALT] = (x[at + SALT] as number) + part * (wanted - (x[at + SALT] as number));
  }
  if (water.temperatureC !== undefined)
    x[at + TEMPERATURE] =
      (x[at + TEMPERATURE] as number) + part * (water.temperatureC - (x[at + TEMPERATURE] as number));
  const oxidant = plant.layout.followers.oxidant;
  if (water.oxidantMgL !== undefined && oxidant >= 0)
    x[oxidant + k] = (x[oxidant + k] as number) + part * (water.oxidantMgL - (x[oxidant + k] as number));
}

/**
 * Add water (or take it, below 0) like that of the node: the same temperature, salinity and oxygen.
 * @param volume m³
 */
export function addMatched(x: Float64Array, node: number, volume: number): void {
  const at = STRIDE * node;
  const before = x[at + VOLUME] as number;
  x[at + VOLUME] = before + volume;
  x[at + SALT] = ((x[at + SALT] as number) * (before + volume)) / before;
}
