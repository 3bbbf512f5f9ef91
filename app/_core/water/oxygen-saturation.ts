import { held, KELVIN, type Law, law } from './law';

/** Benson & Krause 1984 in mg/L: ln C at one atmosphere in powers of 1/T, then the salinity term. */
const [A0, A1, A2, A3, A4] = [-139.34411, 1.575701e5, -6.642308e7, 1.2438e10, -8.621949e11] as const;
const [B0, B1, B2] = [0.017674, -10.754, 2140.7] as const;
/** The same authors: water vapour in atm, and θ of the pressure term, which takes °C and not K. */
const [U0, U1, U2] = [11.8571, -3840.7, -216961] as const;
const [TH0, TH1, TH2] = [9.75e-4, -1.426e-5, 6.436e-8] as const;

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 100;
const THINNEST = 0.4;
const THICKEST = 1.5;

/**
 * Oxygen dissolved in water that is in balance with air: what a perfectly aerated tank holds.
 *
 *   ln C1 = A(1/T) − S·B(1/T)          C = C1 · (P − u)(1 − θP) / ((1 − u)(1 − θ))
 *
 * @param temperature °C     0 to 40
 * @param salinity    PSS-78 0 to 40
 * @param pressure    atm    pressure of the air, 0.5 to 1.1 (see `atmospheresFromAltitude`)
 * @returns           g/m³   the same number as mg/L
 *
 * Holds      at the surface. Beyond the range: the formula, with temperature held between −5 and 60 °C, salinity
 *            between 0 and 100 and pressure between 0.4 and 1.5 atm.
 * Leaves out bubbles at depth, which can lift a tank above this, and air that is poor in oxygen in a closed room.
 * Source     Benson & Krause 1984, Limnology and Oceanography 29, 620; coefficients as in R package wq 0.4.8
 *            (github.com/cran/wq) and two further programs.
 * Checked    tests/core/water/oxygen-saturation.test.ts; tests/reference/oxygen-saturation.json, last digit.
 */
export function oxygenSaturation(temperature: number, salinity: number, pressure: number): number {
  const t = held(temperature, COLDEST, HOTTEST);
  const s = held(salinity, 0, SALTIEST);
  const p = held(pressure, THINNEST, THICKEST);
  const x = 1 / (t + KELVIN);
  const fresh = A0 + x * (A1 + x * (A2 + x * (A3 + x * A4)));
  const u = Math.exp(U0 + x * (U1 + x * U2));
  const theta = TH0 + t * (TH1 + t * TH2);
  const atOne = Math.exp(fresh - s * (B0 + x * (B1 + x * B2)));
  return (atOne * (p - u) * (1 - theta * p)) / ((1 - u) * (1 - theta));
}

/**
 * How oxygen saturation changes with temperature.
 *
 * @param temperature °C        as above
 * @param salinity    PSS-78    as above
 * @param pressure    atm       as above
 * @returns           g/(m³·K)  below 0; 0 where temperature is held
 *
 * Holds, leaves out: as `oxygenSaturation`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function oxygenSaturationByTemperature(temperature: number, salinity: number, pressure: number): number {
  return (
    oxygenSaturation(temperature, salinity, pressure) *
    oxygenSaturationLogByTemperature(temperature, salinity, pressure)
  );
}

/**
 * How oxygen saturation changes with salinity.
 *
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @param pressure    atm    as above
 * @returns           g/m³   per unit of salinity, below 0; 0 where salinity is held
 *
 * Holds, leaves out: as `oxygenSaturation`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function oxygenSaturationBySalinity(temperature: number, salinity: number, pressure: number): number {
  return oxygenSaturation(temperature, salinity, pressure) * oxygenSaturationLogBySalinity(temperature, salinity);
}

/**
 * How oxygen saturation changes with temperature, as a part of the saturation itself, for whoever has it already.
 *
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @param pressure    atm    as above
 * @returns           1/K    below 0; 0 where temperature is held
 *
 * Holds, leaves out, source: as `oxygenSaturation`.
 * Checked    through `oxygenSaturationByTemperature`, which is made from it.
 */
export function oxygenSaturationLogByTemperature(temperature: number, salinity: number, pressure: number): number {
  return temperature < COLDEST || temperature > HOTTEST ? 0 : logSlope(temperature, salinity, pressure);
}

/**
 * How oxygen saturation changes with salinity, as a part of the saturation itself.
 *
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @returns           1      per unit of salinity, below 0; 0 where salinity is held
 *
 * Holds, leaves out, source: as `oxygenSaturation`.
 * Checked    through `oxygenSaturationBySalinity`, which is made from it.
 */
export function oxygenSaturationLogBySalinity(temperature: number, salinity: number): number {
  if (salinity < 0 || salinity > SALTIEST) return 0;
  const x = 1 / (held(temperature, COLDEST, HOTTEST) + KELVIN);
  return -(B0 + x * (B1 + x * B2));
}

/** d ln C / dT, per K, at a temperature that is not held. */
function logSlope(t: number, salinity: number, pressure: number): number {
  const s = held(salinity, 0, SALTIEST);
  const p = held(pressure, THINNEST, THICKEST);
  const x = 1 / (t + KELVIN);
  const square = x * x;
  const fresh = -square * (A1 + x * (2 * A2 + x * (3 * A3 + x * 4 * A4)));
  const salt = -square * (B1 + x * 2 * B2);
  const u = Math.exp(U0 + x * (U1 + x * U2));
  const du = -u * square * (U1 + x * 2 * U2);
  const theta = TH0 + t * (TH1 + t * TH2);
  const dTheta = TH1 + 2 * t * TH2;
  const vapour = du / (1 - u) - du / (p - u);
  const depth = dTheta / (1 - theta) - (dTheta * p) / (1 - theta * p);
  return fresh - s * salt + vapour + depth;
}

export const oxygenSaturationLaw: Law<[temperature: number, salinity: number, pressure: number]> = law(
  'oxygen-saturation',
  'g/m³',
  oxygenSaturation,
  [
    { name: 'temperature', unit: '°C', low: 0, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 40 },
    { name: 'pressure', unit: 'atm', low: 0.5, high: 1.1 },
  ],
);
