import 'server-only';
import type { Prisma } from '../../../prisma/generated/client';
import { canonicalText } from '../canonical';
import type { Transaction } from '../transaction';
import type { Fields } from './form';

/** A plan that came into force. */
export interface PlanInForce {
  equipmentId: string;
  version: number;
  /** In the form of the facility file. */
  body: Fields;
}

/**
 * Brings plans into force: a plan that differs from the one in force becomes the next version, and that one is superseded.
 * Nothing that was written before is touched.
 *
 * @param plans   the plan each piece of equipment is to run by, by its id
 * @param at      the instant
 * @returns       those that came into force
 */
export async function bringIntoForce(
  tx: Transaction,
  siteId: string,
  plans: ReadonlyMap<string, Fields>,
  at: Date,
): Promise<PlanInForce[]> {
  const before = new Map((await findInForce(tx, siteId)).map((plan) => [plan.equipmentId, plan]));
  const news = [...plans].flatMap(([equipmentId, body]) => {
    const old = before.get(equipmentId);
    if (old && canonicalText(old.body) === canonicalText(body)) return [];
    return [{ equipmentId, version: (old?.version ?? 0) + 1, body }];
  });
  await tx.planVersion.createMany({
    data: news.map(({ body, ...plan }) => ({ siteId, ...plan, body: body as Prisma.InputJsonObject, validFrom: at })),
  });
  const statuses = news.flatMap(({ equipmentId, version }) => {
    const came = { siteId, equipmentId, version, status: 'in-force', at };
    return version === 1 ? [came] : [came, { ...came, version: version - 1, status: 'superseded' }];
  });
  await tx.planStatus.createMany({ data: statuses });
  return news;
}

async function findInForce(tx: Transaction, siteId: string): Promise<PlanInForce[]> {
  return await tx.$queryRaw<PlanInForce[]>`
    SELECT p.equipment_id AS "equipmentId", p.version, p.body
      FROM plan_in_force p
      JOIN equipment e ON e.site_id = p.site_id AND e.id = p.equipment_id AND e.retired_at IS NULL
     WHERE p.site_id = ${siteId}::uuid`;
}
