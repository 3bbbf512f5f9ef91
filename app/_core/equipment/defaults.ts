import type { EquipmentType, StateName } from '../facility/system';
import table from './defaults.json';
import type { Fallback } from './take';

/** Every default figure, by name. */
export const DEFAULTS = table;

/** Part of a type's power that becomes heat in the water. */
export function heatToWaterOf(type: EquipmentType): Fallback {
  return table.heatToWater[type];
}

/** Minutes of work to put a type right. */
export function repairMinOf(type: EquipmentType): Fallback {
  return table.repairMin[type];
}

/** Minutes a state is meant to last. */
export function stateMinOf(state: Exclude<StateName, 'normal'>): Fallback {
  return table.stateMin[state];
}

/** The same default, all three numbers times a factor, in another unit. */
export function scaled(fallback: Fallback, factor: number, unit: string): Fallback {
  return {
    ...fallback,
    value: fallback.value * factor,
    low: fallback.low * factor,
    high: fallback.high * factor,
    unit,
  };
}
