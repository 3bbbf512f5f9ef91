import type { Path } from '../path';
import type { Equipment, EquipmentType } from '../system';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Fields that only some types of equipment have, and those types. */
export const BELONGS_TO: { [F in keyof Equipment]?: readonly EquipmentType[] } = {
  flowLPerH: ['return-pump', 'circulation-pump', 'filter', 'top-off', 'doser', 'supply'],
  coolingW: ['chiller'],
  gasTransferLPerH: ['skimmer', 'circulation-pump', 'air-blower'],
  stones: ['air-blower'],
  floodsAboveMm: ['skimmer'],
  floodLPerHPerMm: ['skimmer'],
  source: ['top-off', 'doser', 'supply'],
  bringsSalinity: ['supply'],
  bringsC: ['supply'],
  nitrifiesGPerDay: ['filter'],
  ozoneGPerH: ['ozone'],
  dosesMmolPerL: ['doser'],
  co2GPerH: ['co2'],
  hopperG: ['feeder'],
  removes: ['dechlorinator'],
  wasteLPerH: ['filter', 'drain-valve'],
  wasteToMm: ['filter', 'drain-valve'],
};

/** Equipment acts on a tank of the system, hangs on a circuit of the site, and has only the fields of its type. */
export function checkEquipment(scope: SystemScope, report: Report): void {
  scope.system.equipment.forEach((equipment, at) => {
    const here = [...scope.path, 'equipment', at];
    report.names([...here, 'tank'], equipment.tank, 'a tank of this system', scope.tanks);
    if (equipment.circuit !== undefined)
      report.names([...here, 'circuit'], equipment.circuit, 'a circuit', scope.site.circuits);
    checkFields(equipment, here, report);
    for (const [of, { tank }] of (equipment.stones ?? []).entries())
      report.names([...here, 'stones', of, 'tank'], tank, 'a tank of this system', scope.tanks);
    if (BELONGS_TO.source?.includes(equipment.type)) checkSource(equipment, here, scope, report);
    if (equipment.type === 'return-pump') checkReturnPump(equipment, here, scope, report);
  });
}

function checkFields(equipment: Equipment, here: Path, report: Report): void {
  for (const [name, types] of Object.entries(BELONGS_TO)) {
    const given = equipment[name as keyof Equipment] !== undefined;
    if (given && !types.includes(equipment.type))
      report.wrong([...here, name], `does not belong to a ${equipment.type}; it belongs to ${types.join(', ')}`);
  }
  const watts = equipment.wattsRange;
  if (watts && watts.minW > watts.maxW)
    report.wrong([...here, 'wattsRange'], `must have minW at most maxW; found ${watts.minW} and ${watts.maxW}`);
}

/** What brings water takes it from somewhere, and not from where it brings it; of a doser the bottle may be left out. */
function checkSource({ type, source, tank }: Equipment, here: Path, scope: SystemScope, report: Report): void {
  if (scope.tanks.get(tank)?.role === 'reservoir')
    report.wrong([...here, 'tank'], `must be the tank the ${type} fills; "${tank}" is a reservoir`);
  if (source === undefined) {
    if (type !== 'doser')
      report.wrong([...here, 'source'], `is missing: a ${type} takes water from a reservoir tank or from mains`);
  } else if (
    source !== 'mains' &&
    report.names([...here, 'source'], source, 'a reservoir tank, or mains', scope.tanks)
  ) {
    const role = scope.tanks.get(source)?.role;
    if (role !== 'reservoir')
      report.wrong([...here, 'source'], `must be a reservoir tank, or mains; "${source}" is a ${role} tank`);
  }
}

function checkReturnPump({ tank }: Equipment, here: Path, scope: SystemScope, report: Report): void {
  const sump = scope.system.tanks.find(({ role }) => role === 'sump');
  if (!sump) report.absent([...here, 'type'], 'is return-pump, which needs a tank with role sump in its system');
  else if (scope.tanks.has(tank) && scope.tanks.get(tank)?.role !== 'sump')
    report.wrong([...here, 'tank'], `must be the sump "${sump.key}", from which a return pump lifts; found "${tank}"`);
}
