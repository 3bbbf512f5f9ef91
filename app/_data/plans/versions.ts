import 'server-only';
import type { Plan } from '#core/plans/plan';
import { planShape } from '#shape/facility/plan';
import { database } from '../client';
import type { Transaction } from '../transaction';
import type { PlanStatusName } from './add';

/** Something that a version of a plan came to be. */
export interface PlanMoment {
  status: PlanStatusName;
  at: Date;
  /** Account, or `local`; null for what is older than accounts. */
  by: string | null;
  reason: string | null;
}

/** One version of the plan of a piece of equipment, with its life. */
export interface StoredVersion {
  version: number;
  plan: Plan;
  writtenAt: Date;
  writtenBy: string | null;
  /** Why it was written. */
  reason: string | null;
  /** What it came to be, in order. */
  life: PlanMoment[];
  /** What it is now. */
  status: PlanStatusName;
}

/** The order in which a version comes to be things; where it ends comes last. */
const ORDER: readonly PlanStatusName[] = ['draft', 'submitted', 'in-force', 'superseded', 'withdrawn'];

/**
 * All versions of the plan of a piece of equipment.
 *
 * @param asker   the transaction to ask in; the client itself when left out
 * @returns       the latest first
 * @throws        ZodError when what is stored is no plan any more
 */
export async function listVersions(
  siteId: string,
  equipmentId: string,
  asker: Pick<Transaction, 'planVersion'> = database(),
): Promise<StoredVersion[]> {
  const rows = await asker.planVersion.findMany({
    where: { siteId, equipmentId },
    include: { statuses: true },
    orderBy: { version: 'desc' },
  });
  return rows.map(({ version, body, validFrom, writtenBy, reason, statuses }) => {
    const life = statuses
      .map((one) => ({ status: one.status as PlanStatusName, at: one.at, by: one.by, reason: one.reason }))
      .sort((a, b) => ORDER.indexOf(a.status) - ORDER.indexOf(b.status));
    const status = life.at(-1)?.status;
    if (!status) throw new Error(`Version ${version} of the plan of ${equipmentId} was never said to be anything`);
    return { version, plan: planShape.parse(body), writtenAt: validFrom, writtenBy, reason, life, status };
  });
}
