import { describe, expect, test } from 'vitest';
import { toSquareMetres } from '#core/units/area';
import { toGramsPerCubicMetre } from '#core/units/concentration';
import { toSeconds } from '#core/units/duration';
import { toCubicMetresPerSecond } from '#core/units/flow';
import { toFraction } from '#core/units/fraction';
import { toMetres } from '#core/units/length';
import { toKilograms } from '#core/units/mass';
import { toWatts } from '#core/units/power';
import { toPascals } from '#core/units/pressure';
import { fromCelsius, toCelsius } from '#core/units/temperature';
import { toKelvinDifference } from '#core/units/temperature-difference';
import { fromCubicMetres, toCubicMetres } from '#core/units/volume';

// The factors are definitions, so they are compared exactly, or to the last bit of one multiplication.

test('a US gallon is 3.785411784 L and a UK gallon 4.54609 L', () => {
  expect(toCubicMetres(1, 'galUS')).toBe(0.003785411784);
  expect(toCubicMetres(1, 'galUK')).toBe(0.00454609);
  expect(fromCubicMetres(toCubicMetres(100, 'galUK'), 'galUS')).toBeCloseTo(120.095, 3);
});

test('a litre is a thousandth of a cubic metre', () => {
  expect(toCubicMetres(432, 'L')).toBeCloseTo(0.432, 15);
  expect(toCubicMetres(250, 'mL')).toBeCloseTo(0.00025, 15);
});

test('an inch is 25.4 mm, a foot twelve of them', () => {
  expect(toMetres(1, 'in')).toBe(0.0254);
  expect(toMetres(1, 'ft')).toBe(0.3048);
  expect(toMetres(-25, 'mm')).toBe(-0.025);
  expect(toSquareMetres(1, 'ft2')).toBe(0.09290304);
  expect(toSquareMetres(144, 'in2')).toBeCloseTo(0.09290304, 15);
});

test('a pound is 0.45359237 kg, an ounce a sixteenth of it', () => {
  expect(toKilograms(1, 'lb')).toBe(0.45359237);
  expect(toKilograms(16, 'oz')).toBeCloseTo(0.45359237, 15);
});

test('an hour is 3600 s and a day 24 hours', () => {
  expect(toSeconds(1, 'h')).toBe(3600);
  expect(toSeconds(1, 'd')).toBe(toSeconds(24, 'h'));
  expect(toSeconds(30, 'min')).toBe(1800);
});

test('3600 L/h, 60 L/min and 3.6 m³/h are a litre a second', () => {
  expect(toCubicMetresPerSecond(3600, 'L/h')).toBeCloseTo(1e-3, 15);
  expect(toCubicMetresPerSecond(60, 'L/min')).toBeCloseTo(1e-3, 15);
  expect(toCubicMetresPerSecond(3.6, 'm3/h')).toBeCloseTo(1e-3, 15);
  expect(toCubicMetresPerSecond(60, 'galUS/h')).toBeCloseTo(toCubicMetresPerSecond(1, 'galUS/min'), 15);
});

test('a milligram in a litre is a gram in a cubic metre', () => {
  expect(toGramsPerCubicMetre(6.5, 'mg/L')).toBe(6.5);
  expect(toGramsPerCubicMetre(20, 'ug/L')).toBeCloseTo(0.02, 15);
});

test('an atmosphere is 101 325 Pa, 760 mmHg and 29.92 inHg', () => {
  expect(toPascals(1, 'atm')).toBe(101_325);
  expect(toPascals(760, 'mmHg')).toBeCloseTo(101_325, 1);
  expect(toPascals(29.92, 'inHg')).toBeCloseTo(101_321, 0);
});

test('a kilowatt is 3412 Btu an hour', () => {
  expect(toWatts(3412.14, 'Btu/h')).toBeCloseTo(1000, 2);
  expect(toWatts(1, 'kW')).toBe(1000);
});

test('50 % is a half', () => {
  expect(toFraction(50, '%')).toBe(0.5);
});

describe('degrees Fahrenheit', () => {
  test('freeze at 32, boil at 212, and meet Celsius at −40', () => {
    expect(toCelsius(32, 'F')).toBe(0);
    expect(toCelsius(212, 'F')).toBe(100);
    expect(toCelsius(-40, 'F')).toBe(-40);
    expect(fromCelsius(25, 'F')).toBe(77);
  });

  test('as a dead band have no 32 in them: 77.5 to 78.5 °F is 0.556 K', () => {
    expect(toKelvinDifference(1, 'F')).toBe(5 / 9);
    expect(toCelsius(78.5, 'F') - toCelsius(77.5, 'F')).toBeCloseTo(toKelvinDifference(1, 'F'), 12);
  });
});
