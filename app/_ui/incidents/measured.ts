import type { SensorQuantity } from '#core/facility/system';
import { readingSaid } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import quantities from './quantities.json';

/** What a quantity is called. */
export function quantityName(quantity: SensorQuantity): string {
  return quantities[quantity];
}

/** A figure with its name and unit: "Oxygen 3.10 mg/L". @param value in the facility file's unit of the quantity */
export function measured(units: Custom, { quantity, value }: { quantity: SensorQuantity; value: number }): string {
  return `${quantityName(quantity)} ${readingSaid(quantity, units, value)}`;
}
