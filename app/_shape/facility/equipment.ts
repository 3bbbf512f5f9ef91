import { EQUIPMENT_TYPES, type Equipment } from '#core/facility/system';
import { z } from 'zod';
import { amount } from './amount';
import { figure } from './figure';
import { noun } from './noun';
import { planShape } from './plan';
import { keyOf, keyText, nameText } from './words';

const wattsRangeShape = noun('wattsRange', 'Power a healthy one draws while running.', {
  minW: amount('W', 'Less than this while running is abnormal'),
  maxW: amount('W', 'More than this while running is abnormal'),
});

const stonesShape = noun('stones', 'Air stones in one tank.', {
  tank: keyOf('tank', 'Key of the tank they hang in.'),
  count: z.int().gte(1).lte(10_000).describe('How many stones.'),
});

export const equipmentShape = noun('equipment', 'One piece of equipment. Some fields belong to some types only.', {
  key: keyText('Key of the equipment.'),
  name: nameText('Name of the equipment.'),
  type: z.enum(EQUIPMENT_TYPES).describe('What it is.'),
  tank: keyOf('tank', 'Key of the tank whose water it acts on; for a top-off, the tank it fills.'),
  circuit: keyOf('circuit', 'Key of the circuit it hangs on.').optional(),
  relay: nameText('Relay board or controller that switches it: what hangs on one fails together.').optional(),
  ratedW: figure('W', 'Rated power').optional(),
  wattsRange: wattsRangeShape.optional().describe('Power a healthy one draws while running; outside it is abnormal.'),
  heatToWater: figure('share', 'Share of its power that ends up as heat in the water').optional(),
  repairMin: figure('Min', 'Work to put it right once somebody stands before it').optional(),
  spareMin: figure('Min', 'Until what its repair needs is there; 0 where a spare lies on site').optional(),
  bareBelowMm: figure('Mm', 'How far the level falls until its element is bare or it draws air').optional(),
  flowLPerH: figure('LPerH', 'return-pump, circulation-pump, filter, top-off, doser, supply: water moved').optional(),
  coolingW: figure('W', 'chiller: heat taken out of the water').optional(),
  gasTransferLPerH: figure(
    'LPerH',
    'skimmer, circulation-pump, air-blower (each stone): water brought to oxygen saturation, at 20 °C',
  ).optional(),
  stones: z.array(stonesShape).optional().describe('air-blower: where its stones hang.'),
  floodsAboveMm: figure('Mm', 'skimmer: how far the level may rise before foam turns to water').optional(),
  floodLPerHPerMm: figure('LPerHPerMm', 'skimmer: spilled for each further millimetre').optional(),
  source: keyOf('tank', 'top-off, doser, supply: key of the reservoir tank, or mains.', {
    of: 'reservoir',
    or: ['mains'],
  }).optional(),
  wasteLPerH: figure(
    'LPerH',
    'filter, drain-valve: water lost while its waste is open, at the running level',
  ).optional(),
  wasteToMm: figure('Mm', 'filter, drain-valve: how far the level falls until no more leaves').optional(),
  bringsSalinity: figure('psu', 'supply: salinity of what it brings; left out: that of the system').optional(),
  bringsC: figure('C', 'supply: temperature of what it brings; left out: that of the room').optional(),
  nitrifiesGPerDay: figure('GPerDay', 'filter: ammonia its bacteria turn over, as N, at 20 °C').optional(),
  ozoneGPerH: figure('GPerH', 'ozone: ozone made while it runs').optional(),
  dosesMmolPerL: figure('mmolLSigned', 'doser: alkalinity of its solution; below 0 for an acid').optional(),
  co2GPerH: figure('GPerH', 'co2: carbon dioxide let in while it is open').optional(),
  hopperG: figure('G', 'feeder: feed its hopper holds').optional(),
  removes: figure('share', "dechlorinator: part of the mains' disinfectant it takes out").optional(),
  plan: planShape.describe('How it is meant to behave.'),
}) satisfies z.ZodType<Equipment>;
