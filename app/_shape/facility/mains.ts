import type { Mains } from '#core/facility/site';
import type { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';

export const mainsShape = noun('mains', 'What comes out of the tap.', {
  oxidantMgL: figure('MgL', 'Free and combined chlorine as it arrives, as Cl2').optional(),
  temperatureC: figure('C', 'Temperature; left out: that of the room').optional(),
}) satisfies z.ZodType<Mains>;
