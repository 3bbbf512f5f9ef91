/**
 * What this room knows: how water, heat, salt and oxygen move through one system, and when something is crossed.
 * What it leaves out: why anything fails (`faults`), and what it means for people (`review`).
 * Where the numbers come from: laws of `water`, figures of `equipment/resolve`.
 */

import type { Layout } from './layout';
import type { Chemistry } from './chemistry';

/** Numbers of the state vector that one node takes: volume m³, temperature °C, salt kg, oxygen g/m³. */
export const STRIDE = 4;
export const VOLUME = 0;
export const TEMPERATURE = 1;
export const SALT = 2;
export const OXYGEN = 3;

/**
 * What does not change during a run. Node arrays have one entry per tank and sump; the state vector is laid out as
 * `layout` says.
 */
export interface Plant {
  nodes: number;
  /** Index of the sump, or −1: then no water passes between nodes. */
  hub: number;
  reservoirs: number;
  layout: Layout;
  /** Length of the state vector. */
  size: number;
  chemistry: Chemistry;
  /** kg/m³, held at the system's own salinity and temperature. */
  density: number;
  /** J/(m³·K), likewise. */
  heatCapacity: number;
  /** Air pressure, atm. */
  pressureAtm: number;
  /** Part of pure water's vapour pressure that this water has (salt lowers it). */
  vapourFactor: number;
  /** W/K: walls, base and free-surface convection. */
  lossWPerK: Float64Array;
  /** W/Pa: latent heat carried off for each pascal between water surface and room, while there is water. */
  evaporationWPerPa: Float64Array;
  /** g/s at 20 °C: animals and bacteria. */
  respiration: Float64Array;
  /** m³ at which overflow to the sump stops (the crest). */
  restVolume: Float64Array;
  /** m³ at which a back-siphon through the return stops. */
  siphonVolume: Float64Array;
  /** 1/s: how fast the layer above the crest drains. */
  gravityPerS: Float64Array;
  /** 1/s: how fast the layer above the siphon's end runs back through a stopped return. */
  siphonPerS: Float64Array;
  /** m³ at which water reaches the rim. */
  rimVolume: Float64Array;
  /** m³ at which a waste outlet falls dry. */
  wasteVolume: Float64Array;
  /** m³ at which a standpipe begins to take water to the drain; Infinity without one. */
  standVolume: Float64Array;
  /** m³/s that leaves through a hole in a tank at the running level, and m³ at which it falls dry. */
  leak: Float64Array;
  leakVolume: Float64Array;
  /** m³ at the running level. */
  runVolume: Float64Array;
  /** m². */
  surface: Float64Array;
}

/** What changes only at events: which flows, powers and regimes are in force. Node arrays as in `Plant`. */
export interface Mode {
  /** m³/s of the return to each tank; the sump's entry is 0. */
  returnFlow: Float64Array;
  /** m³/s out of the sump. */
  returnTotal: number;
  /** 1 while the level stands above the crest and the overflow is open. */
  overflowing: Uint8Array;
  /** 1 while water siphons back through a stopped return. */
  siphoning: Uint8Array;
  /** 1 while the level stands above the rim. */
  spilling: Uint8Array;
  /** m³/s that leaves through an open waste at the running level; 0 when shut or dry. */
  waste: Float64Array;
  /** 1/s and m³: a flooded skimmer spills rate × (volume − from). */
  floodRate: Float64Array;
  floodFrom: Float64Array;
  /** W into the water of each node. */
  power: Float64Array;
  /** W/Pa: as in the plant, and 0 where no water is left to evaporate. */
  evaporation: Float64Array;
  /** m³/s of water brought to saturation, at 20 °C. */
  gas: Float64Array;
  /** 1 while the level stands above the standpipe. */
  standing: Uint8Array;
  /** m³/s of make-up into each node; of that, what does not come at the room's temperature, and the same times its °C. */
  makeUp: Float64Array;
  ownHeat: Float64Array;
  ownHeatC: Float64Array;
  /** What comes into each node from outside, with make-up or by itself: salt kg/s, oxygen g/s. */
  salt: Float64Array;
  oxygen: Float64Array;
  /** Likewise alkalinity and inorganic carbon mol/s, oxidant g/s as Cl2. */
  alkalinity: Float64Array;
  carbon: Float64Array;
  oxidant: Float64Array;
  /** g/s at 20 °C of oxygen, and g/s of nitrogen, that feed beside the daily one takes and gives. */
  spoilingOxygen: Float64Array;
  spoilingNitrogen: Float64Array;
  /** g/s of nitrogen that bacteria with flow could turn over at 20 °C. */
  nitrifying: Float64Array;
  /** m³/s drawn from each reservoir. */
  draw: Float64Array;
}

/** What an hour brings: room air at one instant with its slope (for an implicit step), and where in the day's meals it lies. */
export interface Air {
  /** °C */
  temperature: number;
  /** Pa of water vapour */
  vapour: number;
  /** °C/s */
  temperatureSlope: number;
  /** Pa/s */
  vapourSlope: number;
  /** Oxygen use and excretion of this hour, as multiples of their daily means. */
  breath: number;
  excretion: number;
}

/** Laws evaluated at the state that rates were last asked for, one entry a node; the Jacobian there uses them again. */
export interface Laws {
  /** Whether the laws themselves are asked instead of what stands in for them: of a reference that a run is held against. */
  exact: boolean;
  /** W of latent heat, and m³/s that leave with it. */
  latent: Float64Array;
  evaporation: Float64Array;
  /** Pa over pure water. */
  vapour: Float64Array;
  /** g/m³ */
  saturation: Float64Array;
  /** Speed of gas exchange as a multiple of that at 20 °C. */
  gas: Float64Array;
  /** Respiration as a multiple of that at 20 °C. */
  breath: Float64Array;
  /** g/s of nitrogen turned over. */
  nitrified: Float64Array;
  /** mol/m³ of dissolved carbon dioxide. */
  carbonDioxide: Float64Array;
  /** pH on the scale of the constants; where the next search for it begins. */
  ph: Float64Array;
}

/** Room for the laws of a plant's nodes. */
export function emptyLaws(nodes: number): Laws {
  const column = () => new Float64Array(nodes);
  return {
    exact: false,
    latent: column(),
    evaporation: column(),
    vapour: column(),
    saturation: column(),
    gas: column(),
    breath: column(),
    nitrified: column(),
    carbonDioxide: column(),
    ph: column().fill(8),
  };
}

/** 1/s: how briskly water above a rim runs off. A rim is no weir of its own; the figure only has to be quick. From common practice, no source. */
export const RIM_RATE = 0.1;

/** A fresh, empty mode for a plant. */
export function emptyMode(nodes: number, reservoirs: number): Mode {
  const column = () => new Float64Array(nodes);
  return {
    returnFlow: column(),
    returnTotal: 0,
    overflowing: new Uint8Array(nodes),
    siphoning: new Uint8Array(nodes),
    spilling: new Uint8Array(nodes),
    waste: column(),
    floodRate: column(),
    floodFrom: column(),
    power: column(),
    evaporation: column(),
    gas: column(),
    standing: new Uint8Array(nodes),
    makeUp: column(),
    ownHeat: column(),
    ownHeatC: column(),
    salt: column(),
    oxygen: column(),
    alkalinity: column(),
    carbon: column(),
    oxidant: column(),
    spoilingOxygen: column(),
    spoilingNitrogen: column(),
    nitrifying: column(),
    draw: new Float64Array(reservoirs),
  };
}
