import type { SensorQuantity } from '#core/facility/system';
import { readingSaid } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import { QUANTITY_WORDS } from '../readings/words';
import { capital } from '../words/capital';

/** What a quantity is called, as it begins a line. */
export function quantityName(quantity: SensorQuantity): string {
  return capital(QUANTITY_WORDS[quantity]);
}

/** A figure with its name and unit: "Oxygen 3.10 mg/L". @param value in the facility file's unit of the quantity */
export function measured(units: Custom, { quantity, value }: { quantity: SensorQuantity; value: number }): string {
  return `${quantityName(quantity)} ${readingSaid(quantity, units, value)}`;
}
