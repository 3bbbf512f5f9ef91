import type { Facility } from '../facility/facility';
import type { Safeguard } from './safeguard';

/** A test that was to be made on a kept round sheet, and was not. */
export interface Missed {
  /** Day from which it could have been made, ISO date: a test on or after it makes it good. */
  opened: string;
  /** Day on which it was missed: from then on the safeguard is unproven. */
  since: string;
}

/** A safeguard as it is judged: with the test that was missed. Never written to a file. */
export interface Judged extends Safeguard {
  missed?: Missed;
}

/**
 * The site as it is judged: each safeguard whose test stood on a sheet that was missed counts as untested, whatever its
 * interval still allows, until it is tested again. Common practice, no source.
 * @param missed   for each sheet by key, the latest time it was missed
 */
export function withMissedTests(facility: Facility, missed: ReadonlyMap<string, Missed>): Facility {
  const byLine = new Map<string, Missed>();
  for (const { key, lines } of facility.sheets ?? []) {
    const one = missed.get(key);
    if (!one) continue;
    for (const { key: line } of lines) {
      const before = byLine.get(line);
      if (!before || before.opened < one.opened) byLine.set(line, one);
    }
  }
  if (byLine.size === 0) return facility;
  const judged = (system: string | null) => (safeguard: Safeguard) => {
    const one = byLine.get(safeguardLine(system, safeguard.key));
    return one ? { ...safeguard, missed: one } : safeguard;
  };
  return {
    ...facility,
    safeguards: facility.safeguards.map(judged(null)),
    systems: facility.systems.map((system) => ({ ...system, safeguards: system.safeguards.map(judged(system.key)) })),
  };
}

/** Whether a line of this key is the test of a safeguard. */
export function isSafeguardLine(key: string): boolean {
  return key.includes('/safeguard/');
}

/** Key of the line of a sheet on which a safeguard is tested. @param system its key; null for one of the site */
export function safeguardLine(system: string | null, safeguard: string): string {
  return `${system ?? '-'}/safeguard/${safeguard}`;
}
