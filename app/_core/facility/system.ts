import type { AlarmDefinition } from '../alarms/definition';
import type { Plan } from '../plans/plan';
import type { Safeguard } from '../plans/safeguard';
import type { CarriedOutBy } from './site';
import type { Figure } from './figure';
import type { Paper } from './paper';
import type { Stock } from './stock';

/** Kinds of system with a default tolerance profile. */
export const SYSTEM_KINDS = [
  'reef',
  'fish-only-marine',
  'cold-marine',
  'tropical-fresh',
  'goldfish',
  'brackish',
  'jelly',
  'ray',
  'quarantine',
  'coral-farm',
  'live-food',
] as const;
export type SystemKind = (typeof SYSTEM_KINDS)[number];

/** Operating states a plan can speak of. `normal` is the base state. */
export const OPERATING_STATES = [
  'normal',
  'feeding',
  'water-change',
  'backwash',
  'treatment',
  'night',
  'maintenance',
  'hands-in',
  'diving',
  'ozone-work',
  'emergency-power',
] as const;
export type StateName = (typeof OPERATING_STATES)[number];

/** Scale a pH is given on. Meters calibrated in the usual 4, 7 and 10 buffers read NBS. */
export const PH_SCALES = ['nbs', 'total', 'free'] as const;
export type PhScale = (typeof PH_SCALES)[number];

/** A life-support system: tanks that share water, with everything that keeps them. */
export interface System {
  key: string;
  name: string;
  kind: SystemKind;
  room: string;
  /** Practical salinity the system is kept at; 0 for fresh water. */
  salinity: Figure;
  /** Feed given in a day, grams. */
  feedGPerDay?: Figure;
  /** Part of the feed that is protein, 0 to 1. */
  feedProtein?: Figure;
  /** Local hours of the day at which it is given, 0 to 23, in equal parts; absent: spread over the day. */
  fedAtH?: number[];
  /** pH where it is worst in a day; used where pH is not modelled. */
  ph?: Figure;
  /** Scale that its pH probes are calibrated on; absent: the usual buffers (NBS). */
  phScale?: PhScale;
  /** Alkalinity it is kept at, mmol of charge per litre. */
  alkalinityMmolL?: Figure;
  tanks: Tank[];
  equipment: Equipment[];
  sensors: Sensor[];
  stock: Stock[];
  safeguards: Safeguard[];
  alarms: AlarmDefinition[];
  states: OperatingState[];
  /** How often things fail, as somebody found; nothing is known of the others. */
  rates?: FailureRate[];
  /** Dated statements of how hazards are met that the model does not carry. */
  papers?: Paper[];
}

/** Stands in a rate for the failure of a safeguard that nobody sees before it is needed or tested. */
export const FAILS_UNSEEN = 'fails-unseen';

/** How often one failure mode befalls one thing, with where that is from. */
export interface FailureRate {
  key: string;
  /** Id of the failure mode; `FAILS_UNSEEN` for a safeguard. */
  fault: string;
  /** Key of what it befalls; of an RCD group its name. */
  thing: string;
  /** Failures a year. Without a source it is not used. */
  perYear: Figure;
}

/** A state the system is put into, and what ends it. */
export interface OperatingState {
  name: Exclude<StateName, 'normal'>;
  /** How long it is meant to last, minutes. */
  lastsMin?: Figure;
  endsBy: CarriedOutBy;
  /** Safeguard that ends it whatever else happens (a hard timer with its test). */
  endSafeguard?: string;
  /** Water taken out at the start and put back, matched, at the end (water change, backwash), litres. */
  drawnL?: Figure;
}

export const TANK_ROLES = [
  'display',
  'holding',
  'quarantine',
  'nursery',
  'sump',
  'reservoir',
  'mixing',
  'header',
] as const;
export type TankRole = (typeof TANK_ROLES)[number];

/** One body of water. Levels are millimetres relative to the running level, up positive. */
export interface Tank {
  key: string;
  name: string;
  role: TankRole;
  /** Water at the running level, litres, less rock and sand. */
  volumeL: Figure;
  /** Open water surface, m². */
  surfaceM2: Figure;
  /** Heat lost through walls and base, W per K above the room. Or give `wall`. */
  lossWPerK?: Figure;
  wall?: { material: 'glass' | 'acrylic' | 'concrete' | 'insulated'; thicknessMm: Figure; areaM2: Figure };
  cover: 'open' | 'lidded';
  /** How strongly it evaporates, as a part of the pool equation at full activity: 0.5 calm, near 1 stirred; absent: by cover and role. */
  evaporationActivity?: Figure;
  /** Freeboard: how far the rim stands above the running level, mm. */
  rimMm?: Figure;
  /** How far the level falls when the return stops, to the overflow's crest, mm. */
  drainDownMm?: Figure;
  /** Depth of the return's outlet below the running level, mm: where a siphon stops if its break is blocked. */
  outletMm?: Figure;
  /** Depth of the siphon-break hole below the running level, mm. Absent: no break, the siphon runs to the outlet. */
  siphonBreakMm?: Figure;
  siphonSafeguard?: string;
  /** Part of the return's flow that this tank receives; the shares of a system are scaled to sum to 1. */
  returnShare?: Figure;
  /** How far above the running level a standpipe takes water to the drain, mm; absent: there is none. */
  drainAboveMm?: Figure;
  /** Sump only: how far the level may fall before the return pump draws air, mm. */
  pumpDryMm?: Figure;
}

/** What can be measured. What the model does not reckon with is read, kept and watched all the same. */
export const SENSOR_QUANTITIES = [
  'temperature',
  'level',
  'flow',
  'salinity',
  'oxygen',
  'leak',
  'watts',
  'ph',
  'oxygen-saturation',
  'conductivity',
  'redox',
  'ammonia',
  'nitrite',
  'nitrate',
  'phosphate',
  'alkalinity',
  'pressure',
  'turbidity',
  'carbon-dioxide',
  'oxidant',
] as const;
export type SensorQuantity = (typeof SENSOR_QUANTITIES)[number];

export interface Sensor {
  key: string;
  name: string;
  quantity: SensorQuantity;
  /** Where it sits; for `flow`, the tank the return feeds or the sump it leaves. */
  tank?: string;
  /** For `watts`: the equipment measured. */
  equipment?: string;
  gateway?: string;
  accuracy?: Figure;
  /** The well it shares with other probes: what happens to one there happens to all. */
  well?: string;
  /** How slowly it follows: time constant of a first-order lag, s. Absent: at once. */
  lagS?: Figure;
  /** For `ph`: the scale it is calibrated on; absent: the system's. */
  phScale?: PhScale;
  /** For `conductivity`: the temperature, °C, that its meter brings the reading to; absent: it reads the water as it is. */
  compensatedToC?: number;
  /** ISO date after which the calibration no longer counts; one that was made on a round since moves it: `rounds/calibrated`. */
  calibrationDue?: string;
  /** Days for which a calibration counts. */
  calibrateEveryDays?: number;
}

export const EQUIPMENT_TYPES = [
  'heater',
  'chiller',
  'return-pump',
  'circulation-pump',
  'skimmer',
  'air-blower',
  'top-off',
  'filter',
  'drain-valve',
  'light',
  'uv',
  'ozone',
  'doser',
  'co2',
  'feeder',
  'supply',
  'dechlorinator',
  'other',
] as const;
export type EquipmentType = (typeof EQUIPMENT_TYPES)[number];

/** One piece of equipment. Fields below `plan` belong to the types named beside them. */
export interface Equipment {
  key: string;
  name: string;
  type: EquipmentType;
  /** The tank whose water it acts on (for a top-off: the tank it fills). */
  tank: string;
  circuit?: string;
  /** The relay board or controller that switches it: what hangs on one fails together. */
  relay?: string;
  ratedW?: Figure;
  /** Power a healthy one draws while running; outside it either way is abnormal. */
  wattsRange?: { minW: number; maxW: number };
  /** Part of its power that ends up as heat in the water, 0 to 1. */
  heatToWater?: Figure;
  /** Minutes of work to put it right once somebody stands before it. */
  repairMin?: Figure;
  /** Minutes until what its repair needs is there; 0: a spare lies on site. Absent: taken so. */
  spareMin?: Figure;
  /** Millimetres below the running level at which a heater's element is bare or a pump draws air. */
  bareBelowMm?: Figure;
  plan: Plan;
  /** return-pump, circulation-pump, filter, top-off, doser, supply: water moved, litres per hour. */
  flowLPerH?: Figure;
  /** chiller: heat taken out of the water, W. */
  coolingW?: Figure;
  /** skimmer, circulation-pump, air-blower (each stone): oxygen exchange as the volume of water brought to saturation, L/h at 20 °C. */
  gasTransferLPerH?: Figure;
  /** air-blower: where its stones hang. */
  stones?: { tank: string; count: number }[];
  /** skimmer: how far the level may rise before foam turns to water, mm. */
  floodsAboveMm?: Figure;
  /** skimmer: litres per hour spilled for each further millimetre. */
  floodLPerHPerMm?: Figure;
  /** top-off, doser, supply: the reservoir tank, or `mains`. */
  source?: string;
  /** supply: salinity of what it brings; absent: the system's own. */
  bringsSalinity?: Figure;
  /** supply: temperature of what it brings, °C; absent: the room's. */
  bringsC?: Figure;
  /** filter: ammonia its bacteria can turn over, g N a day at 20 °C with oxygen and flow. */
  nitrifiesGPerDay?: Figure;
  /** ozone: ozone made while it runs, g/h. */
  ozoneGPerH?: Figure;
  /** doser: alkalinity of its solution, mmol of charge per litre; below 0 for an acid. */
  dosesMmolPerL?: Figure;
  /** co2: carbon dioxide let in while it is open, g/h. */
  co2GPerH?: Figure;
  /** feeder: feed its hopper holds, g. */
  hopperG?: Figure;
  /** dechlorinator: part of the mains' disinfectant that it takes out while it works, 0 to 1. */
  removes?: Figure;
  /** filter, drain-valve: water lost while its waste is open, L/h at the running level. */
  wasteLPerH?: Figure;
  /** filter, drain-valve: how far down the level falls before no more leaves, mm below the running level. */
  wasteToMm?: Figure;
}
