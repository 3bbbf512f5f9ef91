import { z } from 'zod';
import { keyText } from '../facility/words';
import { sitePlace } from '../reviews/case-place';

const LONGEST = 2000;

/** A field that was left empty counts as not given. */
export function optional<T extends z.ZodType>(shape: T) {
  return z.preprocess((given) => (given === '' ? undefined : given), shape.optional());
}

/** Text as a form sends it: with the line ends of the wire, and perhaps a character that no database takes. */
export const written = z
  .string({ error: 'is missing' })
  .max(LONGEST, { error: `may be ${LONGEST} characters long at most` })
  .transform((text) => text.replaceAll('\r\n', '\n').replaceAll('\0', '').trim())
  .refine((text) => text !== '', { error: 'must not be blank' });

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
  title: written.pipe(z.string().max(200, { error: 'may be 200 characters long at most' })),
  alarm: optional(z.uuid()),
  system: optional(keyText('Key of the system.')),
  /** When the fault began, as far as known: at the earliest, and at the latest. */
  began: optional(localMinute),
  latest: optional(localMinute),
});

/** What every entry comes with: where it goes, its id, when it happened, and in whose place it stands. */
export const entryMeta = {
  ...incidentPlace.shape,
  entry: z.uuid(),
  /** Now when left out. */
  at: optional(localMinute),
  supersedes: optional(z.uuid()),
  reason: optional(written),
};

export type IncidentPlace = z.output<typeof incidentPlace>;
export type OpenRequest = z.output<typeof openRequest>;

/** The timeline of an incident: from how many hours before it began. */
export const timelinePlace = incidentPlace.extend({
  hours: optional(z.coerce.number().min(0).max(168)),
});

export type TimelinePlace = z.output<typeof timelinePlace>;

/** The report of an incident: with names, or with roles alone. */
export const reportPlace = timelinePlace.extend({ names: optional(z.enum(['yes', 'no'])) });
