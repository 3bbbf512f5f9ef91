import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { ShownLine } from '#core/handover/shown';
import { overdueCalibrations } from '#core/rounds/calibrated';
import type { RoundsStanding } from '../rounds/rounds-standing';
import { iso, line } from './sections';

/** ms back that missed rounds are told of. */
const DAY_MS = 86_400_000;

/**
 * Rounds and sheets that are late, or were missed within a day, and instruments whose calibration counts no longer.
 *
 * @param facility   as it is judged, with what rounds say of calibrations
 * @param today      ISO date at the site
 */
export function overdueSection(
  facility: Facility,
  { walks, sheets }: Pick<RoundsStanding, 'walks' | 'sheets'>,
  today: string,
  at: Date,
): ShownLine[] {
  const since = at.getTime() - DAY_MS;
  const names = new Map(facility.sheets?.map(({ key, name }) => [key, name]));
  const due = [
    ...walks.map((walk) => ({ ...walk, name: walk.slot.name })),
    ...sheets.map((one) => ({ ...one, name: names.get(one.sheet) ?? one.sheet })),
  ];
  return [
    ...due
      .filter(({ standing, closesAt }) => standing === 'late' || (standing === 'missed' && closesAt >= since))
      .map(({ name, standing, dueAt }) => line(name, { more: standing, since: iso(dueAt), isAbnormal: true })),
    ...overdueCalibrations(facility, today).map(({ sensor, system, due: day }) =>
      line(`Calibration of ${sensor}`, { where: system, more: `counted until ${day}`, isAbnormal: true }),
    ),
  ];
}
