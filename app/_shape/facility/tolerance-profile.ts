import { LIMIT_QUANTITIES, type LimitQuantity, type ToleranceProfile } from '#core/facility/stock';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { amount, bareAmount, withUnit } from './amount';
import type { FieldUnit } from './field-unit';
import { listOf } from './list';
import { noun } from './noun';
import { freeText, keyText, nameText } from './words';

/** Hard bounds of a limit by what it is set on, in the unit of each. */
export const LIMIT_BOUNDS: Record<LimitQuantity, readonly [number, number]> = {
  temperature: [-5, 60],
  salinity: [0, 100],
  oxygen: [0, 40],
  level: [0, 10],
  'rise-24h': [0, 60],
  'fall-24h': [0, 60],
  ammonia: [0, 100],
  'carbon-dioxide': [0, 5000],
  ph: [2, 12],
  oxidant: [0, 100],
};

const LIMIT_UNIT =
  'In °C, practical salinity, mg/L, part of the running volume, K in 24 h, un-ionised ammonia mg/L as N, carbon dioxide mg/L, pH ' +
  '(NBS), or oxidant mg/L as chlorine.';

/** In the unit of what the limit is set on. */
const bound = hinted(z.number(), { as: 'number-of', by: ['quantity'], via: 'limit', difference: false });

const limitShape = noun('limit', 'Beyond it without a break for this long is harm.', {
  quantity: z.enum(LIMIT_QUANTITIES).describe('What the limit is set on.'),
  above: bound.optional().describe(`Harm above this value. ${LIMIT_UNIT}`),
  below: bound.optional().describe(`Harm below this value. ${LIMIT_UNIT}`),
  forMin: amount('Min', 'How long without a break'),
}).superRefine(({ quantity, above, below }, ctx) => {
  const [least, most] = LIMIT_BOUNDS[quantity];
  for (const [name, value] of Object.entries({ above, below }))
    if (value !== undefined && (value < least || value > most))
      ctx.addIssue({ code: 'custom', path: [name], message: `must lie between ${least} and ${most} for ${quantity}` });
});

const usualShape = noun('usual', 'What a group of animals is kept at.', {
  temperatureC: band('C', 'Lower and upper end of the usual temperature'),
  salinity: band('psu', 'Lower and upper end of the usual salinity'),
  oxygenMgL: amount('MgL', 'Oxygen it is kept at or above'),
});

export const toleranceProfileShape = noun(
  'toleranceProfile',
  'What a group of animals is kept at, and what harms it.',
  {
    key: keyText('Key of the profile.'),
    name: nameText('Name of the profile.'),
    usual: usualShape.describe('What the animals are kept at.'),
    limits: listOf(limitShape, 'What harms them.'),
    source: freeText('Where the figures come from.'),
    confidence: z.enum(['good', 'fair', 'low']).describe('How far the figures can be trusted.'),
  },
) satisfies z.ZodType<ToleranceProfile>;

function band(unit: FieldUnit, about: string) {
  return hinted(z.tuple([bareAmount(unit), bareAmount(unit)]).describe(withUnit(about, unit)), { as: 'band', unit });
}
