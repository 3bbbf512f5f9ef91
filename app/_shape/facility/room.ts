import type { Room } from '#core/facility/site';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { type Bounds, bareAmount, wanted, withUnit } from './amount';
import type { FieldUnit } from './field-unit';
import { figure } from './figure';
import { noun } from './noun';
import { keyText, nameText } from './words';

const AIR: Bounds = { least: -30, most: 60 };

export const roomShape = noun('room', 'Air around the systems of one room.', {
  key: keyText('Key of the room.'),
  name: nameText('Name of the room.'),
  temperatureC: byHour('C', 'Temperature of the air', AIR),
  humidityPct: byHour('Pct', 'Relative humidity of the air'),
}) satisfies z.ZodType<Room>;

/** The same all day, or 24 values for the hours beginning 00:00 to 23:00 local time. */
function byHour(unit: FieldUnit, about: string, bounds?: Bounds) {
  const hours = z.array(bareAmount(unit, bounds)).length(24);
  const shape = z
    .union([figure(unit, about, bounds), hours], {
      error: `${wanted(unit)}, or "unknown", or a list of 24 such numbers`,
    })
    .describe(`${withUnit(about, unit)} One figure, or 24 numbers for the hours from 00:00 to 23:00 local time.`);
  return hinted(shape, { as: 'figure-by-hour', unit });
}
