import type { Generator } from '#core/facility/site';
import type { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { keyOf } from './words';

export const generatorShape = noun('generator', 'A stand-by set that feeds the circuits backed by generator.', {
  startsAfterS: figure('S', 'From the failure of the utility to power from the generator').optional(),
  fuelH: figure('H', 'How long it runs on the fuel kept for it').optional(),
  ratedW: figure('W', 'Power it can give').optional(),
  safeguard: keyOf(
    'safeguard',
    'Key of the site safeguard (kind standby-power) whose tests prove that it starts under load.',
    { of: 'standby-power' },
  ),
}) satisfies z.ZodType<Generator>;
