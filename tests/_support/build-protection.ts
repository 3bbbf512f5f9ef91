import type { CutOut } from '#core/plans/plan';
import type { Safeguard } from '#core/plans/safeguard';
import { cutOut } from './build-equipment';
import { safeguard } from './build-system';

/** A high cut-out with its probe in a tank, and the safeguard that proves it. */
export function cutOutOf(tank: string, key: string): { line: CutOut; safeguard: Safeguard } {
  return { line: cutOut({ tank, safeguard: key }), safeguard: safeguard({ key }) };
}
