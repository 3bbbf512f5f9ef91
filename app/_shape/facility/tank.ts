import { TANK_ROLES, type Tank } from '#core/facility/system';
import { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { keyOf, keyText, nameText } from './words';

const wallShape = noun('wall', 'What the walls and base of a tank are made of.', {
  material: z.enum(['glass', 'acrylic', 'concrete', 'insulated']).describe('Material.'),
  thicknessMm: figure('Mm', 'Thickness'),
  areaM2: figure('M2', 'Area of walls and base together'),
});

export const tankShape = noun('tank', 'One body of water. Levels are relative to the running level.', {
  key: keyText('Key of the tank.'),
  name: nameText('Name of the tank.'),
  role: z.enum(TANK_ROLES).describe('What the tank is for.'),
  volumeL: figure('L', 'Water at the running level, less rock and sand'),
  surfaceM2: figure('M2', 'Open water surface'),
  lossWPerK: figure(
    'WPerK',
    'Heat lost through walls and base for each degree above the room; or give wall',
  ).optional(),
  wall: wallShape.optional().describe('Walls, from which the heat lost is worked out; or give lossWPerK.'),
  cover: z.enum(['open', 'lidded']).describe('Whether a lid holds the water vapour back.'),
  evaporationActivity: figure(
    'activity',
    'How strongly it evaporates, as a part of the pool equation at full activity; left out: by cover and role',
  ).optional(),
  rimMm: figure('Mm', 'How far the rim stands above the running level').optional(),
  drainDownMm: figure('Mm', "How far the level falls to the overflow's crest when the return stops").optional(),
  outletMm: figure('Mm', "Depth of the return's outlet below the running level; 0 when it ends above").optional(),
  siphonBreakMm: figure(
    'Mm',
    'Depth of the siphon-break hole below the running level; left out: there is none',
  ).optional(),
  siphonSafeguard: keyOf('safeguard', 'Key of the safeguard (kind siphon-break) that proves the hole is clear.', {
    of: 'siphon-break',
  }).optional(),
  returnShare: figure('share', "Share of the return's flow that this tank receives").optional(),
  drainAboveMm: figure(
    'Mm',
    'How far above the running level a standpipe takes water to the drain; left out: there is none',
  ).optional(),
  pumpDryMm: figure('Mm', 'Sump only: how far the level may fall before the return pump draws air').optional(),
}).refine((tank) => tank.lossWPerK === undefined || tank.wall === undefined, {
  path: ['wall'],
  error: 'must be left out when lossWPerK is given: one of the two says how much heat is lost',
}) satisfies z.ZodType<Tank>;
