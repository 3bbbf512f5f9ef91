import type { QuietHours } from '#core/alarms/steps';
import { type HeldCompetence, type Person, ROLES } from '#core/rota/rota';
import { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { isoDate, keyOf, keyText, localTime, nameText } from './words';

const quietShape = noun('quietHours', 'Hours in which somebody is not called while others can be.', {
  from: localTime('Begins.'),
  to: localTime('Ends; at or before from it is the next day.'),
}) satisfies z.ZodType<QuietHours>;

const heldShape = noun('heldCompetence', 'That somebody may do what not everybody may.', {
  competence: keyOf('competence', 'Key of a competence of the site.'),
  until: isoDate('Last day on which it counts.').optional(),
  attestedBy: nameText('Name of whoever attested it.').optional(),
}) satisfies z.ZodType<HeldCompetence>;

export const personShape = noun('person', 'Somebody who can be called.', {
  key: keyText('Key of the person.'),
  name: nameText('Name of the person.'),
  role: z.enum(ROLES).describe('Role at this site.'),
  travelMin: figure('Min', 'From home to the site').optional(),
  quiet: quietShape
    .optional()
    .describe('Quiet hours: passed over by a step of calls, unless they are on or it is the last step.'),
  competences: z.array(heldShape).min(1).optional().describe('What they may do of the work that not everybody may.'),
}) satisfies z.ZodType<Person>;
