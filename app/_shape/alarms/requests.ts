import { z } from 'zod';

/** One time that an alarm of a site was raised, by the parts of its address. */
export const alarmPlace = z.object({
  site: z.string(),
  occurrence: z.uuid({ error: 'must be the id of an alarm' }),
});

/** Longest note, characters. */
const NOTE = 2000;
const note = z
  .string()
  .trim()
  .max(NOTE, { error: `must be ${NOTE} characters at most` });

/** Alarms folded under one that are acknowledged with it at most. */
const MOST_FOLDED = 200;
/** `id:again id:again`: times that alarms were raised, with how often each had called anew. */
const shownTimes = z
  .string()
  .regex(/^[0-9a-f-]{36}:\d{1,6}( [0-9a-f-]{36}:\d{1,6})*$/, { error: 'must be ids of alarms' })
  .transform((text) =>
    text.split(' ').map((one) => {
      const [occurrence = '', again] = one.split(':');
      return { occurrence, again: Number(again) };
    }),
  )
  .pipe(z.array(z.object({ occurrence: z.uuid(), again: z.number() })).max(MOST_FOLDED));

/** Somebody says that they saw an alarm: the very time it was raised that their page showed. */
export const acknowledgeRequest = alarmPlace.extend({
  note: note.optional(),
  /** Those folded under it that they saw as well. */
  folded: shownTimes.optional(),
  /** How often it had called anew when their page was drawn: what called since is not meant. */
  again: z.coerce.number().int().min(0).optional(),
  /** The page it is said on. */
  page: z.enum(['list', 'alarm']).default('alarm'),
});

/** Somebody adds to what is known of an alarm. */
export const noteRequest = alarmPlace.extend({ note: note.min(1, { error: 'must not be blank' }) });

/** An alarm of a site. */
const alarmOf = z.object({ site: z.string(), alarm: z.uuid({ error: 'choose an alarm' }) });
const reason = note.min(1, { error: 'must not be blank: whoever comes next has to know why' });
const hours = z.coerce.number({ error: 'must be a number' }).gt(0, { error: 'must be above 0' });

/** Somebody shelves an alarm: for how long, and why. How long it may be depends on the alarm. */
export const shelveRequest = alarmOf.extend({ hours, reason });

/** Somebody takes an alarm out of service: who has it in hand, for how long at most, and why. */
export const outOfServiceRequest = alarmOf.extend({
  hours,
  unit: z.enum(['hours', 'days'], { error: 'choose hours or days' }).default('hours'),
  owner: z.uuid({ error: 'choose who has it in hand' }),
  reason,
});

/** Somebody ends what keeps an alarm from calling. */
export const endSuppressionRequest = z.object({
  site: z.string(),
  run: z.uuid(),
  note: note.optional(),
});

/** Somebody resets an alarm that is latched. */
export const resetRequest = alarmPlace.extend({ note: note.optional() });
