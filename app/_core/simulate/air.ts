import { vapourPressure } from '../water/vapour-pressure';
import type { Air } from './plant';

const HOUR = 3600;
const DAY = 86_400;

/** What the hours of the day bring: room air, whose temperature and vapour pressure run straight between them, and meals. */
export interface RoomAir {
  /** °C at the beginning of each hour, 24 values. */
  temperature: Float64Array;
  /** Pa of water vapour at the beginning of each hour, 24 values. */
  vapour: Float64Array;
  /** Oxygen use and excretion in each hour as multiples of their daily means, 24 values: what meals at set hours make of them. */
  breath: Float64Array;
  excretion: Float64Array;
  /** True when no hour differs from another, so that a run needs no stops at the hours. */
  steady: boolean;
}

/** Oxygen use and excretion by hour of the day as multiples of their daily means, 24 values each. */
export interface Meals {
  breath: Float64Array;
  excretion: Float64Array;
}

/** The same at every hour. */
export const EVENLY: Readonly<Meals> = {
  breath: new Float64Array(24).fill(1),
  excretion: new Float64Array(24).fill(1),
};

/**
 * Room air from temperatures and humidities by hour.
 * @param temperatureC °C, 24 values
 * @param humidityPct relative humidity, 0 to 100, 24 values
 * @param meals what meals at set hours make of breath and excretion
 * @param shiftK K that the room is off those temperatures; its moisture stays what it was, as far as the air can hold it
 */
export function roomAir(
  temperatureC: readonly number[],
  humidityPct: readonly number[],
  meals: Meals = EVENLY,
  shiftK = 0,
): RoomAir {
  const temperature = Float64Array.from(temperatureC, (t) => t + shiftK);
  const vapour = Float64Array.from(temperatureC, (t, hour) =>
    Math.min(((humidityPct[hour] ?? 0) / 100) * vapourPressure(t), vapourPressure(t + shiftK)),
  );
  const { breath, excretion } = meals;
  const steady = [temperature, vapour, breath, excretion].every((hours) => hours.every((one) => one === hours[0]));
  return { temperature, vapour, breath, excretion, steady };
}

/** Air at rest, to be filled by `airAt`. */
export function stillAir(): Air {
  return { temperature: 0, vapour: 0, temperatureSlope: 0, vapourSlope: 0, breath: 1, excretion: 1 };
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
  air.breath = room.breath[hour] as number;
  air.excretion = room.excretion[hour] as number;
  const next = (hour + 1) % 24;
  air.temperatureSlope = ((room.temperature[next] as number) - from) / HOUR;
  air.vapourSlope = ((room.vapour[next] as number) - vapour) / HOUR;
  // Wrapped to ±12 h, so that rounding at either end of a piece, or at midnight, cannot jump a day.
  const into = ((((secondsOfDay - hour * HOUR + 1.5 * DAY) % DAY) + DAY) % DAY) - 0.5 * DAY;
  air.temperature = from + air.temperatureSlope * into;
  air.vapour = vapour + air.vapourSlope * into;
}
