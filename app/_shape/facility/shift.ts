import { DAYS } from '#core/facility/site';
import type { Shift } from '#core/rota/rota';
import { z } from 'zod';
import { choiceOf } from './list';
import { noun } from './noun';
import { keyOf, keyText, localTime } from './words';

export const shiftShape = noun('shift', 'A stretch of duty that recurs every week.', {
  key: keyText('Key of the shift.'),
  kind: z.enum(['on-site', 'on-call']).describe('on-site or on-call.'),
  people: z.array(keyOf('person', 'Key of a person.')).min(1).describe('Keys of the people on duty, at least one.'),
  days: choiceOf(DAYS, 'Days of the week on which it begins, mon to sun.'),
  from: localTime('Begins.'),
  to: localTime('Ends; at or before from it is the next day.'),
}) satisfies z.ZodType<Shift>;
