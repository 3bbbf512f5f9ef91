import type { SensorQuantity, System } from '../facility/system';
import { isDerived } from './definition';

/** What an alarm can be held to: a sensor, or a series that is worked out of sensors. */
export interface Series {
  /** `system/key`. */
  id: string;
  /** What it measures; undefined for one that is worked out, where the series says so itself. */
  quantity?: SensorQuantity;
  /** Whether its readings come by themselves. */
  isCarried: boolean;
}

/** Finds a series of a system by its key. @returns null when there is none */
export function seriesOf(system: Pick<System, 'key' | 'sensors'>, key: string): Series | null {
  const id = `${system.key}/${key}`;
  if (isDerived(key)) return { id, isCarried: true };
  const sensor = system.sensors.find((one) => one.key === key);
  return sensor ? { id, quantity: sensor.quantity, isCarried: sensor.gateway !== undefined } : null;
}
