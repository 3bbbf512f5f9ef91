import { z } from 'zod';
import { DAYS } from '#core/facility/site';
import { systemPlace } from '../reviews/case-place';
import { beginStates } from './requests';

/** Whether a state that looks as if it had begun has. */
export const answerRequest = systemPlace
  .extend({ asked: z.uuid(), entry: z.uuid(), so: z.enum(['yes', 'no'], { error: 'choose one' }) })
  .transform(({ so, ...rest }) => ({ ...rest, isSo: so === 'yes' }));

/** A state is to begin at certain times of the week. Days come as `day:mon` and so on. */
export const timedRequest = systemPlace
  .extend({
    entry: z.uuid(),
    state: z.enum(beginStates),
    at: z.string({ error: 'must be a time' }).regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'must be a time, as 07:30' }),
    lastsMin: z.coerce
      .number({ error: 'must be a number' })
      .positive({ error: 'must be above 0' })
      .max(1440, { error: 'must be a day at most' }),
  })
  .loose()
  .transform(({ site, system, entry, state, at, lastsMin, ...rest }) => ({
    ...{ site, system, entry, state, at, lastsMin },
    days: DAYS.filter((day) => rest[`day:${day}`] !== undefined),
  }))
  .refine(({ days }) => days.length > 0, { path: ['days'], error: 'must name a day at least' });

/** It is begun by the clock no more. */
export const endTimedRequest = systemPlace.extend({ timed: z.uuid() });

export type AnswerRequest = z.output<typeof answerRequest>;
export type TimedRequest = z.output<typeof timedRequest>;
export type EndTimedRequest = z.output<typeof endTimedRequest>;
