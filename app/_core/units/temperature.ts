import { believed } from './scale';

export type TemperatureUnit = 'C' | 'F';

const TEMPERATURE = { quantity: 'temperature', low: -60, high: 150 };

/**
 * @param value a temperature in `unit`, −60 to 150 °C (−76 to 302 °F)
 * @returns     °C
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toCelsius(value: number, unit: TemperatureUnit): number {
  return believed(TEMPERATURE, unit === 'F' ? ((value - 32) * 5) / 9 : value, `${value} °${unit}`);
}

/**
 * @param celsius °C, −60 to 150
 * @returns       the same temperature in `unit`
 * @throws        RangeError when it is not a number or beyond belief
 */
export function fromCelsius(celsius: number, unit: TemperatureUnit): number {
  const value = believed(TEMPERATURE, celsius, `${celsius} °C`);
  return unit === 'F' ? (value * 9) / 5 + 32 : value;
}
