import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import { MOST_ROWS, type Window } from './window';

/** A state that was begun, put off or ended near an incident. */
export interface NearState {
  id: string;
  system: { name: string };
  state: string;
  kind: string;
  at: Date;
  until: Date | null;
  by: string;
  note: string | null;
}

/** A plan version that came into force near an incident. */
export interface NearPlan {
  equipmentId: string;
  equipment: string;
  version: number;
  at: Date;
  by: string | null;
  reason: string | null;
}

/** What was done to a safeguard near an incident. */
export interface NearSafeguard {
  seq: number;
  kind: string;
  at: Date;
  by: string | null;
  name: string;
  result: string | null;
  until: string | null;
  why: string | null;
}

/** States within a window, and those that were begun before it and not yet ended. */
export async function nearStates({ siteId, systemId, from, to }: Window): Promise<NearState[]> {
  const select = { id: true, state: true, kind: true, at: true, until: true, by: true, note: true } as const;
  const where = { siteId, ...(systemId === null ? {} : { systemId }) };
  const rows = await database().stateEvent.findMany({
    where: { ...where, at: { lt: to } },
    select: { ...select, runId: true, system: { select: { name: true } } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: MOST_ROWS,
  });
  const endedBefore = new Set(rows.filter(({ kind, at }) => kind === 'ended' && at < from).map(({ runId }) => runId));
  return rows.filter(({ at, runId }) => at >= from || !endedBefore.has(runId)).reverse();
}

/** Plans of the equipment of the system that came into force within a window. */
export async function nearPlans({ siteId, systemId, from, to }: Window): Promise<NearPlan[]> {
  const rows = await database().planStatus.findMany({
    where: {
      siteId,
      status: 'in-force',
      at: { gte: from, lt: to },
      ...(systemId === null ? {} : { plan: { equipment: { systemId } } }),
    },
    include: { plan: { select: { reason: true, equipment: { select: { name: true } } } } },
    orderBy: { at: 'asc' },
    take: MOST_ROWS,
  });
  return rows.map(({ equipmentId, version, at, by, plan }) => ({
    equipmentId,
    version,
    at,
    by,
    equipment: plan.equipment.name,
    reason: plan.reason,
  }));
}

/** Safeguards of the system and of the site that were taken off, put back or tested within a window. */
export async function nearSafeguards({ siteId, systemId, from, to }: Window): Promise<NearSafeguard[]> {
  const ours =
    systemId === null ? Prisma.empty : Prisma.sql`AND (s.system_id IS NULL OR s.system_id = ${systemId}::uuid)`;
  return await database().$queryRaw<NearSafeguard[]>`
    SELECT r.seq, r.kind, r.at, r.body->>'by' AS by, s.name, r.body->>'result' AS result, r.body->>'until' AS until,
           r.body->>'why' AS why
      FROM record r JOIN safeguard s ON s.site_id = r.site_id AND s.id::text = r.body->>'safeguard'
     WHERE r.site_id = ${siteId}::uuid AND r.kind IN ('safeguard-off', 'safeguard-back', 'safeguard-tested')
       AND r.at >= ${from} AND r.at < ${to} ${ours}
     ORDER BY r.seq LIMIT ${MOST_ROWS}`;
}
