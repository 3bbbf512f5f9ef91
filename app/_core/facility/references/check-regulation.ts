import type { LevelControl, Thermostat } from '../../plans/plan';
import type { Path } from '../path';
import type { Equipment, SensorQuantity } from '../system';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Regulation reads sensors of the right quantity and has its limits the right way round. */
export function checkRegulation(equipment: Equipment, here: Path, scope: SystemScope, report: Report): void {
  const { regulation } = equipment.plan;
  if (regulation.kind === 'thermostat') checkThermostat(regulation, equipment, here, scope, report);
  if (regulation.kind === 'level') checkLevel(regulation, equipment, here, scope, report);
  if (regulation.kind === 'hours' && regulation.from === regulation.to)
    report.wrong([...here, 'to'], `must differ from "from"; both are ${regulation.to}`);
}

function checkThermostat(line: Thermostat, { type }: Equipment, here: Path, scope: SystemScope, report: Report): void {
  if (type !== 'heater' && type !== 'chiller')
    report.wrong([...here, 'kind'], `is thermostat, which only a heater or a chiller can follow, not a ${type}`);
  for (const [at, key] of line.sensors.entries()) {
    checkSensor(key, 'temperature', [...here, 'sensors', at], scope, report);
    if (line.sensors.indexOf(key) < at)
      report.wrong([...here, 'sensors', at], `repeats "${key}"; one sensor, one vote`);
  }
  const { length } = line.sensors;
  if (line.vote === 'single' ? length !== 1 : length < 2)
    report.wrong(
      [...here, 'vote'],
      line.vote === 'single'
        ? `is single, which needs exactly one sensor; found ${length}`
        : `is ${line.vote}, which needs at least two sensors; found ${length}`,
    );
  if (line.lowC >= line.highC)
    report.wrong([...here, 'lowC'], `must be less than highC; found lowC ${line.lowC} and highC ${line.highC}`);
}

function checkLevel(line: LevelControl, { type }: Equipment, here: Path, scope: SystemScope, report: Report): void {
  if (type !== 'top-off') report.wrong([...here, 'kind'], `is level, which only a top-off can follow, not a ${type}`);
  checkSensor(line.sensor, 'level', [...here, 'sensor'], scope, report);
  if (line.lowMm >= line.highMm)
    report.wrong([...here, 'lowMm'], `must be less than highMm; found lowMm ${line.lowMm} and highMm ${line.highMm}`);
  if (line.runLimitSafeguard !== undefined && line.runLimitMin === undefined)
    report.wrong([...here, 'runLimitSafeguard'], 'is given, but runLimitMin sets no run limit');
  report.safeguard([...here, 'runLimitSafeguard'], line.runLimitSafeguard, 'run-limit', scope.safeguards);
}

function checkSensor(key: string, quantity: SensorQuantity, here: Path, scope: SystemScope, report: Report): void {
  if (!report.names(here, key, `a ${quantity} sensor of this system`, scope.sensors)) return;
  const found = scope.sensors.get(key)?.quantity;
  if (found !== quantity) report.wrong(here, `must name a ${quantity} sensor; "${key}" measures ${found}`);
}
