import { vapourPressure } from '../water/vapour-pressure';
import type { Air } from './plant';

const HOUR = 3600;
const DAY = 86_400;

/** Room air by hour of the day; between the hours temperature and vapour pressure run straight. */
export interface RoomAir {
  /** °C at the beginning of each hour, 24 values. */
  temperature: Float64Array;
  /** Pa of water vapour at the beginning of each hour, 24 values. */
  vapour: Float64Array;
  /** True when no hour differs from another, so that a run needs no stops at the hours. */
  steady: boolean;
}

/**
 * Room air from temperatures and humidities by hour.
 * @param temperatureC °C, 24 values
 * @param humidityPct relative humidity, 0 to 100, 24 values
 */
export function roomAir(temperatureC: readonly number[], humidityPct: readonly number[]): RoomAir {
  const temperature = Float64Array.from(temperatureC);
  const vapour = Float64Array.from(temperatureC, (t, hour) => ((humidityPct[hour] ?? 0) / 100) * vapourPressure(t));
  const steady = temperature.every((t) => t === temperature[0]) && vapour.every((p) => p === vapour[0]);
  return { temperature, vapour, steady };
}

/** Air at rest, to be filled by `airAt`. */
export function stillAir(): Air {
  return { temperature: 0, vapour: 0, temperatureSlope: 0, vapourSlope: 0 };
}

/**
 * Air at a time of day.
 * @param secondsOfDay s since some local midnight; any number
 * @param hour the hour whose straight piece is meant (an instant on the hour belongs to two), 0 to 23
 * @param air receives the values
 */
export function airAt(room: RoomAir, secondsOfDay: number, hour: number, air: Air): void {
  const from = room.temperature[hour] as number;
  const vapour = room.vapour[hour] as number;
  if (room.steady) {
    air.temperature = from;
    air.vapour = vapour;
    return;
  }
  const next = (hour + 1) % 24;
  air.temperatureSlope = ((room.temperature[next] as number) - from) / HOUR;
  air.vapourSlope = ((room.vapour[next] as number) - vapour) / HOUR;
  // Wrapped to ±12 h, so that rounding at either end of a piece, or at midnight, cannot jump a day.
  const into = ((((secondsOfDay - hour * HOUR + 1.5 * DAY) % DAY) + DAY) % DAY) - 0.5 * DAY;
  air.temperature = from + air.temperatureSlope * into;
  air.vapour = vapour + air.vapourSlope * into;
}
