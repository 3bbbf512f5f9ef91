import type { Calibration } from '#core/calibration/found';
import type { Target } from '#core/calibration/target';
import type { Custom } from '#core/units/shown';
import { figure } from '../units/figures';

/** What each figure is called, and what it is found from. */
export const FITS: Record<Calibration, { title: string; note: string; read: 'temperature' | 'oxygen' | 'litres' }> = {
  'heat-loss': {
    title: 'Heat loss',
    note: 'From nights in which nothing heated the water: how fast it cooled.',
    read: 'temperature',
  },
  evaporation: {
    title: 'Evaporation',
    note: 'From the water that the top-off used.',
    read: 'litres',
  },
  'oxygen-transfer': {
    title: 'Oxygen exchange',
    note: 'From how fast oxygen came to a new level after lamps went out or something ran again.',
    read: 'oxygen',
  },
  'oxygen-use': {
    title: 'Use of oxygen',
    note: 'From how fast oxygen fell while something stood, and the level it came to in the dark.',
    read: 'oxygen',
  },
};

/** What the figure of the description is called. */
export const FIELD_WORDS: Record<Target['field'], string> = {
  lossWPerK: 'heat loss through walls and base',
  evaporationActivity: 'evaporation, part of full activity',
  gasTransferLPerH: 'oxygen exchange, as water brought to saturation',
  oxygenMgPerKgH: 'oxygen used',
};

/** A number with its unit as a person of this custom reads it. */
export function amountSaid(units: Custom, unit: string, value: number): string {
  if (unit === 'L/h') return figure(units, 'flow', value);
  if (unit === 'L/day') return `${figure(units, 'volume', value)} a day`;
  return `${Number(value.toPrecision(3))}\u00a0${unit}`.trim();
}

/** The unit of a figure of the description. */
export const FIELD_UNITS: Record<Target['field'], string> = {
  lossWPerK: 'W/K',
  evaporationActivity: '',
  gasTransferLPerH: 'L/h',
  oxygenMgPerKgH: 'mg/kg·h',
};
