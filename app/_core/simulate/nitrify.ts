/** g/m³ of total ammonia (as N) and of oxygen at which bacteria work at half their pace. From memory; films on stone and sand vary by a factor of three either way. */
export const HALF_AMMONIA = 0.3;
const HALF_OXYGEN = 0.5;

/** Part by which bacteria work faster for each K: 1.07^(t − 20), from memory. */
const LOG_SLOPE = Math.log(1.07);
const COLDEST = 0;
const HOTTEST = 40;

/** Pace of nitrifying bacteria at a temperature, °C, as a multiple of that at 20 °C; held below 0 and above 40 °C. */
export function nitrifyingFactor(temperature: number): number {
  return Math.exp(LOG_SLOPE * (Math.min(HOTTEST, Math.max(COLDEST, temperature)) - 20));
}

/** Slope of that as a part of itself, 1/K. */
export function nitrifyingLogSlope(temperature: number): number {
  return temperature > COLDEST && temperature < HOTTEST ? LOG_SLOPE : 0;
}

/** Pace at a concentration as a part of the full one, 0 to 1 (Monod); nothing is turned over where nothing is. */
function monod(concentration: number, half: number): number {
  return concentration > 0 ? concentration / (half + concentration) : concentration / half;
}

function monodSlope(concentration: number, half: number): number {
  return concentration > 0 ? half / ((half + concentration) * (half + concentration)) : 1 / half;
}

/** Pace at a concentration of total ammonia, g/m³ as N. */
export function byAmmonia(ammonia: number): number {
  return monod(ammonia, HALF_AMMONIA);
}

/** Slope of `byAmmonia`, m³/g. */
export function byAmmoniaSlope(ammonia: number): number {
  return monodSlope(ammonia, HALF_AMMONIA);
}

/** Pace at a concentration of oxygen, g/m³; none below nothing, where two paces below nothing would make one above it. */
export function byOxygen(oxygen: number): number {
  return oxygen > 0 ? monod(oxygen, HALF_OXYGEN) : 0;
}

/** Slope of `byOxygen`, m³/g. */
export function byOxygenSlope(oxygen: number): number {
  return oxygen > 0 ? monodSlope(oxygen, HALF_OXYGEN) : 0;
}
