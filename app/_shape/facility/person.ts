import { type Person, ROLES } from '#core/rota/rota';
import { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { keyText, nameText } from './words';

export const personShape = noun('person', 'Somebody who can be called.', {
  key: keyText('Key of the person.'),
  name: nameText('Name of the person.'),
  role: z.enum(ROLES).describe('Role at this site.'),
  travelMin: figure('Min', 'From home to the site').optional(),
}) satisfies z.ZodType<Person>;
