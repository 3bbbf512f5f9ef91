import type { TankRole } from '../system';
import type { Report } from './report';
import type { SystemScope } from './scope';

/** Roles of tanks in which animals are kept. */
const HOLDS_ANIMALS: ReadonlySet<TankRole> = new Set(['display', 'holding', 'quarantine', 'nursery', 'sump']);

/** Animals live in a tank of the system that can hold them, judged by a profile that exists. */
export function checkStock({ system, path, tanks, site }: SystemScope, report: Report): void {
  system.stock.forEach((stock, at) => {
    const here = [...path, 'stock', at];
    report.names([...here, 'tank'], stock.tank, 'a tank of this system', tanks);
    const role = tanks.get(stock.tank)?.role;
    if (role && !HOLDS_ANIMALS.has(role))
      report.wrong([...here, 'tank'], `must be a tank that can hold animals; "${stock.tank}" is a ${role} tank`);
    if (stock.profile !== undefined)
      report.names([...here, 'profile'], stock.profile, 'a tolerance profile', site.profiles);
  });
}
