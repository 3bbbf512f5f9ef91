import { checkBounds } from './check-bounds';
import { checkAnsweredBy } from './check-people';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Alarms watch what is there and are answered by people who are there. */
export function checkAlarms(scope: SystemScope, report: Report): void {
  const measured = new Set(scope.system.sensors.map((sensor) => sensor.equipment));
  scope.system.alarms.forEach((alarm, at) => {
    const here = [...scope.path, 'alarms', at];
    const { on } = alarm;
    if (on.kind === 'sensor') {
      report.names([...here, 'on', 'sensor'], on.sensor, 'a sensor of this system', scope.sensors);
      checkBounds(on, [...here, 'on'], report);
    } else if (on.kind === 'watts') {
      const path = [...here, 'on', 'equipment'];
      const known = report.names(path, on.equipment, 'equipment of this system', scope.equipment);
      if (known && !measured.has(on.equipment))
        report.absent(path, `is watched for watts, but no watts sensor measures "${on.equipment}"`);
    } else if (on.kind === 'silent-sensor')
      report.names([...here, 'on', 'sensor'], on.sensor, 'a sensor of this system', scope.sensors);
    else report.names([...here, 'on', 'gateway'], on.gateway, 'a monitor of kind gateway', scope.site.gateways);
    checkAnsweredBy(alarm.answeredBy, [...here, 'answeredBy'], scope.site, report);
    report.safeguard([...here, 'safeguard'], alarm.safeguard, 'alarm', scope.safeguards);
  });
}
