import type { Facility } from '../facility/facility';
import type { Check, DosesCheck, UsedCheck } from './check';
import { describedPlaces } from './described';
import { sheetOfKept } from './kept-sheet';
import type { RoundSheet } from './round-sheet';
import { checksOf } from './sheet';

/** A line on which it is noted what was used since somebody last looked. */
export type UsedLine = UsedCheck | DosesCheck;

/**
 * Every line of a site on which it is noted what was used: those that follow from the description, and those of its kept sheets, which
 * say more of what is usual. Each once.
 *
 * @param day   ISO date
 */
export function usedLines(facility: Facility, day: string): UsedLine[] {
  const places = describedPlaces(facility, day);
  const kept = (facility.sheets ?? [])
    .filter(asksUse)
    .flatMap((sheet) => checksOf(sheetOfKept(facility, sheet, day, places).sheet));
  const lines = new Map<string, UsedLine>();
  for (const check of [...places.flatMap(({ checks }) => checks), ...kept]) {
    const known = lines.get(check.key);
    if (isUsed(check) && (!known || check.perDay)) lines.set(check.key, check);
  }
  return [...lines.values()];
}

function isUsed(check: Check): check is UsedLine {
  return check.kind === 'used' || check.kind === 'doses';
}

/** Whether a sheet has such a line: most have none, and need not be made for it. */
function asksUse({ lines }: RoundSheet): boolean {
  return lines.some(({ kind, key }) => kind === 'doses' || (kind === 'described' && key.endsWith('/used')));
}
