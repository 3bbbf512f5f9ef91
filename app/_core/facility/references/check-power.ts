import type { Facility } from '../facility';
import type { Report } from './report';
import type { SiteScope } from './scope';

/** Circuits, their backing, the generator, and what the way of the alarms is fed from. */
export function checkPower(facility: Facility, scope: SiteScope, report: Report): void {
  const { generator } = facility.site;
  report.safeguard(['site', 'generator', 'safeguard'], generator?.safeguard, 'standby-power', scope.safeguards);
  facility.circuits.forEach((circuit, at) => {
    const path = ['circuits', at] as const;
    const ups = circuit.backedBy.includes('ups');
    if (circuit.upsMin && !ups) report.wrong([...path, 'upsMin'], 'is given, but backedBy does not list ups');
    if (circuit.upsSafeguard !== undefined && !ups)
      report.wrong([...path, 'upsSafeguard'], 'is given, but backedBy does not list ups');
    if (circuit.backedBy.includes('generator') && !generator)
      report.wrong([...path, 'backedBy'], 'lists generator, but site.generator describes none');
    report.safeguard([...path, 'upsSafeguard'], circuit.upsSafeguard, 'standby-power', scope.safeguards);
  });
  facility.monitors.forEach(({ circuit }, at) => {
    if (circuit !== undefined) report.names(['monitors', at, 'circuit'], circuit, 'a circuit', scope.circuits);
  });
}
