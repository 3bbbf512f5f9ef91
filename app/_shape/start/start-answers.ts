import { SYSTEM_KINDS } from '#core/facility/system';
import { KEEPING_ROLES, type StartAnswers } from '#core/start/answers';
import { z } from 'zod';
import { amount } from '../facility/amount';
import { answeredBy } from '../facility/answered-by';
import { carriedOutBy } from '../facility/carried-out-by';
import { noun } from '../facility/noun';
import { keyOf, nameText } from '../facility/words';

/** Nothing of which there is none is worth a line of its own. */
const SOME = { least: 0.1 };
const count = (most: number, about: string) => z.int().gte(1).lte(most).describe(about);
const cover = z.enum(['open', 'lidded']).describe('Whether a lid holds the water vapour back.');

const whatShape = noun('startWhat', 'Its kind decides the limits of tolerance until others are chosen.', {
  name: nameText('Name of the system.'),
  kind: z.enum(SYSTEM_KINDS).describe('The kind of water and animals.'),
  room: keyOf('room', 'Key of the room it stands in.'),
  salinity: amount('psu', '0 for fresh water; sea water is about 35'),
});

const tanksShape = noun('startTanks', 'All alike; others can be described afterwards.', {
  role: z.enum(KEEPING_ROLES).describe('What the tanks are for.'),
  count: count(24, 'How many there are.'),
  volumeL: amount('L', 'Water in each, less rock and sand', SOME),
  depthMm: amount('Mm', 'From the surface to the ground', { least: 10 }),
  cover,
});

const sumpShape = noun('startSump', 'A sump below the tanks, from which the water is lifted back.', {
  volumeL: amount('L', 'Water in it while all runs', SOME),
  depthMm: amount('Mm', 'From the surface to the ground while all runs', { least: 10 }),
  pumps: count(4, 'How many return pumps lift it.'),
  flowLPerH: amount('LPerH', 'Moved by each pump, at its height', SOME),
});

const heatersShape = noun('startHeaters', 'In the sump where there is one, else shared among the tanks.', {
  count: count(24, 'How many.'),
  eachW: amount('W', 'Power of each', SOME),
  cutOut: noun('startCutOut', 'A contact of its own with a probe of its own, apart from the thermostat.', {
    aboveC: amount('C', 'Opens above'),
    reset: z.enum(['manual', 'automatic']).describe('Whether a person must reset it.'),
  })
    .optional()
    .describe('A contact of its own with a probe of its own, apart from the thermostat.'),
});

const heatShape = noun('startHeat', 'What keeps the water at its temperature.', {
  keptAtC: amount('C', 'What the water is kept at'),
  by: carriedOutBy('What switches it: hard-wired is a thermostat of its own in each;'),
  heaters: heatersShape.optional().describe('In the sump where there is one, else shared among the tanks.'),
  chiller: noun('startChiller', 'What takes heat out.', { coolingW: amount('W', 'Heat taken out of the water', SOME) })
    .optional()
    .describe('What takes heat out.'),
});

const movementShape = noun('startMovement', 'Besides the return.', {
  circulation: noun('startCirculation', 'Pumps that stir the tanks.', {
    eachTank: count(8, 'How many in each tank.'),
    flowLPerH: amount('LPerH', 'Moved by each', SOME),
  })
    .optional()
    .describe('Pumps that stir the tanks.'),
  air: noun('startAir', 'One blower for all tanks.', { stonesEachTank: count(40, 'Air stones in each tank.') })
    .optional()
    .describe('One blower for all tanks.'),
  skimmer: z.enum(['no', 'yes']).describe('In the sump where there is one, else in the first tank.'),
});

const runLimit = amount('Min', 'Longest single run, where something limits it', SOME).optional();
const filledBy = carriedOutBy('What switches it: a float is hard-wired;');
const topOffShape = z.discriminatedUnion('from', [
  noun('startFromReservoir', 'Taken from a reservoir.', {
    from: z.literal('reservoir').describe('From a reservoir.'),
    holdsL: amount('L', 'Water the full reservoir holds', SOME),
    by: filledBy,
    runLimitMin: runLimit,
  }),
  noun('startFromMains', 'Taken from the water main.', {
    from: z.literal('mains').describe('From the water main.'),
    by: filledBy,
    runLimitMin: runLimit,
  }),
]);

const animalsShape = noun('startAnimals', 'Animals of one kind and size.', {
  group: nameText('Species or group.'),
  count: count(100_000, 'How many in the whole system.'),
  eachG: amount('G', 'Mass of one', { least: 0.01 }),
});

const powerShape = noun('startPower', 'What hangs on no circuit is not reached by a fault of one.', {
  heat: keyOf('circuit', 'Key of the circuit of heaters and chiller.').optional(),
  pumps: keyOf('circuit', 'Key of the circuit of pumps, skimmer and top-off.').optional(),
  air: keyOf('circuit', 'Key of the circuit of the air blower.').optional(),
});

const watchShape = noun('startWatch', 'An alarm on the temperature.', {
  aboveC: amount('C', 'Calls above').optional(),
  belowC: amount('C', 'Calls below').optional(),
  probe: z.enum(['own', 'regulating']).describe('Whether the probe that regulates calls as well, or one of its own.'),
  gateway: keyOf('gateway', 'Key of the gateway it reports through.').optional(),
  answeredBy: answeredBy('Who answers.'),
});

/** The answers to the questions a system is begun with, each group one question. */
export const startAnswersShape = noun('start', 'What a review needs to begin.', {
  what: whatShape,
  tanks: tanksShape,
  sump: sumpShape.optional().describe('Left out, each tank stands by itself.'),
  heat: heatShape.optional().describe('Left out, the water is as warm as its room makes it.'),
  movement: movementShape,
  topOff: topOffShape.optional().describe('What makes up for evaporation. Left out, people do.'),
  animals: z.array(animalsShape).min(1).describe('Groups by kind and size, spread over the tanks.'),
  power: powerShape,
  watch: watchShape.optional().describe('Left out, nobody is called by an alarm.'),
}) satisfies z.ZodType<StartAnswers>;
