import type { Monitor } from '#core/facility/site';
import { z } from 'zod';
import { noun } from './noun';
import { keyOf, keyText, nameText } from './words';

export const monitorShape = noun(
  'monitor',
  'A part of the way an alarm travels; it needs power like everything else.',
  {
    key: keyText('Key of the monitor.'),
    name: nameText('Name of the monitor.'),
    kind: z
      .enum(['gateway', 'host', 'router', 'mail'])
      .describe('gateway reads sensors, host runs Holdfast, router joins them, mail takes the calls onward.'),
    circuit: keyOf('circuit', 'Key of the circuit that feeds it.').optional(),
  },
) satisfies z.ZodType<Monitor>;
