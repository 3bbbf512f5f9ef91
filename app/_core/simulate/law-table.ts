import { gasTransferFactor } from '../water/gas-transfer';
import { oxygenSaturation, oxygenSaturationLogBySalinity } from '../water/oxygen-saturation';
import { respirationFactor } from '../water/respiration';
import { vapourPressure } from '../water/vapour-pressure';
import type { Laws } from './plant';

/**
 * The laws of temperature that every rate asks for, as cubics over short pieces: exponentials are most of what a rate costs.
 * Values and slopes at the ends of a piece are those of the law; between them a cubic is off by less than 1e-9 of the value.
 * Outside the pieces the laws themselves are asked.
 */
const COLDEST = -4;
const HOTTEST = 44;
/** Length of a piece, K. */
const PIECE = 0.25;
/** K to either side by which the slope of a law is taken. */
const BESIDE = 1e-3;

/** Salinities for which saturation is tabled; between them it follows the salinity exactly. */
const SALT = [0, 35] as const;

/** How saturation changes with pressure is a square of it, so three pressures say it for all. */
const THIN = 0.5;
const THICK = 1.5;
/** Thinnest air that the law of saturation tells from a thinner one, atm. */
const THINNEST = 0.4;

const COLUMNS: readonly ((t: number) => number)[] = [
  vapourPressure,
  gasTransferFactor,
  respirationFactor,
  (t) => oxygenSaturation(t, SALT[0], 1),
  (t) => oxygenSaturation(t, SALT[1], 1),
  (t) => oxygenSaturationLogBySalinity(t, SALT[1]),
  (t) => relative(t, THIN),
  (t) => relative(t, THICK),
];
const WIDTH = 4 * COLUMNS.length;

function relative(t: number, pressure: number): number {
  return oxygenSaturation(t, 0, pressure) / oxygenSaturation(t, 0, 1);
}

const TABLE = tabled();

function tabled(): Float64Array {
  const pieces = (HOTTEST - COLDEST) / PIECE;
  const table = new Float64Array(WIDTH * pieces);
  for (let i = 0; i < pieces; i++) {
    const t = COLDEST + i * PIECE;
    for (const [c, law] of COLUMNS.entries()) table.set(cubic(law, t), WIDTH * i + 4 * c);
  }
  return table;
}

/** Coefficients in the part of the piece, 0 to 1, lowest power first. */
function cubic(law: (t: number) => number, t: number): number[] {
  const slope = (at: number) => (PIECE * (law(at + BESIDE) - law(at - BESIDE))) / (2 * BESIDE);
  const [a, b, s, e] = [law(t), law(t + PIECE), slope(t), slope(t + PIECE)];
  return [a, s, 3 * (b - a) - 2 * s - e, 2 * (a - b) + s + e];
}

/**
 * The laws of a node at a temperature, °C, a practical salinity and a pressure, atm: as `vapourPressure` (Pa),
 * `gasTransferFactor`, `respirationFactor` and `oxygenSaturation` (g/m³) have them, to 1e-9 of their values.
 * @param laws receives them at k
 */
export function lawsOf(temperature: number, salinity: number, pressure: number, k: number, laws: Laws): void {
  const isTabled = temperature >= COLDEST && temperature < HOTTEST && salinity >= 0 && salinity <= 100;
  if (!isTabled || laws.exact) {
    laws.vapour[k] = vapourPressure(temperature);
    laws.gas[k] = gasTransferFactor(temperature);
    laws.breath[k] = respirationFactor(temperature);
    laws.saturation[k] = oxygenSaturation(temperature, salinity, pressure);
    return;
  }
  const place = (temperature - COLDEST) / PIECE;
  const piece = Math.floor(place);
  const z = place - piece;
  const at = WIDTH * piece;
  laws.vapour[k] = column(at, z);
  laws.gas[k] = column(at + 4, z);
  laws.breath[k] = column(at + 8, z);
  const sea = salinity > SALT[1] / 2;
  const beside = salinity - (sea ? SALT[1] : SALT[0]);
  const atOne = column(sea ? at + 16 : at + 12, z) * exponential(beside * column(at + 20, z));
  laws.saturation[k] = pressure === 1 ? atOne : atOne * byPressure(pressure, column(at + 24, z), column(at + 28, z));
}

function column(at: number, z: number): number {
  return (
    (TABLE[at] as number) +
    z * ((TABLE[at + 1] as number) + z * ((TABLE[at + 2] as number) + z * (TABLE[at + 3] as number)))
  );
}

/** The parabola through a thin, the usual (1) and a thick air. */
function byPressure(pressure: number, thin: number, thick: number): number {
  const p = (pressure > THICK ? THICK : Math.max(pressure, THINNEST)) - 1;
  return 1 + p * (thick - thin + 2 * p * (thick + thin - 2));
}

/** e to a power that is small for all water near fresh or sea: eight terms of its series hold to 1e-12 below 0.1. */
function exponential(y: number): number {
  if (y > 0.1 || y < -0.1) return Math.exp(y);
  return 1 + y * (1 + y * (1 / 2 + y * (1 / 6 + y * (1 / 24 + y * (1 / 120 + y * (1 / 720 + y * (1 / 5040)))))));
}
