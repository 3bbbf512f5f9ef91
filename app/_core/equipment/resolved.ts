import type { Equipment, Tank } from '../facility/system';
import type { Meals } from '../simulate/air';
import type { Follower } from '../simulate/layout';
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
  /** m above the running level at which a standpipe takes water to the drain; Infinity without one. */
  stand: number;
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
  /** g/s of nitrogen that its bacteria turn over at most at 20 °C, where that is known; else null. */
  nitrifies: number | null;
  /** g/s of oxidant as Cl2, mol/s of carbon dioxide while it runs. */
  oxidant: number;
  carbon: number;
  /** Alkalinity (mol/m³), practical salinity and °C (null: the room's) of what it brings. */
  brings: { alkalinity: number; salinity: number; temperature: number | null };
  /** Part of the mains' disinfectant that it takes out. */
  removes: number;
  repairS: number;
}

/** Room air by hour of the day. */
export interface ResolvedRoom {
  temperatureC: number[];
  humidityPct: number[];
}

/** What dissolves in a system's water besides salt and oxygen. */
export interface ResolvedChemistry {
  /** What can reach a limit or is read by something that acts. */
  carried: ReadonlySet<Follower>;
  /** Worst pH (NBS) of a day, alkalinity mol/m³, part of the room's air that is carbon dioxide. */
  ph: number;
  alkalinity: number;
  airCarbonDioxide: number;
  /** g of nitrogen for each g of feed, and g of oxygen that feed fallen in takes within a day. */
  nitrogenPerFeed: number;
  feedOxygen: number;
  /** g/s of nitrogen given off by the animals of each tank, by key, mean of the day. */
  excretion: Map<string, number>;
  /** g/s of nitrogen that all bacteria could turn over at 20 °C where nothing else is said, and the part of them in the tanks themselves. */
  nitrifying: number;
  surfacesShare: number;
  /** g/m³ of total ammonia that a healthy system stands at, as a first guess. */
  ammonia: number;
  /** g/m³ of total ammonia from which a limit is near: a third of what reaches the least one in hot water at the worst pH. */
  ammoniaNear: number;
  meals: Meals;
  /** g/m³ as Cl2 */
  mainsOxidant: number;
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
  chemistry: ResolvedChemistry;
  /** s by which probes lag, by key of the sensor. */
  lags: Map<string, number>;
  /** Figures filled in or carrying a range. */
  notes: InputNote[];
  /** Names of figures nobody knows and no default can stand for. */
  missing: string[];
}
