import 'server-only';
import { canonicalText } from '../canonical';
import { type Author, addStatuses, addVersions } from '../plans/add';
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
 * Nothing that was written before is touched; drafts stay drafts.
 *
 * @param plans    the plan each piece of equipment is to run by, by its id
 * @param author   who says so, and why
 * @param at       the instant
 * @returns        those that came into force
 */
export async function bringIntoForce(
  tx: Transaction,
  siteId: string,
  plans: ReadonlyMap<string, Fields>,
  author: Author,
  at: Date,
): Promise<PlanInForce[]> {
  const before = new Map((await findLatest(tx, siteId)).map((plan) => [plan.equipmentId, plan]));
  const superseded: Pick<PlanInForce, 'equipmentId' | 'version'>[] = [];
  const news = [...plans].flatMap(([equipmentId, body]) => {
    const old = before.get(equipmentId);
    if (old?.version && canonicalText(old.body) === canonicalText(body)) return [];
    if (old?.version) superseded.push({ equipmentId, version: old.version });
    return [{ equipmentId, version: (old?.latest ?? 0) + 1, body }];
  });
  await addVersions(tx, siteId, news, author, at);
  await addStatuses(tx, siteId, news, 'in-force', author, at);
  await addStatuses(tx, siteId, superseded, 'superseded', author, at);
  return news;
}

/** What is in force of each living piece of equipment, if anything is, and the latest version there is, drafts too. */
interface Latest {
  equipmentId: string;
  version: number | null;
  body: Fields | null;
  latest: number;
}

async function findLatest(tx: Transaction, siteId: string): Promise<Latest[]> {
  return await tx.$queryRaw<Latest[]>`
    SELECT e.id AS "equipmentId", p.version, p.body, max(v.version) AS latest
      FROM equipment e
      JOIN plan_version v ON v.site_id = e.site_id AND v.equipment_id = e.id
      LEFT JOIN plan_in_force p ON p.site_id = e.site_id AND p.equipment_id = e.id
     WHERE e.site_id = ${siteId}::uuid AND e.retired_at IS NULL
     GROUP BY e.id, p.version, p.body`;
}
