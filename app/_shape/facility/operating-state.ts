import type { OperatingState } from '#core/facility/system';
import { z } from 'zod';
import { carriedOutBy } from './carried-out-by';
import { figure } from './figure';
import { noun } from './noun';
import { STATES } from './plan';
import { keyOf } from './words';

export const operatingStateShape = noun('operatingState', 'A state the system is put into, and what ends it.', {
  name: z.enum(STATES).describe('The operating state.'),
  lastsMin: figure('Min', 'How long it is meant to last').optional(),
  endsBy: carriedOutBy('Who or what ends it:'),
  endSafeguard: keyOf('safeguard', 'Key of the safeguard (kind state-end) that ends it whatever else happens.', {
    of: 'state-end',
  }).optional(),
  drawnL: figure('L', 'Water taken out at the start and put back, matched, at the end').optional(),
}) satisfies z.ZodType<OperatingState>;
