import type { Origin } from './reading';

const MINUTE_MS = 60_000;

/**
 * How old the newest reading may be, by how it came: a device reads all day long, and a person looks once a day at least.
 * Common practice, no source. Where an alarm watches the silence of a sensor, the alarm counts, and not this.
 */
const FRESH_MS: Record<Origin, number> = {
  device: 60 * MINUTE_MS,
  file: 26 * 60 * MINUTE_MS,
  hand: 26 * 60 * MINUTE_MS,
};

/** Whether a reading is too old to say how things stand. @param ageMs ms since it was taken; below 0 for one from ahead */
export function isStale(origin: Origin, ageMs: number): boolean {
  return ageMs > FRESH_MS[origin];
}

/** How old the newest reading of a device may be, ms. */
export const DEVICE_FRESH_MS: number = FRESH_MS.device;
