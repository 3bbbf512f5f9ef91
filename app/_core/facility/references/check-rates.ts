import { FAILS_UNSEEN } from '../system';
import type { Report } from './report';
import { checkUnique, type SystemScope } from './scope';

/** What can fail and is in no list of the description: the calls, the alarms, the timers' clock, the feed. */
const MATTERS = ['calls', 'alarms', 'clock', 'feed'];

/** A rate is of something that is described; that a safeguard fails unseen can be said of safeguards alone. */
export function checkRates({ system, site, path, ...scope }: SystemScope, report: Report): void {
  const rates = system.rates ?? [];
  checkUnique(rates, [...path, 'rates'], report);
  const things = new Set([
    system.key,
    site.key,
    ...scope.tanks.keys(),
    ...scope.equipment.keys(),
    ...scope.sensors.keys(),
    ...system.states.map(({ name }) => name),
    ...site.circuits,
    ...site.rcds,
    ...site.monitors,
    ...MATTERS,
  ]);
  rates.forEach(({ fault, thing }, at) => {
    const here = [...path, 'rates', at, 'thing'];
    if (fault === FAILS_UNSEEN) report.names(here, thing, 'a safeguard', scope.safeguards);
    else report.names(here, thing, 'something of this system or its site that can fail', things);
  });
}
