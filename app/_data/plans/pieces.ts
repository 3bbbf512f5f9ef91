import 'server-only';
import type { Plan } from '#core/plans/plan';
import { planShape } from '#shape/facility/plan';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A living piece of equipment with what becomes of its plan. */
export interface PieceOfPlan {
  system: string;
  equipment: string;
  /** The version in force, since when, and by whom it was put there. */
  inForce: { version: number; since: Date; by: string | null };
  /** Versions that wait: for their author to submit them, or for somebody to put them into force. */
  open: { version: number; status: 'draft' | 'submitted'; since: Date; by: string | null; writtenBy: string | null }[];
}

type Raw<T> = { [K in keyof T]: T[K] extends Date ? string : T[K] };

/** What becomes of the plans of all living equipment of a site, in the order of the file. */
export async function listPieces(siteId: string): Promise<PieceOfPlan[]> {
  const rows = await database().$queryRaw<
    {
      system: string;
      equipment: string;
      inForce: Raw<PieceOfPlan['inForce']>;
      open: Raw<PieceOfPlan['open'][number]>[];
    }[]
  >`
    SELECT s.key AS system, e.key AS equipment,
           jsonb_build_object('version', p.version, 'since', f.at, 'by', f.by) AS "inForce",
           (SELECT coalesce(jsonb_agg(jsonb_build_object('version', o.version, 'status', o.status, 'since', o.at,
                     'by', o.by, 'writtenBy', o.written_by) ORDER BY o.version), '[]')
              FROM (SELECT DISTINCT ON (t.version) t.version, t.status, t.at, t.by, v.written_by
                      FROM plan_status t
                      JOIN plan_version v USING (site_id, equipment_id, version)
                     WHERE t.site_id = e.site_id AND t.equipment_id = e.id
                     ORDER BY t.version, array_position(ARRAY['withdrawn', 'superseded', 'in-force', 'submitted', 'draft'], t.status)) o
             WHERE o.status IN ('draft', 'submitted')) AS open
      FROM equipment e
      JOIN system s ON s.site_id = e.site_id AND s.id = e.system_id
      JOIN plan_in_force p ON p.site_id = e.site_id AND p.equipment_id = e.id
      JOIN plan_status f ON f.site_id = p.site_id AND f.equipment_id = p.equipment_id AND f.version = p.version
                        AND f.status = 'in-force'
     WHERE e.site_id = ${siteId}::uuid AND e.retired_at IS NULL
     ORDER BY s.ordinal, e.ordinal`;
  return rows.map(({ inForce, open, ...piece }) => ({
    ...piece,
    inForce: { ...inForce, since: new Date(inForce.since) },
    open: open.map((one) => ({ ...one, since: new Date(one.since) })),
  }));
}

/** Id of a living piece of equipment; null when there is none. */
export async function findEquipmentId(
  siteId: string,
  systemId: string,
  key: string,
  asker: Pick<Transaction, 'equipment'> = database(),
): Promise<string | null> {
  const where = { siteId, systemId, key, retiredAt: null };
  return (await asker.equipment.findFirst({ where, select: { id: true } }))?.id ?? null;
}

/** The plan a piece of equipment ran by at some instant. */
export interface PlanThen {
  /** The equipment by its key and as it is called now. */
  equipment: string;
  name: string;
  version: number;
  plan: Plan;
  since: Date;
  /** When another took its place; null when it is still in force. */
  until: Date | null;
}

/**
 * The plans that were in force in a system at an instant, also of equipment that was retired since.
 *
 * @returns   in the order of the file; equipment without a plan in force then is left out
 */
export async function listPlansAt(siteId: string, systemId: string, at: Date): Promise<PlanThen[]> {
  const rows = await database().$queryRaw<(Omit<PlanThen, 'plan'> & { body: unknown })[]>`
    SELECT e.key AS equipment, e.name, v.version, v.body, f.at AS since, u.at AS until
      FROM equipment e
      JOIN plan_version v ON v.site_id = e.site_id AND v.equipment_id = e.id
      JOIN plan_status f ON f.site_id = v.site_id AND f.equipment_id = v.equipment_id AND f.version = v.version
                        AND f.status = 'in-force'
      LEFT JOIN plan_status u ON u.site_id = v.site_id AND u.equipment_id = v.equipment_id AND u.version = v.version
                             AND u.status = 'superseded'
     WHERE e.site_id = ${siteId}::uuid AND e.system_id = ${systemId}::uuid
       AND f.at <= ${at.toISOString()}::timestamptz AND (u.at IS NULL OR u.at > ${at.toISOString()}::timestamptz)
       AND (e.retired_at IS NULL OR e.retired_at > ${at.toISOString()}::timestamptz)
     ORDER BY e.ordinal, e.key`;
  return rows.map(({ body, ...then }) => ({ ...then, plan: planShape.parse(body) }));
}
