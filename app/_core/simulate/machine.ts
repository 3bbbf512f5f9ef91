import type { Limits } from '../alarms/condition';
import type { Meant } from '../alarms/meant';
import type { LimitQuantity } from '../facility/stock';
import type { StateName } from '../facility/system';
import type { HarmClass } from '../review/result';
import type { RoomAir } from './air';
import type { Before } from './build';
import type { Device, MakeUp, PowerPhase } from './device';
import type { Mode, Plant } from './plant';
import type { LaggingProbe } from './probes';
import type { Signal } from './signal';
import type { Watch } from './watch';

/** What can happen to the water of one node beyond its rates. */
export interface NodeRegime {
  key: string;
  /** An overflow to the sump exists and is open. */
  overflow: boolean;
  /** Water can run back through a stopped return. */
  siphon: boolean;
  /** The siphon-break that stops it before the outlet does, if it is credited. */
  siphonSafeguard: string | null;
}

/** A limit of tolerance for the animals of one node, or a bound on floor and pump. */
export interface LimitWatch {
  class: HarmClass;
  what: LimitQuantity | 'water-on-floor' | 'pump-dry';
  direction: 'above' | 'below';
  tank: string;
  node: number;
  limit: number;
  forS: number;
  groups: string[];
  watch: Watch;
}

/** A change of temperature within any 24 hours. */
export interface DayChange {
  tank: string;
  node: number;
  /** +1 a rise, −1 a fall, K. */
  sign: 1 | -1;
  limit: number;
  /** How long the change must stand, s. */
  forS: number;
  /** How much lower (for a fall: higher) it stood at some moment of the 24 hours before, K, ≥ 0. */
  before: number;
  groups: string[];
}

/** How something went, which an alarm is held to after a run; limits in the signal's unit, of a rate in that an hour. */
export type FollowedCourse =
  /** `was`: what its sensor would show with nothing wrong, as it did before. */
  | { kind: 'rate'; of: Signal[]; was: Signal; meanS: number; above: number; below: number }
  /** How far the first of two stands above the other. */
  | { kind: 'difference'; of: Signal[]; above: number; below: number }
  | { kind: 'still'; of: Signal[] }
  /** More starts of its device within an hour; whether it runs as last looked at, and the starts that were seen, s. */
  | { kind: 'starts'; most: number; by: RunsBy; runs: boolean | null; seen: number[] };

/** What tells that a device runs: that it draws power, or that it moves water. */
export type RunsBy = 'drawing' | 'working';

/** What a device draws, held to what readings of it are held to. */
export interface PowerWatch {
  /** The same as readings are held to. */
  condition: Limits;
  /** W that a meter shows of it while it does as it should, and while it draws and does nothing. */
  whole: number;
  idle: number;
  /** Only where it does not as it is told, or nothing: limits on the meter of what is switched are passed with each switching. */
  onlyAmiss: boolean;
  /** Whether it is meant to run, as far as that can be told from outside; null: it is not asked. */
  meant: MeantWatch | null;
}

/** Whether a device is meant to run, as whoever looks at plan, states and readings sees it. */
export interface MeantWatch {
  meant: Meant;
  /** Regulating readings clearly beyond a set-point: it is meant on, it is meant off; null where that is not asked. */
  on: Watch | null;
  off: Watch | null;
  /** What must live for those readings to come. */
  ways: PowerPhase[][];
  /** What the readings said when last looked at, and since when, s. */
  said: { is: 'on' | 'off' | null; sinceS: number } | null;
  /** The operating state that people say is in force, from the beginning of the run to its end. */
  state: StateName | null;
  /** It may run while it is meant off, for all that is wrong; may draw nothing while meant on. */
  mayRun: boolean;
  mayRest: boolean;
}

/** One alarm definition as a run sees it. */
export interface AlarmWatch {
  key: string;
  delayS: number;
  /** Comparisons of a sensor, above and below; none when it watches a device or a gateway. */
  watches: Watch[];
  /** Device whose power it watches; −1 otherwise. */
  device: number;
  /** Held to what its device draws. */
  power: PowerWatch | null;
  /** Watches a flow sensor of the return. */
  flow: boolean;
  /** Watches that its device runs at all, for longer than it should, and by what; null otherwise. */
  runs: RunsBy | null;
  /** Watches that the state it began in is still in force. */
  state: boolean;
  /** How something went; null: it goes by how things stand. */
  followed: FollowedCourse | null;
  /** Supply of every part its message needs to reach a person; all must be live. */
  path: PowerPhase[][];
  /** Supply of the part of that way by which it is known at all: while that is dark, no delay is counted. */
  heard: PowerPhase[][];
  /** Supply of the gateway whose silence it reports; null otherwise. */
  silent: PowerPhase[] | null;
}

/** Something a person on a round would see. */
export interface SignWatch {
  aspect: 'temperature' | 'level' | 'salinity' | 'oxygen';
  watch: Watch;
}

/** The operating state a run begins in, and what becomes of it. */
export interface StateSpan {
  /** Seconds after which it ends, Infinity if it does not. */
  endsS: number;
  /** Safeguard that ends it, if one is needed for that. */
  safeguard: string | null;
  /** What each device's plan says once it has ended. */
  normalThen: ('on' | 'off' | null)[];
  /** m³ by node that was drawn when it began and is put back when it ends. */
  drawn: Float64Array;
}

/** Everything a run needs. Built anew for each run, because devices and watches change in it. */
export interface Machine {
  plant: Plant;
  mode: Mode;
  room: RoomAir;
  nodes: NodeRegime[];
  devices: Device[];
  watches: Watch[];
  limits: LimitWatch[];
  dayChanges: DayChange[];
  alarms: AlarmWatch[];
  signs: SignWatch[];
  span: StateSpan | null;
  /** m³ below which the return pump draws air, as a watch on the sump; null without sump. */
  dry: Watch | null;
  /** Reservoir empty, one a reservoir. */
  empty: Watch[];
  /** People go on filling the reservoirs once a day; not where the top-off itself is what failed. */
  refilled: boolean;
  /** g/m³ as Cl2 of the mains, the part of it that is usually taken out, and the least part that comes through (0: as described). */
  mains: { oxidant: number; removed: number; passes: number };
  /** Bacteria outside any equipment: g/s at most at 20 °C, and whether they live on the return's flow. */
  bacteria: { node: number; rate: number; needsReturn: boolean }[];
  /** Feed that fell in at once: g/s of oxygen (at 20 °C) and nitrogen by node, and the time at which it is used up, s; null: none. */
  dumped: { oxygen: Float64Array; nitrogen: Float64Array; untilS: number } | null;
  /** Water that is put back at the end of a state, where it is unlike what it should be. */
  putBack: { salinity?: number; temperatureC?: number; oxidantMgL?: number } | null;
  /** Water that hoses let run into nodes. */
  hoses: { node: number; water: MakeUp }[];
  /** s by which the clock that runs timed equipment is off. */
  clockOffS: number;
  probes: LaggingProbe[];
  /** Gas exchange of every surface at rest, m³/s per node. */
  stillGas: Float64Array;
  /** Part of the return's flow brought to saturation by falling into the sump, 0 to 1. */
  fallShare: number;
  /** Nodes with animals. */
  stocked: boolean[];
  initial: Float64Array;
  /** What was before the beginning, with nothing wrong; null: nothing is known of it. */
  before: Before | null;
}
