import { type Mode, type Plant, RIM_RATE } from './plant';

/** Part of the way from running level to outlet below which the flow is taken as linear: Torricelli's root has no slope at 0. */
const WASTE_LINEAR = 1e-3;

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

/** Water that leaves one node for the floor, m³/s: over the rim, and as flooded skimmate. */
export function floorFlow(plant: Plant, mode: Mode, k: number, volume: number): number {
  let flow = 0;
  if (mode.spilling[k] === 1) flow += RIM_RATE * (volume - (plant.rimVolume[k] as number));
  const flood = mode.floodRate[k] as number;
  if (flood > 0) flow += flood * (volume - (mode.floodFrom[k] as number));
  return flow;
}

/** Slope of `floorFlow` with volume, 1/s. */
export function floorSlope(mode: Mode, k: number): number {
  return RIM_RATE * (mode.spilling[k] as number) + (mode.floodRate[k] as number);
}

/**
 * Water that leaves through an open waste, m³/s, by Torricelli's law between the running level and the outlet
 * (flow ∝ √head), linear in the last thousandth of the way so that the end is reached, not stepped over. Nothing comes back in.
 */
export function wasteFlow(plant: Plant, mode: Mode, k: number, volume: number): number {
  const full = mode.waste[k] as number;
  if (full <= 0) return 0;
  const share = wasteShare(plant, k, volume);
  if (share <= 0) return 0;
  return share > WASTE_LINEAR ? full * Math.sqrt(share) : (full * share) / Math.sqrt(WASTE_LINEAR);
}

/** Slope of `wasteFlow` with volume, 1/s. */
export function wasteSlope(plant: Plant, mode: Mode, k: number, volume: number): number {
  const full = mode.waste[k] as number;
  if (full <= 0) return 0;
  const head = (plant.runVolume[k] as number) - (plant.wasteVolume[k] as number);
  const share = wasteShare(plant, k, volume);
  if (share <= 0) return 0;
  return (share > WASTE_LINEAR ? full / (2 * Math.sqrt(share)) : full / Math.sqrt(WASTE_LINEAR)) / head;
}

function wasteShare(plant: Plant, k: number, volume: number): number {
  const bottom = plant.wasteVolume[k] as number;
  return (volume - bottom) / ((plant.runVolume[k] as number) - bottom);
}
