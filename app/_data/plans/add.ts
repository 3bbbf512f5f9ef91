import 'server-only';
import type { Prisma } from '../../../prisma/generated/client';
import type { Fields } from '../facility/form';
import type { Transaction } from '../transaction';

/** What a version of a plan can be. */
export type PlanStatusName = 'draft' | 'submitted' | 'in-force' | 'superseded' | 'withdrawn';

/** Who did something to a plan, and why. */
export interface Author {
  /** Account, or `local`. */
  by: string;
  reason: string | null;
}

/** Version of the plan of a piece of equipment. */
export interface VersionOf {
  equipmentId: string;
  version: number;
}

/** Adds versions of plans. What they are is said by `addStatuses`. */
export async function addVersions(
  tx: Transaction,
  siteId: string,
  versions: readonly (VersionOf & { body: Fields })[],
  { by, reason }: Author,
  at: Date,
): Promise<void> {
  await tx.planVersion.createMany({
    data: versions.map(({ equipmentId, version, body }) => ({
      siteId,
      equipmentId,
      version,
      body: body as Prisma.InputJsonObject,
      validFrom: at,
      writtenBy: by,
      reason,
    })),
  });
}

/** Says what versions have come to be. Each comes to be the same thing once. */
export async function addStatuses(
  tx: Transaction,
  siteId: string,
  versions: readonly VersionOf[],
  status: PlanStatusName,
  { by, reason }: Author,
  at: Date,
): Promise<void> {
  const data = versions.map(({ equipmentId, version }) => ({ siteId, equipmentId, version, status, at, by, reason }));
  await tx.planStatus.createMany({ data });
}
