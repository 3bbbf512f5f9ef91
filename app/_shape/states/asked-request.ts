import { z } from 'zod';
import { firstDayOf } from '#core/rounds/first-day';
import { scheduleShape } from '../facility/round-sheet';
import { systemPlace } from '../reviews/case-place';
import { beginStates } from './requests';

/** Whether a state that looks as if it had begun has. */
export const answerRequest = systemPlace
  .extend({ asked: z.uuid(), entry: z.uuid(), so: z.enum(['yes', 'no'], { error: 'choose one' }) })
  .transform(({ so, ...rest }) => ({ ...rest, isSo: so === 'yes' }));

const ruled = z.looseObject({ rule: z.string().max(200), from: z.iso.date() });

/** A schedule as its editor sends it, in one field. Whoever names a day means "from then on": the rule begins on its own first. */
const scheduleText = z
  .string({ error: 'must be a schedule' })
  .max(20_000)
  .transform((text, context) => {
    try {
      const given: unknown = JSON.parse(text);
      const read = ruled.safeParse(given);
      if (!read.success) return given;
      const { rule, from } = read.data;
      return { ...read.data, from: firstDayOf(rule, from) ?? from };
    } catch {
      context.addIssue({ code: 'custom', message: 'must be a schedule' });
      return z.NEVER;
    }
  })
  .pipe(scheduleShape);

/** A state is to begin by a schedule. */
export const timedRequest = systemPlace.extend({
  entry: z.uuid(),
  state: z.enum(beginStates),
  schedule: scheduleText,
  lastsMin: z.coerce
    .number({ error: 'must be a number' })
    .positive({ error: 'must be above 0' })
    .max(1440, { error: 'must be a day at most' }),
});

/** It is begun by the clock no more. */
export const endTimedRequest = systemPlace.extend({ timed: z.uuid() });

export type AnswerRequest = z.output<typeof answerRequest>;
export type TimedRequest = z.output<typeof timedRequest>;
export type EndTimedRequest = z.output<typeof endTimedRequest>;
