import { fromSquareMetres, toSquareMetres } from '#core/units/area';
import { fromGramsPerCubicMetre, toGramsPerCubicMetre } from '#core/units/concentration';
import { fromSeconds, toSeconds } from '#core/units/duration';
import { fromCubicMetresPerSecond, toCubicMetresPerSecond } from '#core/units/flow';
import { fromFraction, toFraction } from '#core/units/fraction';
import { fromMetres, toMetres } from '#core/units/length';
import { fromKilograms, toKilograms } from '#core/units/mass';
import { fromWatts, toWatts } from '#core/units/power';
import { fromPascals, toPascals } from '#core/units/pressure';
import { fromCelsius, toCelsius } from '#core/units/temperature';
import { fromKelvinDifference, toKelvinDifference } from '#core/units/temperature-difference';
import { fromCubicMetres, toCubicMetres } from '#core/units/volume';

/** One unit of one quantity: both ways, and the span of the core's values that is believed. */
export interface Conversion {
  name: string;
  to(value: number): number;
  from(value: number): number;
  low: number;
  high: number;
}

function each<U extends string>(
  quantity: string,
  units: readonly U[],
  to: (value: number, unit: U) => number,
  from: (value: number, unit: U) => number,
  [low, high]: readonly [number, number],
): Conversion[] {
  return units.map((unit) => ({
    name: `${quantity} in ${unit}`,
    to: (value) => to(value, unit),
    from: (value) => from(value, unit),
    low,
    high,
  }));
}

/** Every unit of every quantity. */
export const CONVERSIONS: Conversion[] = [
  ...each('temperature', ['C', 'F'], toCelsius, fromCelsius, [-60, 150]),
  ...each('temperature difference', ['C', 'F'], toKelvinDifference, fromKelvinDifference, [-200, 200]),
  ...each('volume', ['m3', 'L', 'mL', 'galUS', 'galUK'], toCubicMetres, fromCubicMetres, [0, 1e6]),
  ...each('length', ['m', 'cm', 'mm', 'in', 'ft'], toMetres, fromMetres, [-12_000, 12_000]),
  ...each('area', ['m2', 'cm2', 'ft2', 'in2'], toSquareMetres, fromSquareMetres, [0, 1e6]),
  ...each(
    'flow',
    ['m3/s', 'm3/h', 'L/h', 'L/min', 'galUS/h', 'galUS/min', 'galUK/h'],
    toCubicMetresPerSecond,
    fromCubicMetresPerSecond,
    [0, 100],
  ),
  ...each('duration', ['s', 'min', 'h', 'd'], toSeconds, fromSeconds, [0, 4e9]),
  ...each('mass', ['kg', 'g', 'lb', 'oz'], toKilograms, fromKilograms, [0, 1e9]),
  ...each('power', ['W', 'kW', 'Btu/h'], toWatts, fromWatts, [0, 1e8]),
  ...each('concentration', ['g/m3', 'mg/L', 'ug/L'], toGramsPerCubicMetre, fromGramsPerCubicMetre, [0, 1e6]),
  ...each('pressure', ['Pa', 'hPa', 'kPa', 'atm', 'mmHg', 'inHg'], toPascals, fromPascals, [0, 1e8]),
  ...each('fraction', ['1', '%'], toFraction, fromFraction, [0, 1]),
];
