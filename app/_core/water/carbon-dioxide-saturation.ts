import { density } from './density';
import { held, KELVIN, type Law, law } from './law';
import { salinityVapourFactor } from './salinity-vapour-factor';
import { vapourPressure } from './vapour-pressure';

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 60;
/** g/mol. */
export const CARBON_DIOXIDE = 44.0095;
/** Pa in an atmosphere. */
const ATMOSPHERE = 101_325;

/**
 * Carbon dioxide that water takes up under one atmosphere of it, by fugacity.
 *
 *   ln K0 = −60.2409 + 93.4517·(100/T) + 23.3585·ln(T/100) + S·(0.023517 − 0.023656·T/100 + 0.0047036·(T/100)²)
 *
 * @param temperature °C           −1 to 40
 * @param salinity    PSS-78       0 to 45
 * @returns           mol/(kg·atm) 0.0284 at 25 °C and salinity 35
 *
 * Holds      in fresh and sea water. Beyond the range: the formula, temperature held between −5 and 60 °C, salinity between 0
 *            and 60.
 * Leaves out what carbon dioxide then becomes: see `carbonate-balance.ts`.
 * Source     Weiss 1974, Marine Chemistry 2, 203, as in R package seacarb (github.com/cran/seacarb); the range from memory.
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/carbon-dioxide-solubility.json.
 */
export function carbonDioxideSolubility(temperature: number, salinity: number): number {
  const h = (held(temperature, COLDEST, HOTTEST) + KELVIN) / 100;
  const s = held(salinity, 0, SALTIEST);
  const fresh = -60.2409 + 93.4517 / h + 23.3585 * Math.log(h);
  return Math.exp(fresh + s * (0.023517 + h * (-0.023656 + h * 0.0047036)));
}

/**
 * Fugacity of carbon dioxide in air as a part of its partial pressure.
 *
 *   exp((B + 2·(57.7 − 0.118·T))·1.01325/(83.1446·T))
 *
 * @param temperature °C −1 to 40
 * @returns           1  0.9969 at 25 °C
 *
 * Holds      near one atmosphere. Beyond the range: the formula, temperature held between −5 and 60 °C.
 * Leaves out other pressures.
 * Source     Weiss 1974, as in PyCO2SYS (github.com/mvdh7/PyCO2SYS).
 * Checked    tests/core/water/carbonate-constants.test.ts; through the whole-system values of `carbonate-sea.ts`.
 */
export function fugacityFactor(temperature: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const b = -1636.75 + T * (12.0408 + T * (-0.0327957 + T * 3.16528e-5));
  return Math.exp(((b + 2 * (57.7 - 0.118 * T)) * 1.01325) / (83.1446 * T));
}

/**
 * Carbon dioxide dissolved in water that is in balance with the air of its room.
 *
 *   C = K0 · fugacity · x · (P − u) · ρ · 44.0095
 *
 * @param temperature °C     of the water; −1 to 40
 * @param salinity    PSS-78 0 to 45
 * @param part        ppm    by volume of dry air; 420 outdoors, 1000 and more in a closed room; 0 to 50 000
 * @param pressure    atm    of the air; 0.5 to 1.1
 * @returns           g/m³   the same number as mg/L; 0.6 outdoors in fresh water of 25 °C
 *
 * Holds      at the surface. Beyond the range: the formula, each argument held where its own law holds it, no less than nothing
 *            of carbon dioxide, and the air at least as moist as it can be.
 * Leaves out bubbles at depth.
 * Source     as `carbonDioxideSolubility`; vapour as in `vapourPressure`.
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/core/water/carbonate-sea.test.ts.
 */
export function carbonDioxideSaturation(temperature: number, salinity: number, part: number, pressure: number): number {
  const vapour = (vapourPressure(temperature) * salinityVapourFactor(salinity)) / ATMOSPHERE;
  const dry = Math.max(0, held(pressure, 0.4, 1.5) - vapour);
  const mole = carbonDioxideSolubility(temperature, salinity) * fugacityFactor(temperature);
  return mole * 1e-6 * Math.max(0, part) * dry * density(temperature, salinity) * CARBON_DIOXIDE;
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: -1, high: 40 };
const SALINITY = { name: 'salinity', unit: '', low: 0, high: 45 };

export const carbonDioxideSolubilityLaw: Law<[temperature: number, salinity: number]> = law(
  'carbon-dioxide-solubility',
  'mol/(kg·atm)',
  carbonDioxideSolubility,
  [TEMPERATURE, SALINITY],
);

export const fugacityFactorLaw: Law<[temperature: number]> = law('fugacity-factor', '', fugacityFactor, [TEMPERATURE]);

export const carbonDioxideSaturationLaw: Law<[temperature: number, salinity: number, part: number, pressure: number]> =
  law('carbon-dioxide-saturation', 'g/m³', carbonDioxideSaturation, [
    TEMPERATURE,
    SALINITY,
    { name: 'part', unit: 'ppm', low: 0, high: 50_000 },
    { name: 'pressure', unit: 'atm', low: 0.5, high: 1.1 },
  ]);
