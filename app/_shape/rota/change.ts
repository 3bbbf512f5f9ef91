import { CHANGE_EVENTS } from '#core/rota/change';
import { z } from 'zod';
import { keyText } from '../facility/words';
import { sitePlace } from '../reviews/case-place';

/** A note as a form sends it. */
const why = z
  .string()
  .max(2000)
  .transform((text) => text.replaceAll('\r\n', '\n').trim())
  .optional();

/** A day and a time on the clocks of the site, as a field for both sends them. */
const localMoment = z
  .string({ error: 'must be a day and a time' })
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/, { error: 'must be a day and a time' })
  .transform((text) => ({ date: text.slice(0, 10), time: text.slice(11, 16) }))
  .refine(({ date, time }) => z.iso.date().safeParse(date).success && /^(?:[01]\d|2[0-3]):[0-5]\d$/.test(time), {
    error: 'must be a day of the calendar and a time',
  });

/** Somebody's turn: the day it begins, the shift, the person. No key has a slash. */
const turn = z
  .string({ error: 'choose a turn' })
  .max(200)
  .regex(/^\d{4}-\d\d-\d\d\/[a-z0-9-]+\/[a-z0-9-]+$/, { error: 'choose a turn' })
  .transform((text) => {
    const [date = '', shift = '', person = ''] = text.split('/');
    return { date, shift, person };
  });

/** Leave is asked for. `entry` was drawn when the form was shown: what is sent twice is asked for once. */
export const leaveRequest = sitePlace.extend({
  entry: z.uuid(),
  person: keyText('Whose leave it is.'),
  from: localMoment,
  to: localMoment,
  why,
});

/** One turn, or a part of it, is to be taken by somebody else, perhaps for one of theirs. */
export const swapRequest = sitePlace
  .extend({
    entry: z.uuid(),
    turn,
    takes: keyText('Who takes it.'),
    from: localMoment.optional(),
    to: localMoment.optional(),
    back: turn.optional(),
    why,
  })
  .superRefine(({ from, to }, context) => {
    const message = 'must be given with the other end of the part, or neither';
    if ((from === undefined) !== (to === undefined))
      context.addIssue({ code: 'custom', path: [from === undefined ? 'from' : 'to'], message });
  });

/** What is to come of a change. `shownMin`: minutes with nobody that the page said it would leave. */
export const changeAnswer = sitePlace.extend({
  change: z.uuid(),
  comes: z.enum(CHANGE_EVENTS),
  shownMin: z.coerce.number().min(0).optional(),
  why,
});

export type LeaveRequest = z.output<typeof leaveRequest>;
export type SwapRequest = z.output<typeof swapRequest>;
export type ChangeAnswer = z.output<typeof changeAnswer>;
