import type { Facility } from '../facility/facility';
import type { Instant } from '../time/zone';
import type { RoundSheet } from './round-sheet';
import type { BegunSheet, SheetStanding } from './sheet-standings';
import type { Overdue } from './standings';

/** Kept sheets that are late, and that were missed, at the site and for each system that they look at. */
export interface OverdueSheets {
  all: Overdue;
  bySystem: Map<string, Overdue>;
}

/** @param missedSince   those missed that closed before this are left out */
export function overdueSheets(
  facility: Pick<Facility, 'sheets'>,
  standings: readonly SheetStanding<BegunSheet>[],
  missedSince: Instant,
): OverdueSheets {
  const systems = new Map(facility.sheets?.map((sheet) => [sheet.key, systemsOf(sheet)]));
  const all = { late: 0, missed: 0 };
  const bySystem = new Map<string, Overdue>();
  for (const { sheet, standing, closesAt } of standings) {
    if (standing !== 'late' && !(standing === 'missed' && closesAt >= missedSince)) continue;
    all[standing] += 1;
    for (const system of systems.get(sheet) ?? []) {
      const count = bySystem.get(system) ?? { late: 0, missed: 0 };
      count[standing] += 1;
      bySystem.set(system, count);
    }
  }
  return { all, bySystem };
}

/** Keys of the systems that a sheet looks at: the key of a line that follows from the description begins with its system. */
function systemsOf({ lines }: RoundSheet): Set<string> {
  const named = lines.map((line) => (line.kind === 'described' ? line.key.split('/')[0] : line.system));
  return new Set(named.flatMap((key) => (key === undefined || key === '-' ? [] : [key])));
}
