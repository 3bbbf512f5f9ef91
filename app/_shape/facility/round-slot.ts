import { DAYS } from '#core/facility/site';
import { ASPECTS, type RoundSlot } from '#core/rounds/slot';
import { z } from 'zod';
import { choiceOf } from './list';
import { noun } from './noun';
import { keyOf, keyText, localTime, nameText } from './words';

export const roundSlotShape = noun('round', 'A round that is walked every week on these days at this time.', {
  key: keyText('Key of the round.'),
  name: nameText('Name of the round.'),
  days: choiceOf(DAYS, 'Days of the week on which it is walked, mon to sun.'),
  at: localTime('Begins.'),
  systems: z
    .array(keyOf('system', 'Key of a system.'))
    .optional()
    .describe('Keys of the systems walked; left out means all.'),
  sees: choiceOf(ASPECTS, 'What is looked at.'),
}) satisfies z.ZodType<RoundSlot>;
