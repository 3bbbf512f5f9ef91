import type { Path } from '../path';
import type { Report } from './report';

/** A condition needs `above`, `below`, or both with `below` the smaller: outside a band. Otherwise it is always true. */
export function checkBounds({ above, below }: { above?: number; below?: number }, here: Path, report: Report): void {
  if (above === undefined && below === undefined) report.wrong(here, 'must give above or below, or both');
  else if (above !== undefined && below !== undefined && below >= above)
    report.wrong([...here, 'below'], `must be less than above; found below ${below} and above ${above}`);
}
