import type { CutOut, Interlock, Plan, Regulation } from '../../plans/plan';
import type { Path } from '../path';
import type { Equipment } from '../system';
import { checkBounds } from './check-bounds';
import { checkRegulation } from './check-regulation';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Every line of every plan speaks of tanks, sensors and safeguards that are there and of the right kind. */
export function checkPlans(scope: SystemScope, report: Report): void {
  scope.system.equipment.forEach((equipment, at) => {
    const here = [...scope.path, 'equipment', at, 'plan'];
    const { plan } = equipment;
    for (const [of, line] of plan.cutOuts.entries()) checkCutOut(line, [...here, 'cutOuts', of], scope, report);
    for (const [of, line] of plan.interlocks.entries())
      checkInterlock(line, [...here, 'interlocks', of], scope, report);
    checkStateLines(plan, here, report);
    checkLostSensing(equipment, here, report);
    checkRegulation(equipment, [...here, 'regulation'], scope, report);
  });
}

function checkCutOut(cutOut: CutOut, here: Path, scope: SystemScope, report: Report): void {
  report.names([...here, 'tank'], cutOut.tank, 'a tank of this system', scope.tanks);
  report.safeguard([...here, 'safeguard'], cutOut.safeguard, 'cut-out', scope.safeguards);
  checkBounds(cutOut, here, report);
}

function checkInterlock({ when, safeguard }: Interlock, here: Path, scope: SystemScope, report: Report): void {
  report.safeguard([...here, 'safeguard'], safeguard, 'interlock', scope.safeguards);
  if (when.kind === 'sensor') {
    report.names([...here, 'when', 'sensor'], when.sensor, 'a sensor of this system', scope.sensors);
    checkBounds(when, [...here, 'when'], report);
    return;
  }
  const proof = [...here, 'when', 'provedBy'];
  const pumps = scope.system.equipment.filter(({ type }) => type === 'return-pump').map(({ key }) => key);
  if (pumps.length === 0) report.absent([...here, 'when'], 'waits for lost return, but this system has no return-pump');
  if (when.provedBy === 'flow' && !scope.system.sensors.some(({ quantity }) => quantity === 'flow'))
    report.absent(proof, 'is flow, but this system has no flow sensor');
  if (when.provedBy === 'watts' && !scope.system.sensors.some(({ equipment }) => pumps.includes(equipment ?? '')))
    report.absent(proof, 'is watts, but no watts sensor of this system measures its return-pump');
}

function checkStateLines({ states }: Plan, here: Path, report: Report): void {
  states.forEach(({ state }, at) => {
    if (states.findIndex((line) => line.state === state) < at)
      report.wrong([...here, 'states', at, 'state'], `must differ from every other in its list; ${state} stands twice`);
  });
}

function checkLostSensing({ plan }: Equipment, here: Path, report: Report): void {
  if (plan.lostSensing && !readsSensor(plan.regulation))
    report.wrong([...here, 'lostSensing'], `has no sensing to lose: regulation is ${plan.regulation.kind}`);
}

function readsSensor({ kind }: Regulation): boolean {
  return kind === 'thermostat' || kind === 'level';
}
