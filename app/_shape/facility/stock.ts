import type { Stock } from '#core/facility/stock';
import { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { keyOf, keyText, nameText } from './words';

export const stockShape = noun('stock', 'Animals of one kind in one tank.', {
  key: keyText('Key of the stock.'),
  group: nameText('Species or group.'),
  tank: keyOf('tank', 'Key of the tank they live in.'),
  count: z.int().gte(0).lte(100_000_000).describe('How many there are.'),
  eachG: figure('G', 'Mass of one'),
  profile: keyOf(
    'profile',
    "Key of the tolerance profile; left out means the default one of the system's kind.",
  ).optional(),
  oxygenMgPerKgH: figure(
    'MgPerKgH',
    'Oxygen used where measured; left out, it follows from mass and temperature',
  ).optional(),
}) satisfies z.ZodType<Stock>;
