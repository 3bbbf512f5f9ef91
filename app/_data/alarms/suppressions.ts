import 'server-only';
import type { SuppressionKind } from '#core/alarms/life/suppression';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** An alarm that is shelved, suppressed by design or out of service now. */
export interface SuppressedRow {
  alarmId: string;
  kind: SuppressionKind;
  /** Id of what began it. */
  runId: string;
  begunAt: Date;
  until: Date;
}

/** What begins it. */
export interface NewSuppression {
  alarmId: string;
  kind: SuppressionKind;
  at: Date;
  /** When it ends by itself. */
  until: Date;
  /** Account, or `local`; left out for what Holdfast did by itself. */
  by?: string;
  /** Account that has it in hand, of one out of service. */
  owner?: string;
  reason?: string;
  detail?: Record<string, unknown>;
}

/** Why it ended: its time was up, somebody ended it, the operating state was over, or the alarm is defined no more. */
export type EndedWhy = 'time' | 'person' | 'state-over' | 'retired';

/** What of a site is suppressed, held until the transaction ends. @param alarmId one alarm alone; all when left out */
export async function holdSuppressed(tx: Transaction, siteId: string, alarmId?: string): Promise<SuppressedRow[]> {
  return await tx.$queryRaw<SuppressedRow[]>`
    SELECT alarm_id AS "alarmId", kind, run_id AS "runId", begun_at AS "begunAt", until
      FROM alarm_suppressed WHERE site_id = ${siteId}::uuid
       AND (${alarmId ?? null}::uuid IS NULL OR alarm_id = ${alarmId ?? null}::uuid)
     ORDER BY alarm_id, kind FOR UPDATE`;
}

/** Begins it. @returns it as it is now */
export async function beginSuppression(
  tx: Transaction,
  siteId: string,
  { alarmId, kind, at, until, by, owner, reason, detail = {} }: NewSuppression,
): Promise<SuppressedRow> {
  const id = newId();
  const said = {
    by: by ?? null,
    owner: owner ?? null,
    reason: reason ?? null,
    detail: detail as Prisma.InputJsonObject,
  };
  await tx.alarmSuppression.create({
    data: { siteId, id, runId: id, alarmId, kind, what: 'begun', at, until, ...said },
  });
  const row = { alarmId, kind, runId: id, begunAt: at, until };
  await tx.alarmSuppressed.create({ data: { siteId, ...row } });
  return row;
}

/** Ends it. */
export async function endSuppression(
  tx: Transaction,
  siteId: string,
  { alarmId, kind, runId }: SuppressedRow,
  { at, why, by, note }: { at: Date; why: EndedWhy; by?: string; note?: string },
): Promise<void> {
  const said = { by: by ?? null, reason: note ?? null, detail: { why } };
  await tx.alarmSuppression.create({
    data: { siteId, id: newId(), runId, alarmId, kind, what: 'ended', at, ...said },
  });
  await tx.alarmSuppressed.delete({ where: { siteId_runId: { siteId, runId } } });
}

/** An alarm that is suppressed now, with what was said when it was. */
export interface SuppressedTold extends SuppressedRow {
  siteId: string;
  name: string;
  system: { id: string; key: string; name: string };
  by: string | null;
  owner: string | null;
  reason: string | null;
  /** The operating state it is suppressed in by design. */
  state: string | null;
  /** A time it was raised that is still active; null while it is not. */
  active: string | null;
}

/** What is suppressed at these sites, what ends first before the rest. */
export async function listSuppressed(siteIds: readonly string[]): Promise<SuppressedTold[]> {
  return await database().$queryRaw<SuppressedTold[]>`
    SELECT w.site_id AS "siteId", w.alarm_id AS "alarmId", w.kind, w.run_id AS "runId", w.begun_at AS "begunAt", w.until,
           d.name, jsonb_build_object('id', y.id, 'key', y.key, 'name', y.name) AS system,
           b.by, b.owner, b.reason, b.detail->>'state' AS state,
           (SELECT o.occurrence_id FROM alarm_open o
             WHERE o.site_id = w.site_id AND o.alarm_id = w.alarm_id AND o.active LIMIT 1) AS active
      FROM alarm_suppressed w
      JOIN alarm_definition d ON d.site_id = w.site_id AND d.id = w.alarm_id
      JOIN system y ON y.site_id = d.site_id AND y.id = d.system_id
      JOIN alarm_suppression b ON b.site_id = w.site_id AND b.id = w.run_id
     WHERE w.site_id = ANY(${[...siteIds]}::uuid[])
     ORDER BY w.until, d.name`;
}

/** Something that is suppressed now, by what began it; null when it is not, or no longer. */
export async function findSuppressed(siteId: string, runId: string): Promise<SuppressedRow | null> {
  const row = await database().alarmSuppressed.findUnique({ where: { siteId_runId: { siteId, runId } } });
  return row && { ...row, kind: row.kind as SuppressionKind };
}
