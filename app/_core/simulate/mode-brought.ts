import type { Device, MakeUp } from './device';
import type { Machine } from './machine';

/** Part of the mains' disinfectant that is taken out as things stand. */
export function takenOut(devices: readonly Device[]): number {
  let left = 1;
  for (const device of devices) if (device.working) left *= 1 - device.removes;
  return 1 - left;
}

/**
 * The water that a device brings into a node, with all that is in it.
 * @param taken part of the mains' disinfectant that is taken out now
 */
export function addMakeUp(machine: Machine, makeUp: MakeUp, k: number, taken: number): void {
  const { mode } = machine;
  const { flow, reservoir, temperature } = makeUp;
  if (reservoir >= 0) {
    if (machine.empty[reservoir]?.active) return;
    mode.draw[reservoir] = (mode.draw[reservoir] as number) + flow;
  }
  add(mode.makeUp, k, flow);
  if (temperature !== null) {
    add(mode.ownHeat, k, flow);
    add(mode.ownHeatC, k, flow * temperature);
  }
  add(mode.salt, k, flow * makeUp.salt);
  add(mode.oxygen, k, flow * makeUp.oxygen);
  add(mode.alkalinity, k, flow * makeUp.alkalinity);
  add(mode.carbon, k, flow * makeUp.carbon);
  add(mode.oxidant, k, flow * oxidantOf(machine, makeUp, taken));
}

/**
 * g/m³ of oxidant in what is brought. What comes in everyday running is used up as it comes, as it always has been; what comes beyond that
 * is not: too much of the water, or less taken out of it.
 */
function oxidantOf({ mains }: Machine, makeUp: MakeUp, taken: number): number {
  if (!makeUp.mains) return makeUp.oxidant;
  const asUsual = !makeUp.amiss && mains.passes === 0 && taken >= mains.removed;
  return asUsual ? 0 : mains.oxidant * Math.max(mains.passes, 1 - taken);
}

/** What comes into the water by itself, and what its bacteria could turn over, once it is known where water flows. */
export function addChemistry(machine: Machine): void {
  const { mode, plant, bacteria, dumped } = machine;
  const flows = mode.returnTotal > 0;
  mode.nitrifying.fill(0);
  for (const { node, rate, needsReturn } of bacteria) if (flows || !needsReturn) add(mode.nitrifying, node, rate);
  for (const device of machine.devices) {
    const k = device.node;
    const { nitrifying, oxidant } = device;
    if (nitrifying && (nitrifying.passive ? flows || k !== plant.hub : device.working))
      add(mode.nitrifying, k, nitrifying.rate);
    if (!device.working) continue;
    add(mode.carbon, k, device.carbon);
    // What ozone makes in everyday running is used up where it is made; beyond its plan, or with nothing to carry it off, it is not.
    if (oxidant && (oxidant.amiss || (k === plant.hub && !flows))) add(mode.oxidant, k, oxidant.rate);
  }
  mode.spoilingOxygen.fill(0);
  mode.spoilingNitrogen.fill(0);
  if (!dumped) return;
  mode.spoilingOxygen.set(dumped.oxygen);
  mode.spoilingNitrogen.set(dumped.nitrogen);
}

function add(column: Float64Array, k: number, value: number): void {
  column[k] = (column[k] as number) + value;
}
