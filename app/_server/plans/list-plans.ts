import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { listPieces, type PieceOfPlan } from '#data/plans/pieces';
import { sitePlace } from '#shape/reviews/case-place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

export const listPlansShape = sitePlace;

/** What becomes of the plan of one piece of equipment. */
export interface PlanEntry extends Omit<PieceOfPlan, 'open'> {
  open: (PieceOfPlan['open'][number] & { isOwn: boolean })[];
}

/** The plans of a site. */
export interface PlansPage {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  /** Every living piece of equipment, in the order of the file. */
  entries: PlanEntry[];
}

/** The plans of a site: what is in force since when, and what waits for whom. Persons stand in it by name. */
export async function listPlans(
  who: Who,
  { site }: z.output<typeof listPlansShape>,
): Promise<Result<PlansPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const pieces = await listPieces(entry.id);
  const ids = pieces.flatMap(({ inForce, open }) => [
    inForce.by,
    ...open.flatMap(({ by, writtenBy }) => [by, writtenBy]),
  ]);
  const names = await accountNames(ids.filter((id) => id !== null));
  const named = (id: string | null) => (id === null ? null : (names.get(id) ?? null));
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    facility: stored.facility,
    entries: pieces.map(({ inForce, open, ...piece }) => ({
      ...piece,
      inForce: { ...inForce, by: named(inForce.by) },
      open: open.map((one) => ({
        ...one,
        isOwn: one.writtenBy === who.id,
        by: named(one.by),
        writtenBy: named(one.writtenBy),
      })),
    })),
  });
}
