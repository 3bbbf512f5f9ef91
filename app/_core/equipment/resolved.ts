import type { Equipment, Tank } from '../facility/system';
import type { InputNote, Side } from './take';

/** A body of water in SI units, with every gap filled. */
export interface ResolvedTank {
  tank: Tank;
  /** m³ at the running level. */
  volume: number;
  /** m² */
  surface: number;
  /** W/K through walls, base and free surface. */
  loss: number;
  /** W/Pa */
  evaporation: number;
  /** m³/s brought to saturation by the still surface at 20 °C. */
  stillGas: number;
  /** m by which the level falls to the overflow's crest. */
  drainDown: number;
  /** m to the siphon-break hole; Infinity without one. */
  siphonBreak: number;
  /** m to the return's outlet. */
  outlet: number;
  /** m of freeboard. */
  rim: number;
  /** Part of the return's flow, the shares of a system summing to 1. */
  share: number;
  /** m the level may fall before the return pump draws air (sump). */
  pumpDry: number;
}

/** Equipment in SI units, with every gap filled. */
export interface ResolvedDevice {
  equipment: Equipment;
  watts: number;
  heatShare: number;
  /** m³/s */
  flow: number;
  coolingW: number;
  /** m³/s of water brought to saturation at 20 °C, by tank key. */
  gas: { tank: string; flow: number }[];
  /** m above the running level at which a skimmer floods, and m³/s for each further metre. */
  floodsAbove: number;
  floodPerM: number;
  /** m³/s through an open waste at the running level, and m to its outlet. */
  waste: number;
  wasteTo: number;
  repairS: number;
}

/** Room air by hour of the day. */
export interface ResolvedRoom {
  temperatureC: number[];
  humidityPct: number[];
}

/** One system in numbers, on one side of its plausible ranges. */
export interface ResolvedSystem {
  side: Side;
  only: string | null;
  tanks: ResolvedTank[];
  devices: ResolvedDevice[];
  room: ResolvedRoom;
  salinity: number;
  /** °C the system is kept at, as a first guess. */
  temperature: number;
  pressureAtm: number;
  fallShare: number;
  /** g/s of oxygen at 20 °C used by the animals of each tank, by key. */
  respiration: Map<string, number>;
  /** Bacteria's use as a part of the animals'. */
  bacteriaShare: number;
  /** Figures filled in or carrying a range. */
  notes: InputNote[];
  /** Names of figures nobody knows and no default can stand for. */
  missing: string[];
}
