import 'server-only';
import type { Facility } from '#core/facility/facility';
import { sheetOfKept } from '#core/rounds/kept-sheet';
import type { RoundSheet } from '#core/rounds/round-sheet';
import type { Sheet } from '#core/rounds/sheet';

/** A kept sheet as it is walked on a day, with who signs it where it says so. @param day ISO date at the site */
export function walkedSheet(facility: Facility, kept: RoundSheet, day: string): Sheet {
  const { sheet } = sheetOfKept(facility, kept, day);
  const { signedBy, secondSignature } = kept;
  const signing = { ...(signedBy && { by: signedBy }), ...(secondSignature && { second: secondSignature }) };
  return Object.keys(signing).length > 0 ? { ...sheet, signing } : sheet;
}
