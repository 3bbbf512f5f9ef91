import 'server-only';
import type { SensorQuantity } from '#core/facility/system';
import type { NamedSensor } from '#data/readings/sensor-names';

/** Finds sensors of a site by what a layout calls them. */
export interface SensorFinder {
  /** What a sensor measures, by its id; undefined when there is none. */
  quantityOf: (id: string) => SensorQuantity | undefined;
  /** Id of the sensor that is meant by `SYSTEM/SENSOR` in keys; what is no such name stays as it is. */
  idOf: (name: string) => string;
}

/** @param sensors   the living sensors of a site */
export function sensorFinder(sensors: readonly NamedSensor[]): SensorFinder {
  const quantities = new Map(sensors.map(({ id, quantity }) => [id, quantity] as const));
  const ids = new Map<string, string>(sensors.map(({ id, system, key }) => [`${system}/${key}`, id] as const));
  return { quantityOf: (id) => quantities.get(id), idOf: (name) => ids.get(name) ?? name };
}

/**
 * What the sensors of a settled layout measure. That each of them is there was asked before it was settled.
 *
 * @param sensors   the living sensors of a site
 * @returns         by its id; throws for one that is not there, rather than judge its readings as those of another quantity
 */
export function measuredBy(sensors: readonly NamedSensor[]): (id: string) => SensorQuantity {
  const { quantityOf } = sensorFinder(sensors);
  return (id) => {
    const quantity = quantityOf(id);
    if (quantity === undefined) throw new Error(`The layout speaks of the sensor ${id}, which is not there`);
    return quantity;
  };
}
