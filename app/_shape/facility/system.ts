import { PH_SCALES, SYSTEM_KINDS, type System } from '#core/facility/system';
import { z } from 'zod';
import { alarmShape } from './alarm';
import { equipmentShape } from './equipment';
import { failureRateShape } from './failure-rate';
import { figure } from './figure';
import { hoursOfDay } from './hours-of-day';
import { listOf } from './list';
import { noun } from './noun';
import { operatingStateShape } from './operating-state';
import { paperShape } from './paper';
import { safeguardShape } from './safeguard';
import { sensorShape } from './sensor';
import { stockShape } from './stock';
import { tankShape } from './tank';
import { addressKey, keyOf, nameText } from './words';

export const systemShape = noun(
  'system',
  'A life-support system: tanks that share water, with everything that keeps them.',
  {
    key: addressKey('Key of the system.'),
    name: nameText('Name of the system.'),
    kind: z.enum(SYSTEM_KINDS).describe('Kind of system; chooses the default tolerance profile.'),
    room: keyOf('room', 'Key of the room it stands in.'),
    salinity: figure('psu', 'Salinity it is kept at; 0 for fresh water'),
    feedGPerDay: figure('GPerDay', 'Feed given in a day').optional(),
    feedProtein: figure('share', 'Part of the feed that is protein').optional(),
    fedAtH: hoursOfDay(
      'Local hours of the day (h), 0 to 23, at which it is given, in equal parts; left out: spread over the day.',
    ).optional(),
    ph: figure('pH', 'pH where it is worst in a day').optional(),
    phScale: z
      .enum(PH_SCALES)
      .optional()
      .describe('Scale its pH probes are calibrated on; left out: the usual buffers (nbs).'),
    alkalinityMmolL: figure('mmolL', 'Alkalinity it is kept at').optional(),
    tanks: listOf(tankShape, 'Its tanks, with at most one sump.'),
    equipment: listOf(equipmentShape, 'Its equipment.'),
    sensors: listOf(sensorShape, 'Its sensors.'),
    stock: listOf(stockShape, 'Its animals.'),
    safeguards: listOf(safeguardShape, 'Its safeguards.'),
    alarms: listOf(alarmShape, 'Its alarms.'),
    states: listOf(operatingStateShape, 'The operating states it is put into.'),
    rates: z.array(failureRateShape).optional().describe('How often things fail, as somebody found.'),
    papers: z
      .array(paperShape)
      .optional()
      .describe('Dated statements of how hazards are met that the model does not carry.'),
  },
) satisfies z.ZodType<System>;
