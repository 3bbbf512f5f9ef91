import type { MeterFigure } from '#core/incidents/incident';
import type { SensorQuantity } from '#core/facility/system';
import { SENSOR_QUANTITIES } from '#core/facility/system';
import { fromCustom } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import { z } from 'zod';

/** Field of a figure: `figure.oxygen.SENSOR`, or `figure.oxygen.-` where no sensor is described. */
const FIELD = /^figure\.([a-z-]+)\.([0-9a-f-]+)$/;
const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const NUMBER = /^[+-]?\d+([.,]\d+)?$/;

/**
 * The figures among the fields of a form, in the units of the facility file. A comma counts as a point.
 *
 * @param fields   as they were sent; what is no figure is passed over
 * @param units    custom in which temperatures were typed
 * @param report   told of each field that is no number
 */
export function readFigures(
  fields: Readonly<Record<string, unknown>>,
  units: Custom,
  report: (field: string, message: string) => void,
): MeterFigure[] {
  return Object.entries(fields).flatMap(([field, typed]): MeterFigure[] => {
    const [, quantity, sensor = '-'] = FIELD.exec(field) ?? [];
    if (quantity === undefined || typeof typed !== 'string' || typed.trim() === '') return [];
    if (!isQuantity(quantity) || !(sensor === '-' || UUID.test(sensor))) {
      report(field, 'is nothing that is measured here');
      return [];
    }
    const text = typed.trim().replace('−', '-');
    if (!NUMBER.test(text)) {
      report(field, 'must be a number, such as 7.9');
      return [];
    }
    const value = inFacilityUnit(quantity, units, Number(text.replace(',', '.')));
    if (value === null) {
      report(field, 'is beyond belief');
      return [];
    }
    return [{ quantity, value, ...(sensor === '-' ? {} : { sensor }) }];
  });
}

/** Null for what no meter can show: endless, or colder than cold can be. */
function inFacilityUnit(quantity: SensorQuantity, units: Custom, number: number): number | null {
  try {
    const value = fromCustom(quantity, units, number);
    return Number.isFinite(value) ? value : null;
  } catch {
    return null;
  }
}

/** Units in which the figures of a form were typed. */
export const customShape = z.enum(['metric', 'us']);

function isQuantity(word: string): word is SensorQuantity {
  return (SENSOR_QUANTITIES as readonly string[]).includes(word);
}
