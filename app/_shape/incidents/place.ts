import { z } from 'zod';
import { freeText, keyText } from '../facility/words';
import { sitePlace } from '../reviews/case-place';

/** A field that was left empty counts as not given. */
export function optional<T extends z.ZodType>(shape: T) {
  return z.preprocess((given) => (given === '' ? undefined : given), shape.optional());
}

/** Text as a form sends it: with the line ends of the wire, and perhaps a character that no database takes. */
export function written(about: string) {
  return freeText(about).transform((text) => text.replaceAll('\r\n', '\n').replaceAll('\0', '').trim());
}

/** An incident of a site, by its number. */
export const incidentPlace = sitePlace.extend({
  number: z.coerce.number({ error: 'is no number of an incident' }).int().min(1).max(2_147_483_647),
});

/** A moment as a clock of the site shows it. */
export const localMinute = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?$/, { error: 'must be a day and a time' })
  .refine((text) => !Number.isNaN(Date.parse(`${text}Z`)), { error: 'must be a day and a time that exist' });

/** What an incident is opened from: by hand, from a system's page, or from an alarm. */
export const newIncidentPlace = sitePlace.extend({
  alarm: optional(z.uuid()),
  system: optional(keyText('Key of the system.')),
});

/** An incident as it is opened. `system` is empty for the whole site. */
export const openRequest = sitePlace.extend({
  /** Drawn when the form was shown: what is sent twice is opened once. */
  entry: z.uuid(),
  title: z
    .string({ error: 'must say what happened, in a few words' })
    .trim()
    .min(1, { error: 'must say what happened, in a few words' })
    .max(200),
  alarm: optional(z.uuid()),
  system: optional(keyText('Key of the system.')),
  /** When the fault began, as far as known: at the earliest, and at the latest. */
  began: optional(localMinute),
  latest: optional(localMinute),
});

export type OpenRequest = z.output<typeof openRequest>;
