import { type Plant, STRIDE, VOLUME } from './plant';

/** Part of a tank that a state may take out at most: nobody draws one dry. */
const MOST = 0.9;

/**
 * Where the water that a state draws comes from, m³ by node: out of the sump while it has any to give, the rest out of all
 * tanks alike. It goes back the same way.
 * @param x state it is taken from
 * @param whole m³
 */
export function drawnFrom(plant: Plant, x: Float64Array, whole: number): Float64Array {
  const spare = Float64Array.from({ length: plant.nodes }, (_, k) => MOST * (x[STRIDE * k + VOLUME] as number));
  const fromSump = plant.hub < 0 ? 0 : Math.min(whole, spare[plant.hub] as number);
  const tanks = spare.reduce((sum, part, k) => sum + (k === plant.hub ? 0 : part), 0);
  const share = tanks > 0 ? Math.min(1, (whole - fromSump) / tanks) : 0;
  return spare.map((part, k) => (k === plant.hub ? fromSump : share * part));
}
