import { DAYS } from '#core/facility/site';
import { shiftRule } from '#core/rota/shift-days';
import type { FreeDay, Shift } from '#core/rota/rota';
import { z } from 'zod';
import { choiceOf } from './list';
import { noun } from './noun';
import { isoDate, keyOf, keyText, localTime, nameText } from './words';

export const freeDayShape = noun('freeDay', 'A day on which something does not take place.', {
  on: isoDate('The day.'),
  why: nameText('Why.').optional(),
}) satisfies z.ZodType<FreeDay>;

export const shiftShape = noun('shift', 'A stretch of duty that recurs.', {
  key: keyText('Key of the shift.'),
  kind: z.enum(['on-site', 'on-call']).describe('on-site or on-call.'),
  people: z.array(keyOf('person', 'Key of a person.')).min(1).describe('Keys of the people on duty, at least one.'),
  days: choiceOf(DAYS, 'Days of the week on which it begins, mon to sun.'),
  from: localTime('Begins.'),
  to: localTime('Ends; at or before from it is the next day.'),
  everyWeeks: z
    .int()
    .gte(2)
    .lte(52)
    .optional()
    .describe('Every so many weeks, counted from the one that starts lies in. Left out: every week.'),
  rule: z
    .string()
    .max(200)
    .optional()
    .describe(
      'Rule of RFC 5545 for the days on which it begins, counted from starts, for example FREQ=MONTHLY;BYDAY=1SA. Only those of its days count that the rule has.',
    ),
  starts: isoDate('First day on which it may begin.').optional(),
  ends: isoDate('Last day on which it may begin.').optional(),
  except: z
    .array(freeDayShape)
    .min(1)
    .max(200)
    .optional()
    .describe('Days on which it does not begin, for example public holidays.'),
}).superRefine((shift, context) => {
  const say = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
  const { starts, ends, everyWeeks, rule } = shift;
  if (starts === undefined && everyWeeks !== undefined) say('starts', 'must be given: weeks are counted from it');
  if (starts === undefined && rule !== undefined) say('starts', 'must be given: the rule is counted from it');
  if (starts !== undefined && ends !== undefined && ends < starts) say('ends', 'must not be before starts');
  const read = shiftRule({ rule, starts });
  if (starts !== undefined && !read.ok)
    say('rule', `must be a rule of RFC 5545 that starts on that day. ${read.reason.join(' ')}`);
}) satisfies z.ZodType<Shift>;
