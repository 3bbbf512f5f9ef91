import type { Path } from '../path';
import type { ToleranceProfile } from '../stock';
import { checkBounds } from './check-bounds';
import type { Report } from './report';

/** Own tolerance profiles: bands the right way round, names that are not those of the default ones. */
export function checkProfiles(
  profiles: readonly ToleranceProfile[],
  defaults: ReadonlySet<string>,
  report: Report,
): void {
  profiles.forEach((profile, at) => {
    const here: Path = ['profiles', at];
    if (defaults.has(profile.key))
      report.wrong([...here, 'key'], `must differ from the default profiles; "${profile.key}" is one of them`);
    for (const band of ['temperatureC', 'salinity'] as const) {
      const [low, high] = profile.usual[band];
      if (low > high) report.wrong([...here, 'usual', band], `must have its lower end first; found ${low} and ${high}`);
    }
    for (const [of, limit] of profile.limits.entries()) checkBounds(limit, [...here, 'limits', of], report);
  });
}
