import { BELONGS_TO } from '#core/facility/references/check-equipment';
import { SENSOR_QUANTITIES, TANK_ROLES } from '#core/facility/system';
import type { OnlyFor } from '#core/forms/field';

const FED = TANK_ROLES.filter((role) => role !== 'sump' && role !== 'reservoir');

/** Fields that the file refuses for some choices of a neighbour, by noun and name. */
const ONLY: Readonly<Record<string, OnlyFor>> = {
  ...Object.fromEntries(
    Object.entries(BELONGS_TO).map(([name, types]) => [`equipment.${name}`, { field: 'type', in: types }]),
  ),
  'tank.pumpDryMm': { field: 'role', in: ['sump'] },
  'tank.returnShare': { field: 'role', in: FED },
  'sensor.phScale': { field: 'quantity', in: ['ph'] },
  'sensor.compensatedToC': { field: 'quantity', in: ['conductivity'] },
  'sensor.equipment': { field: 'quantity', in: ['watts'] },
  'sensor.tank': { field: 'quantity', in: SENSOR_QUANTITIES.filter((quantity) => quantity !== 'watts') },
};

/** For which choices of which neighbour a field is there; undefined: for all. */
export function onlyFor(noun: string, name: string): OnlyFor | undefined {
  return ONLY[`${noun}.${name}`];
}
