import type { Report } from './report';
import type { SystemScope } from './scope';

/** Each operating state is described once, and ended by a safeguard of the right kind if by any. */
export function checkStates({ system, path, safeguards }: SystemScope, report: Report): void {
  system.states.forEach(({ name, endSafeguard }, at) => {
    const here = [...path, 'states', at];
    if (system.states.findIndex((state) => state.name === name) < at)
      report.wrong([...here, 'name'], `must differ from every other in its list; ${name} stands twice`);
    report.safeguard([...here, 'endSafeguard'], endSafeguard, 'state-end', safeguards);
  });
}
