/**
 * What holds between pH, alkalinity and dissolved carbon in any water, once its constants are known: the part that
 * `carbonate-sea.ts` and `carbonate-fresh.ts` share. Concentrations are mol/m³ (the same number as mmol/L), pH is on the
 * scale of the constants: total in salt water, by activity in fresh water.
 *
 * Alkalinity here is that of carbonate, borate and water itself. Phosphate, silicate, ammonia, humic acids and whatever
 * else was poured in are left out; where they are, a pH reckoned from alkalinity and carbon is not the water's.
 */

/** Constants of one water at one temperature. Filled by `fillSeaConstants` or `fillFreshConstants`, never changed here. */
export interface CarbonateConstants {
  /** mol/kg: first and second step of carbonic acid, and boric acid, as hydrogen times base over acid. */
  k1: number;
  k2: number;
  kb: number;
  /** mol/m³ of boron. */
  boron: number;
  /** mol/m³ · mol/kg: hydroxide times hydrogen. */
  kw: number;
  /** mol/m³ of acid per mol/kg of hydrogen by the scale of pH. */
  acid: number;
  /** mol/(m³·atm) of carbon dioxide, by partial pressure. */
  solubility: number;
}

/** A place to fill. */
export function emptyConstants(): CarbonateConstants {
  return { k1: 0, k2: 0, kb: 1, boron: 0, kw: 0, acid: 0, solubility: 0 };
}

const LOWEST_PH = 1;
const HIGHEST_PH = 13;
const CLOSE = 1e-11;

function hydrogen(ph: number): number {
  return Math.exp(-Math.LN10 * ph);
}

/** Part of the dissolved carbon that is carbon dioxide. */
export function carbonDioxideShare(k: CarbonateConstants, ph: number): number {
  const h = hydrogen(ph);
  return (h * h) / (h * h + k.k1 * (h + k.k2));
}

/** Part of it that is bicarbonate. */
export function bicarbonateShare(k: CarbonateConstants, ph: number): number {
  const h = hydrogen(ph);
  return (k.k1 * h) / (h * h + k.k1 * (h + k.k2));
}

/** Part of it that is carbonate. */
export function carbonateShare(k: CarbonateConstants, ph: number): number {
  const h = hydrogen(ph);
  return (k.k1 * k.k2) / (h * h + k.k1 * (h + k.k2));
}

/** Alkalinity that is not carbonate's: borate and hydroxide, less free acid. mol/m³. */
function otherAlkalinity(k: CarbonateConstants, h: number): number {
  return (k.boron * k.kb) / (k.kb + h) + k.kw / h - k.acid * h;
}

/**
 * Alkalinity of water with so much carbon at a pH.
 *
 * @returns mol/m³ of charge
 */
export function alkalinityAt(k: CarbonateConstants, carbon: number, ph: number): number {
  const h = hydrogen(ph);
  const charge = (k.k1 * (h + 2 * k.k2)) / (h * h + k.k1 * (h + k.k2));
  return carbon * charge + otherAlkalinity(k, h);
}

/**
 * Dissolved carbon of water with such an alkalinity at a pH: carbon dioxide, bicarbonate and carbonate together.
 *
 * @returns mol/m³; 0 where the pH is so high that no carbon is needed for the alkalinity
 */
export function carbonAt(k: CarbonateConstants, alkalinity: number, ph: number): number {
  const h = hydrogen(ph);
  const charge = (k.k1 * (h + 2 * k.k2)) / (h * h + k.k1 * (h + k.k2));
  return Math.max(0, alkalinity - otherAlkalinity(k, h)) / charge;
}

/**
 * How much alkalinity one unit of pH takes, the carbon staying what it is. Always above 0.
 *
 * Slopes follow from it: pH by alkalinity is 1 over it, pH by carbon is −`chargePerCarbon` over it.
 *
 * @returns mol/m³ per unit of pH
 */
export function bufferIntensity(k: CarbonateConstants, carbon: number, ph: number): number {
  const h = hydrogen(ph);
  const whole = h * h + k.k1 * (h + k.k2);
  const acid = (h * h) / whole;
  const middle = (k.k1 * h) / whole;
  const base = (k.k1 * k.k2) / whole;
  const byCarbon = middle * (acid + base) + 4 * acid * base;
  const borate = (k.boron * k.kb * h) / ((k.kb + h) * (k.kb + h));
  return Math.LN10 * (carbon * byCarbon + borate + k.kw / h + k.acid * h);
}

/** Charge that a mole of dissolved carbon carries at a pH: bicarbonate once, carbonate twice. */
export function chargePerCarbon(k: CarbonateConstants, ph: number): number {
  const h = hydrogen(ph);
  return (k.k1 * (h + 2 * k.k2)) / (h * h + k.k1 * (h + k.k2));
}

/**
 * pH of water from its alkalinity and carbon: Newton's rule, kept inside a shrinking bracket.
 *
 * @param k          constants
 * @param alkalinity mol/m³
 * @param carbon     mol/m³; below 0 counts as none
 * @param guess      pH to begin at; the last one known is best, and any will do
 * @returns          pH, held between 1 and 13
 */
export function phAt(k: CarbonateConstants, alkalinity: number, carbon: number, guess: number): number {
  const c = Math.max(0, carbon);
  if (Number.isNaN(alkalinity + c + guess + k.k1)) return Number.NaN;
  let low = LOWEST_PH;
  let high = HIGHEST_PH;
  let ph = Math.min(Math.max(guess, low), high);
  for (let i = 0; i < 100; i++) {
    const off = alkalinityAt(k, c, ph) - alkalinity;
    if (off > 0) high = ph;
    else low = ph;
    const next = ph - off / bufferIntensity(k, c, ph);
    const inside = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(inside - ph) < CLOSE) return inside;
    ph = inside;
  }
  return ph;
}

/** How carbon dioxide (mol/m³) changes with dissolved carbon, the alkalinity staying what it is. A pure number. */
export function carbonDioxideByCarbon(k: CarbonateConstants, carbon: number, ph: number): number {
  const charge = chargePerCarbon(k, ph);
  const buffer = bufferIntensity(k, carbon, ph);
  return carbonDioxideShare(k, ph) * (1 + (Math.LN10 * carbon * charge * charge) / buffer);
}

/** How carbon dioxide (mol/m³) changes with alkalinity, the carbon staying what it is. A pure number, below 0. */
export function carbonDioxideByAlkalinity(k: CarbonateConstants, carbon: number, ph: number): number {
  const slope = Math.LN10 * carbonDioxideShare(k, ph) * carbon * chargePerCarbon(k, ph);
  return -slope / bufferIntensity(k, carbon, ph);
}
