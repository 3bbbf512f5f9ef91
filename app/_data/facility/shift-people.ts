import 'server-only';
import type { Transaction } from '../transaction';

/** Who is on duty in which shift, by id, in the order of the file. */
export interface OnDuty {
  shiftId: string;
  ordinal: number;
  personId: string;
}

/**
 * Makes the duties of a site be these.
 *
 * @returns whether anything changed
 */
export async function replaceShiftPeople(tx: Transaction, siteId: string, wanted: readonly OnDuty[]): Promise<boolean> {
  const held = await tx.shiftPerson.findMany({ where: { siteId, shift: { retiredAt: null } } });
  const said = ({ shiftId, ordinal, personId }: OnDuty) => `${shiftId} ${ordinal} ${personId}`;
  const before = new Set(held.map(said));
  if (before.size === wanted.length && wanted.every((duty) => before.has(said(duty)))) return false;
  const shifts = [...new Set([...held, ...wanted].map(({ shiftId }) => shiftId))];
  await tx.shiftPerson.deleteMany({ where: { siteId, shiftId: { in: shifts } } });
  await tx.shiftPerson.createMany({ data: wanted.map((duty) => ({ siteId, ...duty })) });
  return true;
}
