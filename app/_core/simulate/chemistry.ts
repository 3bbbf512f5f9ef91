import type { PhScale } from '../facility/system';
import { type CarbonateConstants, emptyConstants, phAt } from '../water/carbonate-balance';
import { fillFreshConstants } from '../water/carbonate-fresh';
import { fillSeaConstants } from '../water/carbonate-sea';
import { fromTotalScale } from '../water/ph-scales';

/** What the dissolved substances of a plant answer to; constant during a run. Node arrays as in `Plant`. */
export interface Chemistry {
  /** Practical salinity the system is kept at, and ionic strength (mol/L) where that makes it fresh water. */
  salinity: number;
  ionicStrength: number;
  /** pH (NBS) where carbon is not carried: the worst of a usual day. */
  ph: number;
  /** Part of the room's air, by volume, that is carbon dioxide. */
  airCarbonDioxide: number;
  /** g/s of nitrogen given off by the animals, mean of the day. */
  excretion: Float64Array;
  /** mol/s of alkalinity and of inorganic carbon taken up all the time: what the everyday dose makes good. */
  alkalinityUse: Float64Array;
  carbonUse: Float64Array;
  /** 1/s: first-order decay of oxidant. */
  oxidantDecay: number;
  /** Constants of the water looked at last. */
  constants: CarbonateConstants;
}

/** Chemistry of a plant in which nothing dissolves; what matters is filled in by whoever knows it. */
export function plainChemistry(nodes: number, salinity: number): Chemistry {
  const column = () => new Float64Array(nodes);
  return {
    salinity,
    ionicStrength: 0,
    ph: 8,
    airCarbonDioxide: 0,
    excretion: column(),
    alkalinityUse: column(),
    carbonUse: column(),
    oxidantDecay: 0,
    constants: emptyConstants(),
  };
}

/** Practical salinity from which a system's water is reckoned with the sea's constants, below it with those of fresh water. */
const SALT_FROM = 1;

/** Whether the constants are the sea's, with pH on the total scale. */
export function isSalt({ salinity }: Chemistry): boolean {
  return salinity >= SALT_FROM;
}

/** Carbonate constants of the water at a temperature (°C) and salinity; they stay what they are until the next call. */
export function constantsAt(chemistry: Chemistry, temperature: number, salinity: number): CarbonateConstants {
  const { constants, ionicStrength } = chemistry;
  return isSalt(chemistry)
    ? fillSeaConstants(constants, temperature, salinity)
    : fillFreshConstants(constants, temperature, ionicStrength);
}

/**
 * pH on a scale, of water with an alkalinity and carbon, both mol/m³.
 * @param guess pH on the scale of the constants, any will do
 */
export function phOn(
  scale: PhScale,
  chemistry: Chemistry,
  water: { temperature: number; salinity: number; alkalinity: number; carbon: number },
): number {
  const { temperature, salinity, alkalinity, carbon } = water;
  const own = phAt(constantsAt(chemistry, temperature, salinity), alkalinity, carbon, chemistry.ph);
  return isSalt(chemistry) ? fromTotalScale(own, scale, temperature, salinity) : own;
}

/** mol of inorganic carbon given off for each gram of oxygen used: as many molecules as of oxygen. From memory: a quotient of 1. */
export const CARBON_PER_OXYGEN = 1 / 31.9988;

/** mol of alkalinity used up for each gram of nitrogen that is turned over: two for each atom (stoichiometry, without growth). */
export const ALKALINITY_PER_NITROGEN = 2 / 14.0067;

/**
 * Speed at which carbon dioxide passes a surface, as a multiple of oxygen's: (Sc of CO2 / Sc of O2)^−½ = (600 / 530)^−½ at 20 °C,
 * by the Schmidt numbers of LakeMetabolizer (github.com/GLEON/LakeMetabolizer). Bubbles that fill up with the gas on their way
 * pass less.
 */
export const CARBON_DIOXIDE_SPEED = 0.94;

/** (mol/m³)²: below about 0.1 mol/m³ uptake of alkalinity fades, so that it never falls below nothing. An extension of ours. */
const ALKALINITY_FADE = 0.01;

/** Uptake of alkalinity as a part of the full one, 0 to 1. */
export function alkalinityUptake(alkalinity: number): number {
  if (alkalinity <= 0) return 0;
  const square = alkalinity * alkalinity;
  return square / (square + ALKALINITY_FADE);
}

/** Slope of `alkalinityUptake`, m³/mol. */
export function alkalinityUptakeSlope(alkalinity: number): number {
  if (alkalinity <= 0) return 0;
  const whole = alkalinity * alkalinity + ALKALINITY_FADE;
  return (2 * alkalinity * ALKALINITY_FADE) / (whole * whole);
}
