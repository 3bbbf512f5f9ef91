import { type Mode, type Plant, RIM_RATE } from './plant';

/** Part of the way from running level to outlet below which the flow is taken as linear: Torricelli's root has no slope at 0. */
const HOLE_LINEAR = 1e-3;

/** Water that leaves one node to the sump by gravity, m³/s: over the crest and, with the return stopped, by siphon. */
export function gravityFlow(plant: Plant, mode: Mode, k: number, volume: number): number {
  let flow = 0;
  if (mode.overflowing[k] === 1) flow += (plant.gravityPerS[k] as number) * (volume - (plant.restVolume[k] as number));
  if (mode.siphoning[k] === 1) flow += (plant.siphonPerS[k] as number) * (volume - (plant.siphonVolume[k] as number));
  return flow;
}

/** Slope of `gravityFlow` with volume, 1/s. */
export function gravitySlope(plant: Plant, mode: Mode, k: number): number {
  return (
    (plant.gravityPerS[k] as number) * (mode.overflowing[k] as number) +
    (plant.siphonPerS[k] as number) * (mode.siphoning[k] as number)
  );
}

/** Water that leaves one node for the floor, m³/s: over the rim, as flooded skimmate, and through a hole. */
export function floorFlow(plant: Plant, mode: Mode, k: number, volume: number): number {
  let flow = throughHole(plant, plant.leak, plant.leakVolume, k, volume);
  if (mode.spilling[k] === 1) flow += RIM_RATE * (volume - (plant.rimVolume[k] as number));
  const flood = mode.floodRate[k] as number;
  if (flood > 0) flow += flood * (volume - (mode.floodFrom[k] as number));
  return flow;
}

/** Slope of `floorFlow` with volume, 1/s. */
export function floorSlope(plant: Plant, mode: Mode, k: number, volume: number): number {
  return (
    RIM_RATE * (mode.spilling[k] as number) +
    (mode.floodRate[k] as number) +
    throughHoleSlope(plant, plant.leak, plant.leakVolume, k, volume)
  );
}

/** Water that leaves one node for the drain, m³/s: through an open waste, and down a standpipe. */
export function drainFlow(plant: Plant, mode: Mode, k: number, volume: number): number {
  const waste = throughHole(plant, mode.waste, plant.wasteVolume, k, volume);
  return mode.standing[k] === 1 ? waste + RIM_RATE * (volume - (plant.standVolume[k] as number)) : waste;
}

/** Slope of `drainFlow` with volume, 1/s. */
export function drainSlope(plant: Plant, mode: Mode, k: number, volume: number): number {
  return throughHoleSlope(plant, mode.waste, plant.wasteVolume, k, volume) + RIM_RATE * (mode.standing[k] as number);
}

/**
 * Water that leaves through a hole, m³/s, by Torricelli's law between the running level and where it reaches (flow ∝ √head),
 * linear in the last thousandth of the way so that the end is reached, not stepped over. Nothing comes back in.
 * @param fulls m³/s at the running level, by node
 * @param bottoms m³ at which it falls dry, by node
 */
function throughHole(plant: Plant, fulls: Float64Array, bottoms: Float64Array, k: number, volume: number): number {
  const full = fulls[k] as number;
  if (full <= 0) return 0;
  const share = shareLeft(plant, bottoms, k, volume);
  if (share <= 0) return 0;
  return share > HOLE_LINEAR ? full * Math.sqrt(share) : (full * share) / Math.sqrt(HOLE_LINEAR);
}

/** Slope of `throughHole` with volume, 1/s. */
function throughHoleSlope(plant: Plant, fulls: Float64Array, bottoms: Float64Array, k: number, volume: number): number {
  const full = fulls[k] as number;
  if (full <= 0) return 0;
  const head = (plant.runVolume[k] as number) - (bottoms[k] as number);
  const share = shareLeft(plant, bottoms, k, volume);
  if (share <= 0) return 0;
  return (share > HOLE_LINEAR ? full / (2 * Math.sqrt(share)) : full / Math.sqrt(HOLE_LINEAR)) / head;
}

function shareLeft(plant: Plant, bottoms: Float64Array, k: number, volume: number): number {
  const bottom = bottoms[k] as number;
  return (volume - bottom) / ((plant.runVolume[k] as number) - bottom);
}
