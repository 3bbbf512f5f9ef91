import type { Report } from './report';
import type { SystemScope } from './scope';

/** Tanks of one system: at most one sump, fields only where their role has a use for them. */
export function checkTanks({ system, path, safeguards }: SystemScope, report: Report): void {
  if (system.tanks.length === 0) report.absent([...path, 'tanks'], 'must list at least one tank');
  let sump: string | null = null;
  system.tanks.forEach((tank, at) => {
    const here = [...path, 'tanks', at];
    if (tank.key === 'mains')
      report.wrong([...here, 'key'], 'must not be "mains", which stands for the water main in a top-off');
    if (tank.role === 'sump') {
      if (sump !== null) report.wrong([...here, 'role'], `must not be sump again; "${sump}" is this system's sump`);
      sump ??= tank.key;
    } else if (tank.pumpDryMm) report.wrong([...here, 'pumpDryMm'], 'belongs to a sump only');
    if (tank.returnShare && (tank.role === 'sump' || tank.role === 'reservoir'))
      report.wrong([...here, 'returnShare'], `does not belong to a ${tank.role}, which no return feeds`);
    if (tank.siphonSafeguard !== undefined && !tank.siphonBreakMm)
      report.wrong([...here, 'siphonSafeguard'], 'is given, but siphonBreakMm describes no siphon break');
    report.safeguard([...here, 'siphonSafeguard'], tank.siphonSafeguard, 'siphon-break', safeguards);
  });
}
