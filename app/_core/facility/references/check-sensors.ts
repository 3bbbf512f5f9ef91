import type { Path } from '../path';
import type { Sensor } from '../system';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Sensors sit in tanks of the system (watts: on equipment) and report through gateways. */
export function checkSensors(scope: SystemScope, report: Report): void {
  scope.system.sensors.forEach((sensor, at) => {
    const here = [...scope.path, 'sensors', at];
    checkPlace(sensor, here, scope, report);
    if (sensor.phScale !== undefined && sensor.quantity !== 'ph')
      report.wrong([...here, 'phScale'], `does not belong to a ${sensor.quantity} sensor`);
    if (sensor.compensatedToC !== undefined && sensor.quantity !== 'conductivity')
      report.wrong([...here, 'compensatedToC'], `does not belong to a ${sensor.quantity} sensor`);
    if (sensor.gateway !== undefined)
      report.names([...here, 'gateway'], sensor.gateway, 'a monitor of kind gateway', scope.site.gateways);
  });
}

function checkPlace({ quantity, tank, equipment }: Sensor, here: Path, scope: SystemScope, report: Report): void {
  if (tank !== undefined) report.names([...here, 'tank'], tank, 'a tank of this system', scope.tanks);
  if (equipment !== undefined)
    report.names([...here, 'equipment'], equipment, 'equipment of this system', scope.equipment);
  if (quantity === 'watts') {
    if (equipment === undefined) report.wrong([...here, 'equipment'], 'is missing: a watts sensor measures equipment');
    if (tank !== undefined) report.wrong([...here, 'tank'], 'does not belong to a watts sensor');
    return;
  }
  if (equipment !== undefined) report.wrong([...here, 'equipment'], `does not belong to a ${quantity} sensor`);
  if (tank === undefined && quantity !== 'leak')
    report.wrong([...here, 'tank'], `is missing: a ${quantity} sensor sits in a tank`);
}
