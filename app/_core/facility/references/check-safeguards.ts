import type { Report } from './report';
import type { SystemScope } from './scope';

/** A system's safeguards and the site's go by one set of keys, so that a line never leans on the wrong one. */
export function checkSafeguards({ system, site, path }: SystemScope, report: Report): void {
  system.safeguards.forEach(({ key }, at) => {
    if (site.safeguards.has(key))
      report.wrong(
        [...path, 'safeguards', at, 'key'],
        `must differ from the safeguards of the site; "${key}" is one of them`,
      );
  });
}
