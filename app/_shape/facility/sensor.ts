import { PH_SCALES, SENSOR_QUANTITIES, type Sensor } from '#core/facility/system';
import { z } from 'zod';
import { amount } from './amount';
import { figure } from './figure';
import { noun } from './noun';
import { isoDate, keyOf, keyText, nameText } from './words';

export const sensorShape = noun('sensor', 'One sensor.', {
  key: keyText('Key of the sensor.'),
  name: nameText('Name of the sensor.'),
  quantity: z
    .enum(SENSOR_QUANTITIES)
    .describe(
      'What it measures: temperature °C, level mm relative to the running level, flow L/h, practical salinity, oxygen mg/L, ' +
        'leak wet (1) or not (0), watts W, pH, oxygen saturation %, conductivity mS/cm, redox mV, ammonia (total), nitrite and ' +
        'nitrate mg/L as N, phosphate mg/L as P, alkalinity mmol/L, pressure kPa, turbidity NTU, carbon dioxide mg/L, oxidant mg/L as chlorine.',
    ),
  tank: keyOf(
    'tank',
    'Key of the tank it sits in; for flow, the tank the return feeds or the sump it leaves.',
  ).optional(),
  equipment: keyOf('equipment', 'For watts: key of the equipment measured.').optional(),
  gateway: keyOf('gateway', 'Key of the gateway that reads it.').optional(),
  accuracy: figure('number', 'Accuracy, either way').optional(),
  well: nameText('Well it shares with other probes: what happens to one there happens to all.').optional(),
  lagS: figure('S', 'How slowly it follows: time constant').optional(),
  phScale: z
    .enum(PH_SCALES)
    .optional()
    .describe('For pH: the scale it is calibrated on; left out: that of its system.'),
  compensatedToC: amount(
    'C',
    'For conductivity: the temperature that its meter brings the reading to, mostly 25; left out: it reads the water as it is',
    { least: 0, most: 35 },
  ).optional(),
  calibrationDue: isoDate(
    'Day after which its calibration no longer counts, going by what stands on no round.',
  ).optional(),
  calibrateEveryDays: amount('Days', 'A calibration counts for this long', { least: 1, most: 3660 })
    .refine(Number.isInteger, { error: 'must be a whole number of days' })
    .optional(),
}) satisfies z.ZodType<Sensor>;
