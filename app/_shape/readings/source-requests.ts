import { z } from 'zod';
import { sitePlace } from '../reviews/case-place';

/** Text of one line as a form sends it. */
export const line = (most: number) =>
  z
    .string({ error: 'must be given' })
    .trim()
    .min(1, { error: 'must be given' })
    .max(most, { error: `must have at most ${most} characters` })
    .regex(/^[^\p{Cc}\p{Cs}]*$/u, { error: 'must be one line of text' });

/** A source of readings that is to be made; `gateway` is the key of the gateway it speaks for, if it is described. */
export const newSource = sitePlace.extend({ name: line(120), gateway: z.string().max(64).optional() });

/** One source, by its id. */
export const sourcePlace = sitePlace.extend({ source: z.uuid() });

/** Says which sensor a name is of: `sensor` is its id. */
export const namedSensor = sitePlace.extend({ name: line(200), sensor: z.uuid({ error: 'choose a sensor' }) });

/** A name that is to be of no sensor any more. */
export const sensorName = sitePlace.extend({ name: line(200) });
