import { type AlarmDefinition, isDerived } from '../../alarms/definition';
import { isNeverSuppressed } from '../../alarms/life/suppression';
import type { Path } from '../path';
import { checkBounds } from './check-bounds';
import { checkAnsweredBy } from './check-people';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Alarms watch what is there and are answered by people who are there. */
export function checkAlarms(scope: SystemScope, report: Report): void {
  scope.system.alarms.forEach((alarm, at) => {
    const here = [...scope.path, 'alarms', at];
    checkWatched(scope, alarm, [...here, 'on'], report);
    if (alarm.suppressedIn !== undefined && isNeverSuppressed(scope.system, alarm))
      report.wrong(
        [...here, 'suppressedIn'],
        'must be left out: oxygen, high temperature, oxidant and leak are never suppressed',
      );
    checkAnsweredBy(alarm.answeredBy, [...here, 'answeredBy'], scope.site, report);
    report.safeguard([...here, 'safeguard'], alarm.safeguard, 'alarm', scope.safeguards);
  });
}

function checkWatched(scope: SystemScope, { on }: AlarmDefinition, path: Path, report: Report): void {
  if ('sensor' in on) checkSensor(scope, on.sensor, [...path, 'sensor'], report);
  switch (on.kind) {
    case 'sensor':
      checkBounds(on, path, report);
      break;
    case 'rate':
      if (on.risesPerHour === undefined && on.fallsPerHour === undefined)
        report.wrong(path, 'must give risesPerHour or fallsPerHour, or both');
      break;
    case 'deviation':
      checkDeviation(scope, on, path, report);
      break;
    case 'watts':
      checkMeter(scope, on.equipment, [...path, 'equipment'], report);
      break;
    case 'run-limit':
      checkRunLimit(scope, on, path, report);
      break;
    case 'state-outstayed':
      if (!scope.system.states.some(({ name }) => name === on.state))
        report.absent([...path, 'state'], `is watched, but the system has no state "${on.state}"`);
      break;
    case 'silent':
      report.names([...path, 'gateway'], on.gateway, 'a monitor of kind gateway', scope.site.gateways);
      break;
    case 'frozen':
    case 'silent-sensor':
      break;
  }
}

/** A series that is worked out is there when what it is worked out of is; which those are, its own definition says. */
function checkSensor(scope: SystemScope, key: string, path: Path, report: Report): void {
  if (!isDerived(key)) report.names(path, key, 'a sensor of this system', scope.sensors);
}

type On<K> = Extract<AlarmDefinition['on'], { kind: K }>;

function checkDeviation(scope: SystemScope, on: On<'deviation'>, path: Path, report: Report): void {
  checkSensor(scope, on.other, [...path, 'other'], report);
  if (on.other === on.sensor) report.wrong([...path, 'other'], 'must be another sensor than the first');
  const [one, other] = [on.sensor, on.other].map((key) => scope.sensors.get(key)?.quantity);
  if (one !== undefined && other !== undefined && one !== other)
    report.wrong([...path, 'other'], `must measure ${one} like the first; it measures ${other}`);
}

function checkMeter(scope: SystemScope, equipment: string, path: Path, report: Report): void {
  const known = report.names(path, equipment, 'equipment of this system', scope.equipment);
  const isMeasured = scope.system.sensors.some((sensor) => sensor.equipment === equipment);
  if (known && !isMeasured) report.absent(path, `is watched for watts, but no watts sensor measures "${equipment}"`);
}

function checkRunLimit(scope: SystemScope, on: On<'run-limit'>, path: Path, report: Report): void {
  if (on.flow === undefined) checkMeter(scope, on.equipment, [...path, 'equipment'], report);
  else {
    report.names([...path, 'equipment'], on.equipment, 'equipment of this system', scope.equipment);
    const isKnown = report.names([...path, 'flow'], on.flow, 'a sensor of this system', scope.sensors);
    const quantity = scope.sensors.get(on.flow)?.quantity;
    if (isKnown && quantity !== undefined && quantity !== 'flow')
      report.wrong([...path, 'flow'], `must name a flow sensor; "${on.flow}" measures ${quantity}`);
  }
  if ((on.longerThanMin === undefined) === (on.startsPerHour === undefined))
    report.wrong(path, 'must give either longerThanMin or startsPerHour: these are two alarms');
}
