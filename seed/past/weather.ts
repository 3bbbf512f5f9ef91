import type { ResolvedRoom } from '#core/equipment/resolved';
import type { Random } from './random';

/** How much of yesterday's weather is left today, and how far a day strays, K. Common practice, no source. */
const PERSISTS = 0.75;
const STRAYS = 1.6;
/** The last days are usual ones, and so is the one after them: whatever the hour, no alarm is up for their weather. */
const USUAL_DAYS = 3;

/**
 * How much warmer or colder than usual each day is out of doors, K, around 0.
 *
 * @param days   how many
 */
export function weather(days: number, random: Random): number[] {
  const list: number[] = [];
  let today = random.normal() * STRAYS;
  for (let i = 0; i < days; i++) {
    list.push(today);
    today = PERSISTS * today + Math.sqrt(1 - PERSISTS ** 2) * STRAYS * random.normal();
  }
  return list.map((stray, i) => (i < days - USUAL_DAYS ? stray : stray / 4));
}

/** Part of the weather that comes through to a room: little where it is heated. Common practice, no source. */
function comesThrough(room: ResolvedRoom): number {
  const swing = Math.max(...room.temperatureC) - Math.min(...room.temperatureC);
  const mean = room.temperatureC.reduce((sum, t) => sum + t, 0) / room.temperatureC.length;
  return mean < 18 || swing > 5 ? 0.8 : 0.35;
}

/**
 * The air of a room on one day.
 *
 * @param today      K by which the day is warmer than usual out of doors; `tomorrow` likewise, towards which it goes
 */
export function roomOn(room: ResolvedRoom, today: number, tomorrow: number): ResolvedRoom {
  const share = comesThrough(room);
  const shift = (hour: number) => share * (today + ((tomorrow - today) * hour) / room.temperatureC.length);
  return {
    temperatureC: room.temperatureC.map((t, hour) => t + shift(hour)),
    // Colder air out of doors is drier within.
    humidityPct: room.humidityPct.map((pct, hour) => Math.min(95, Math.max(30, pct + 1.5 * shift(hour)))),
  };
}
