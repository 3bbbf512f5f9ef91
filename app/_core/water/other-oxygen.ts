import { ipts68 } from './ipts-68';
import { held, KELVIN, type Law, law } from './law';

/**
 * Oxygen in balance with the air by Garcia & Gordon, a second fit to the same measurements: to check the first by.
 *
 *   ln C = Σ A·Ts^i + S·Σ B·Ts^i + C0·S²      Ts = ln((298.15 − t)/(273.15 + t))
 *
 * @param temperature °C      −2 to 40
 * @param salinity    PSS-78  0 to 42
 * @returns           µmol/kg at one atmosphere
 *
 * Holds      within 0.05 % of Benson & Krause 1984. Beyond the range: the formula, temperature held between −5 and 60 °C,
 *            salinity between 0 and 100.
 * Leaves out pressure. Some printings of the paper carry a further term in Ts² that does not belong (from memory).
 * Source     Garcia & Gordon 1992, Limnology and Oceanography 37, 1307, fit to Benson & Krause; as in python-oceans
 *            (github.com/pyoceans/python-oceans).
 * Checked    tests/core/water/oxygen-units.test.ts; tests/reference/garcia-gordon.json.
 */
export function garciaGordon(temperature: number, salinity: number): number {
  const t = held(ipts68(temperature), -5, 60);
  const s = held(salinity, 0, 100);
  const x = Math.log((298.15 - t) / (KELVIN + t));
  const fresh = 5.80871 + x * (3.20291 + x * (4.17887 + x * (5.10006 + x * (-9.86643e-2 + x * 3.80369))));
  const salt = -7.01577e-3 + x * (-7.70028e-3 + x * (-1.13864e-2 + x * -9.51519e-3));
  return Math.exp(fresh + s * (salt - 2.75915e-7 * s));
}

/**
 * Oxygen in balance with the air by Weiss, as older instruments have it.
 *
 *   ln C = −173.4292 + 249.6339·(100/T) + 143.3483·ln(T/100) − 21.8492·T/100 + S·(−0.033096 + 0.014259·T/100 − 0.0017·(T/100)²)
 *
 * @param temperature °C     −1 to 40
 * @param salinity    PSS-78 0 to 40
 * @returns           mL/L   at one atmosphere; times 1.42905 it is mg/L
 *
 * Holds      within 0.3 % of Benson & Krause 1984; never to be mixed with it in one percentage. Beyond the range: the formula,
 *            temperature held between −5 and 60 °C, salinity between 0 and 100.
 * Leaves out pressure.
 * Source     Weiss 1970, Deep-Sea Research 17, 721, as in python-seawater (github.com/pyoceans/python-seawater).
 * Checked    tests/core/water/oxygen-units.test.ts; tests/reference/weiss-oxygen.json.
 */
export function weissOxygen(temperature: number, salinity: number): number {
  const h = (held(temperature, -5, 60) + KELVIN) / 100;
  const s = held(salinity, 0, 100);
  const fresh = -173.4292 + 249.6339 / h + 143.3483 * Math.log(h) - 21.8492 * h;
  return Math.exp(fresh + s * (-0.033096 + h * (0.014259 - 0.0017 * h)));
}

export const garciaGordonLaw: Law<[temperature: number, salinity: number]> = law(
  'garcia-gordon',
  'µmol/kg',
  garciaGordon,
  [
    { name: 'temperature', unit: '°C', low: -2, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 42 },
  ],
);

export const weissOxygenLaw: Law<[temperature: number, salinity: number]> = law('weiss-oxygen', 'mL/L', weissOxygen, [
  { name: 'temperature', unit: '°C', low: -1, high: 40 },
  { name: 'salinity', unit: '', low: 0, high: 40 },
]);
