import { FACILITY_FORMAT, type Facility } from '#core/facility/facility';
import { z } from 'zod';
import { circuitShape } from './circuit';
import { listOf } from './list';
import { monitorShape } from './monitor';
import { noun } from './noun';
import { personShape } from './person';
import { roomShape } from './room';
import { roundSheetShape } from './round-sheet';
import { roundSlotShape } from './round-slot';
import { safeguardShape } from './safeguard';
import { shiftShape } from './shift';
import { siteShape } from './site';
import { systemShape } from './system';
import { toleranceProfileShape } from './tolerance-profile';

const fileShape = noun('facility', 'A whole site as Holdfast reads it. Members of lists are referred to by key.', {
  $schema: z.string().optional().describe('Where an editor finds this schema; not read by Holdfast.'),
  format: z.literal(FACILITY_FORMAT).describe(`Always ${FACILITY_FORMAT}.`),
  site: siteShape.describe('The site itself.'),
  rooms: listOf(roomShape, 'Rooms, with the air in them.'),
  circuits: listOf(circuitShape, 'Electrical circuits.'),
  monitors: listOf(monitorShape, 'What an alarm travels through: gateways, the host of Holdfast, routers.'),
  safeguards: listOf(safeguardShape, 'Safeguards of the whole site: generator, batteries, the outside watch.'),
  people: listOf(personShape, 'People who can be called.'),
  shifts: listOf(shiftShape, 'The rota.'),
  rounds: listOf(roundSlotShape, 'Rounds that are walked.'),
  sheets: z
    .array(roundSheetShape)
    .max(2000)
    .optional()
    .describe('Round sheets with a schedule of their own. May be left out when there are none.'),
  profiles: listOf(toleranceProfileShape, 'Own tolerance profiles, beside the default ones.'),
  systems: listOf(systemShape, 'The life-support systems.'),
});

/** The facility file: from what stands in it to a `Facility`, and back to its shortest form. */
export const facilityShape = z.codec(fileShape, z.custom<Facility>(), {
  decode: ({ $schema: _editorOnly, ...facility }): Facility => facility,
  encode: (facility) => facility,
});
