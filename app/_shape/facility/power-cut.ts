import type { PowerCut } from '#core/facility/site';
import type { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { freeText } from './words';

export const powerCutShape = noun('powerCut', "The people's own means against a power cut.", {
  means: freeText('What they have, in words.'),
  repairMin: figure('Min', 'Work once there until it feeds the system'),
}) satisfies z.ZodType<PowerCut>;
