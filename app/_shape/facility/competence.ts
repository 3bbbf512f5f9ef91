import { EQUIPMENT_TYPES } from '#core/facility/system';
import type { Competence } from '#core/rota/rota';
import type { z } from 'zod';
import { choiceOf } from './list';
import { noun } from './noun';
import { keyText, nameText } from './words';

export const competenceShape = noun('competence', 'Work at a site that not everybody may do.', {
  key: keyText('Key of the competence.'),
  name: nameText('What it is, for example: put the ozone back.'),
  types: choiceOf(EQUIPMENT_TYPES, 'Types of equipment that only somebody with it puts right.').optional(),
}) satisfies z.ZodType<Competence>;
