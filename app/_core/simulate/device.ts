import type { EquipmentType } from '../facility/system';
import type { Proof } from '../plans/plan';
import type { Watch } from './watch';

/** A stretch of time with or without supply; the first begins at 0. `thanks` are safeguards that keep it alive. */
export interface PowerPhase {
  fromS: number;
  live: boolean;
  thanks: string[];
}

/** How a piece of equipment is: as made, without effect though it draws power, stopped for good, or stuck running. */
export type Health = 'ok' | 'no-effect' | 'dead' | 'stuck-on';

/** Regulation as a run needs it. */
export interface Regulated {
  kind: 'always' | 'never' | 'watch' | 'hours';
  /** Two-point control; active means: run. */
  watch: Watch | null;
  minOnS: number;
  minOffS: number;
  /** Longest single run, s; Infinity without a limit. */
  runLimitS: number;
  runLimitSafeguard: string | null;
  /** Local seconds of the day between which it runs. */
  fromS: number;
  toS: number;
}

export interface DeviceInterlock {
  /** A sensor's comparison, or null when it watches the return. */
  watch: Watch | null;
  proof: Proof;
  then: 'off' | 'on';
  hardWired: boolean;
  safeguard: string | null;
}

/** What comes with each m³ of make-up: salt kg, oxygen g, alkalinity and carbon mol; and its °C, null for the room's. */
export interface NewWater {
  salt: number;
  oxygen: number;
  alkalinity: number;
  carbon: number;
  temperature: number | null;
  /** g of oxidant as Cl2, in water that is not the mains'. */
  oxidant: number;
}

/** Water that a device brings. */
export interface MakeUp extends NewWater {
  /** m³/s */
  flow: number;
  /** The reservoir's index; −1: without end. */
  reservoir: number;
  /** It comes from the mains, with their disinfectant. */
  mains: boolean;
  /** It does not do as its plan has it, so that what comes is not what the water is used to. */
  amiss: boolean;
  /** It runs by itself, without power, until its source is empty. */
  siphons: boolean;
}

/** One piece of equipment in a run. The second half changes at events. */
export interface Device {
  key: string;
  type: EquipmentType;
  node: number;
  phases: PowerPhase[];
  health: Health;
  watts: number;
  heatShare: number;
  /** Whether its watts range is known, so that running without effect shows in its power. */
  ranged: boolean;
  cutOuts: { watch: Watch; safeguard: string }[];
  interlocks: DeviceInterlock[];
  lostAction: 'off' | 'on' | 'hold';
  stateThen: 'on' | 'off' | null;
  regulated: Regulated;
  /** Return pump: m³/s to each node. */
  delivers: Float64Array | null;
  /** m³/s of water brought to saturation in a node while it works. */
  gas: { node: number; flow: number }[];
  coolingW: number;
  /** Top-off, doser, supply. */
  makeUp: MakeUp | null;
  /** g/s of nitrogen turned over at most at 20 °C by bacteria in it; `passive`: they have no pump of their own. */
  nitrifying: { rate: number; passive: boolean } | null;
  /** mol/s of carbon dioxide let in while it works. */
  carbon: number;
  /** Ozone: g/s as Cl2 while it works, and whether it does not do as its plan has it. */
  oxidant: { rate: number; amiss: boolean } | null;
  /** Dechlorinator: part of the mains' disinfectant taken out while it works. */
  removes: number;
  /** It does not start again by itself after it has been without power. */
  noRestart: boolean;
  /** Waste: m³/s at the running level while open. */
  wasteFlow: number;
  /** Skimmer: 1/s of volume above where it floods, and the watch for it. */
  flood: { rate: number; watch: Watch } | null;

  powered: boolean;
  /** It has been without power. */
  wasDark: boolean;
  /** Regulation's own answer. */
  on: boolean;
  /** After all layers that work through the controller. */
  command: boolean;
  /** Closed while no cut-out or hard-wired interlock holds it open. */
  contacts: boolean;
  drawing: boolean;
  working: boolean;
  dry: boolean;
  lockedOut: boolean;
  switchedS: number;
}

/** Supply at a time. */
export function phaseAt(phases: PowerPhase[], t: number): PowerPhase {
  let phase = phases[0] as PowerPhase;
  for (const next of phases) if (next.fromS <= t) phase = next;
  return phase;
}

/** Whether everything named has supply at a time. */
export function isLive(ways: readonly PowerPhase[][], t: number): boolean {
  for (const phases of ways) if (!phaseAt(phases, t).live) return false;
  return true;
}

/**
 * Apply the fixed layers of authority to one device: cut-out, interlock, action on lost sensing, operating state, regulation.
 * @param returnLost by proof: whether the return counts as lost
 * @param acted receives the safeguards that made a difference
 * @returns whether anything about it changed
 */
export function command(device: Device, returnLost: Record<Proof, boolean>, acted: Set<string>): boolean {
  const contactsBefore = device.contacts;
  const commandBefore = device.command;
  device.contacts = true;
  device.command = wanted(device);
  const idle = isIdle(device, returnLost);
  for (const cutOut of device.cutOuts) {
    if (!cutOut.watch.active) continue;
    device.contacts = false;
    if (!idle) acted.add(cutOut.safeguard);
  }
  for (const lock of device.interlocks) {
    if (!isActive(lock, returnLost)) continue;
    if (lock.then === 'off' && lock.hardWired) device.contacts = false;
    else device.command = lock.then === 'on';
    if (lock.safeguard && !idle) acted.add(lock.safeguard);
  }
  if (device.lockedOut) device.command = false;
  device.drawing =
    device.powered && device.contacts && device.health !== 'dead' && (device.command || device.health === 'stuck-on');
  const working = device.drawing && device.health !== 'no-effect' && !device.dry;
  const changed = working !== device.working || contactsBefore !== device.contacts || commandBefore !== device.command;
  device.working = working;
  return changed;
}

/** Whether an interlock stands in the way now. */
function isActive({ watch, proof }: DeviceInterlock, returnLost: Record<Proof, boolean>): boolean {
  return watch ? watch.active : returnLost[proof];
}

/** Whether nothing asks it to run, so that whatever stands in its way keeps it from nothing. */
function isIdle(device: Device, returnLost: Record<Proof, boolean>): boolean {
  if (device.health === 'stuck-on') return false;
  if (device.lockedOut) return true;
  return !device.command && device.interlocks.every((lock) => lock.then === 'off' || !isActive(lock, returnLost));
}

/** What the layers below the interlocks ask for. */
function wanted(device: Device): boolean {
  const control = device.regulated.watch;
  if (control && control.signal.kind === 'lost') {
    if (device.lostAction === 'off') return false;
    if (device.lostAction === 'on') return true;
    // Hold: whatever it was told last, with nothing to tell it otherwise.
    return device.on && device.stateThen !== 'off';
  }
  if (device.stateThen) return device.stateThen === 'on';
  return device.on;
}
