import { z } from 'zod';
import { SPAN_NAMES } from '#core/readings/spans';
import { readDerivedKey } from '#core/readings/derived/series';
import { isoDate, keyText } from '../facility/words';
import { systemPlace } from '../reviews/case-place';

const derivedKeyText = z
  .string()
  .max(200)
  .refine((key) => readDerivedKey(key) !== null, { error: 'is no key of a sensor or of a derived series' });

/** A sensor or a derived series of a system, by their keys. */
const sensorPlace = systemPlace.extend({
  sensor: z.union([keyText('Key of the sensor.'), derivedKeyText]),
});

/** Readings of a sensor: how long a span, and the last day of it; today when left out. */
export const sensorSpan = sensorPlace.extend({
  span: z.enum(SPAN_NAMES, { error: 'must be day, week, month, sixty-days or year' }).default('day'),
  until: isoDate('Last day of the span, at the site.').optional(),
});
