import { steady } from './build-supply';
import type { PowerPhase } from './device';
import type { AlarmWatch } from './machine';

/** An alarm that watches nothing. */
export const BLANK: Omit<AlarmWatch, 'key' | 'delayS'> = {
  watches: [],
  device: -1,
  power: null,
  flow: false,
  runs: null,
  state: false,
  followed: null,
  path: [],
  heard: [],
  silent: null,
};

/** The same alarm with more that must live for what it watches to be heard of. */
export function heardBy(alarm: AlarmWatch, ways: PowerPhase[][]): AlarmWatch {
  return { ...alarm, path: [...alarm.path, ...ways], heard: [...alarm.heard, ...ways] };
}

/** An alarm that is never raised. */
export function unheard(alarm: AlarmWatch): AlarmWatch {
  return heardBy(alarm, [steady(false)]);
}
