import { z } from 'zod';

/** Minutes at most before anybody hears of it again. */
const MOST_MIN = 120;

const site = z.string();
const minutes = z.coerce
  .number({ error: 'must be a number of minutes' })
  .int({ error: 'must be whole minutes' })
  .min(5, { error: 'must be 5 minutes at least' })
  .max(MOST_MIN, { error: `must be ${MOST_MIN} minutes at most: somebody shall hear of you by then` });
const note = z.string().trim().max(500, { error: 'must be 500 characters at most' }).optional();
const id = z.uuid({ error: 'must be an id' });
/** What a form leaves empty was not said. */
const optionalId = z.preprocess((said) => (said === '' ? undefined : said), id.optional());

/** The page of a site that says who is in alone. */
export const callOutsPlace = z.object({ site });

/** Goes in alone. */
export const beginCallOutRequest = callOutsPlace.extend({
  place: z
    .string()
    .trim()
    .min(1, { error: 'must say where: whoever looks for you has to find you' })
    .max(120, { error: 'must be 120 characters at most' }),
  minutes,
  /** Who may say besides them that they are back. */
  named: optionalId,
  /** The alarm they go for. */
  occurrence: optionalId,
});

/** Acknowledges an alarm and goes in alone for it, by one press. */
export const goAloneRequest = callOutsPlace.extend({ occurrence: id, minutes: minutes.default(30) });

/** One call-out. */
export const callOutPlace = callOutsPlace.extend({ callOut: id });

/** Takes more time. */
export const extendCallOutRequest = callOutPlace.extend({ minutes });

/** Says that they are back. */
export const endCallOutRequest = callOutPlace.extend({ note });
