import { addChemistry, addMakeUp, takenOut } from './mode-brought';
import type { Device } from './device';
import type { Machine } from './machine';
import type { Proof } from '../plans/plan';
import type { Watch } from './watch';

/** Watches of the water's own regimes, one a node; null where the regime cannot occur. */
export interface RegimeWatches {
  overflow: (Watch | null)[];
  siphon: (Watch | null)[];
  standpipe: (Watch | null)[];
  rim: Watch[];
  bare: Watch[];
}

/** Pick the regime watches out of a machine's list once, so that the mode can be set without searching. */
export function regimeWatches(machine: Machine): RegimeWatches {
  const of = (role: Watch['role'], node: number) =>
    machine.watches.find((w) => w.role === role && w.owner === node) ?? null;
  const nodes = machine.nodes.map((_, k) => k);
  return {
    overflow: nodes.map((k) => of('overflow', k)),
    siphon: nodes.map((k) => of('siphon', k)),
    standpipe: nodes.map((k) => of('standpipe', k)),
    rim: nodes.map((k) => of('rim', k) as Watch),
    bare: nodes.map((k) => of('bare', k) as Watch),
  };
}

/** Whether the return counts as lost, by each way of proving it. A system without a return pump has none to lose. */
export function returnLost(devices: Device[]): Record<Proof, boolean> {
  const pumps = devices.filter((d) => d.type === 'return-pump');
  if (pumps.length === 0) return { flow: false, watts: false, command: false };
  return {
    flow: !pumps.some((d) => d.working),
    watts: !pumps.some((d) => d.drawing && !(d.ranged && (d.dry || d.health === 'no-effect'))),
    command: !pumps.some((d) => d.command),
  };
}

/** Set flows, powers and regimes from what the devices do and where the levels stand. */
export function setMode(machine: Machine, regimes: RegimeWatches): void {
  const { mode, plant, devices } = machine;
  mode.returnFlow.fill(0);
  mode.power.fill(0);
  mode.waste.fill(0);
  mode.floodRate.fill(0);
  for (const column of [mode.makeUp, mode.ownHeat, mode.ownHeatC, mode.salt, mode.oxygen]) column.fill(0);
  for (const column of [mode.alkalinity, mode.carbon, mode.oxidant]) column.fill(0);
  const dissolves = plant.size > plant.layout.floor + 1;
  const taken = dissolves ? takenOut(devices) : 0;
  mode.draw.fill(0);
  mode.gas.set(machine.stillGas);
  for (const device of devices) addDevice(machine, device, taken);
  for (const { node, water } of machine.hoses) addMakeUp(machine, water, node, taken);
  mode.returnTotal = 0;
  for (let k = 0; k < plant.nodes; k++) mode.returnTotal += mode.returnFlow[k] as number;
  if (plant.hub >= 0) mode.gas[plant.hub] = (mode.gas[plant.hub] as number) + machine.fallShare * mode.returnTotal;
  for (let k = 0; k < plant.nodes; k++) {
    const regime = machine.nodes[k];
    const stopped = mode.returnFlow[k] === 0;
    mode.overflowing[k] = regime?.overflow && regimes.overflow[k]?.active ? 1 : 0;
    mode.siphoning[k] = regime?.siphon && stopped && regimes.siphon[k]?.active ? 1 : 0;
    mode.spilling[k] = regimes.rim[k]?.active ? 1 : 0;
    mode.standing[k] = regimes.standpipe[k]?.active ? 1 : 0;
    const bare = regimes.bare[k]?.active === true;
    mode.evaporation[k] = bare ? 0 : (plant.evaporationWPerPa[k] as number);
    if (bare) mode.power[k] = 0;
  }
  if (dissolves) addChemistry(machine);
}

function addDevice(machine: Machine, device: Device, taken: number): void {
  const { mode } = machine;
  const k = device.node;
  if (device.drawing && !device.dry) {
    mode.power[k] = (mode.power[k] as number) + device.watts * device.heatShare;
  }
  // A waste valve left open needs no power; a filter's waste flows while its own pump does.
  if (device.wasteFlow > 0 && (device.working || device.type === 'drain-valve'))
    mode.waste[k] = (mode.waste[k] as number) + device.wasteFlow;
  if (device.makeUp && (device.working || device.makeUp.siphons)) addMakeUp(machine, device.makeUp, k, taken);
  if (!device.working) return;
  mode.power[k] = (mode.power[k] as number) - device.coolingW;
  for (const { node, flow } of device.gas) mode.gas[node] = (mode.gas[node] as number) + flow;
  if (device.delivers) {
    for (let n = 0; n < device.delivers.length; n++)
      mode.returnFlow[n] = (mode.returnFlow[n] as number) + (device.delivers[n] as number);
  }
  if (device.flood?.watch.active) addFlood(machine, k, device.flood.rate, device.flood.watch.on);
}

/** Several flooded skimmers in one node spill as one, from between their levels. */
function addFlood({ mode }: Machine, k: number, rate: number, from: number): void {
  const before = mode.floodRate[k] as number;
  mode.floodFrom[k] = (before * (mode.floodFrom[k] as number) + rate * from) / (before + rate);
  mode.floodRate[k] = before + rate;
}

/** Nodes with animals that have neither flow through them nor a pump or air that stirs them. */
export function stagnant(machine: Machine): number[] {
  const { mode, devices } = machine;
  return machine.nodes.flatMap((_, k) => {
    if (!machine.stocked[k] || (mode.returnFlow[k] as number) > 0) return [];
    const stirred = devices.some(
      (d) => d.working && (d.node === k || d.gas.some((g) => g.node === k)) && d.gas.length > 0,
    );
    return stirred ? [] : [k];
  });
}
