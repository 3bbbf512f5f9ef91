import { z } from 'zod';
import { SPAN_NAMES } from '#core/readings/spans';
import { isoDate, keyText } from '../facility/words';
import { systemPlace } from '../reviews/case-place';

/** A sensor of a system, by their keys. */
const sensorPlace = systemPlace.extend({ sensor: keyText('Key of the sensor.') });

/** Readings of a sensor: how long a span, and the last day of it; today when left out. */
export const sensorSpan = sensorPlace.extend({
  span: z.enum(SPAN_NAMES, { error: 'must be day, week, month or sixty-days' }).default('day'),
  until: isoDate('Last day of the span, at the site.').optional(),
});
