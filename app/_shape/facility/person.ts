import type { QuietHours } from '#core/alarms/steps';
import { type Person, ROLES } from '#core/rota/rota';
import { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { keyText, localTime, nameText } from './words';

const quietShape = noun('quietHours', 'Hours in which somebody is not called while others can be.', {
  from: localTime('Begins.'),
  to: localTime('Ends; at or before from it is the next day.'),
}) satisfies z.ZodType<QuietHours>;

export const personShape = noun('person', 'Somebody who can be called.', {
  key: keyText('Key of the person.'),
  name: nameText('Name of the person.'),
  role: z.enum(ROLES).describe('Role at this site.'),
  travelMin: figure('Min', 'From home to the site').optional(),
  quiet: quietShape
    .optional()
    .describe('Quiet hours: passed over by a step of calls, unless they are on or it is the last step.'),
}) satisfies z.ZodType<Person>;
