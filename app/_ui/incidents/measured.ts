import type { SensorQuantity } from '#core/facility/system';
import type { Custom } from '#core/units/shown';
import { inUnits, symbolOf } from '../units/figures';
import { written } from '../plot/written';
import quantities from './quantities.json';

/** Quantities that people read in one of two customs. */
const BY_CUSTOM = { temperature: 'temperature', level: 'length', flow: 'flow' } as const;

/** What a quantity is called. */
export function quantityName(quantity: SensorQuantity): string {
  return quantities[quantity].title;
}

/** How its unit is written for a person; empty where it has none. */
export function unitOf(units: Custom, quantity: SensorQuantity): string {
  const kind = kindOf(quantity);
  return kind ? symbolOf(units, kind) : quantities[quantity].unit;
}

/** A figure in the person's unit. @param value in the facility file's unit of the quantity */
export function inPersonsUnit(units: Custom, quantity: SensorQuantity, value: number): number {
  const kind = kindOf(quantity);
  return kind ? inUnits(units, kind, value) : value;
}

/** Decimals that a figure of this quantity is worth. */
export function decimalsOf(quantity: SensorQuantity): number {
  return quantities[quantity].decimals;
}

/** A figure with its name and unit: "Oxygen 3.10 mg/L". @param value in the facility file's unit of the quantity */
export function measured(units: Custom, { quantity, value }: { quantity: SensorQuantity; value: number }): string {
  const number = written(inPersonsUnit(units, quantity, value), decimalsOf(quantity));
  const unit = unitOf(units, quantity);
  return `${quantityName(quantity)} ${number}${unit === '' ? '' : `\u00a0${unit}`}`;
}

function kindOf(quantity: SensorQuantity) {
  return quantity in BY_CUSTOM ? BY_CUSTOM[quantity as keyof typeof BY_CUSTOM] : undefined;
}
