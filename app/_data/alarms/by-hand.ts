import 'server-only';
import { type KeptDefinition, keptDefinition } from '#shape/alarms/kept-definition';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** An alarm that somebody raised by hand. */
export interface HandAlarm {
  id: string;
  systemId: string;
  definition: Pick<KeptDefinition, 'answeredBy' | 'escalateAfterMin' | 'latched'>;
  kept: KeptDefinition;
}

/**
 * Keeps an alarm that somebody raised by hand, so that it has a life like any other. It is of one time alone: no description
 * has it, so it is retired from the first.
 *
 * @returns   whether it is new: of two that are sent at once the second waits for the first, and is none
 */
export async function addByHand(
  tx: Transaction,
  siteId: string,
  { id, systemId, kept }: HandAlarm,
  at: Date,
): Promise<boolean> {
  const { key, name, ...detail } = kept;
  const data = { siteId, id, systemId, key, name, ordinal: 0, retiredAt: at };
  const added = await tx.alarmDefinition.createMany({
    data: [{ ...data, detail: detail as unknown as Prisma.InputJsonObject }],
    skipDuplicates: true,
  });
  return added.count > 0;
}

/** The time an alarm was raised by hand, and who raised it; null when nothing was called under this id. */
export async function findByHand(
  tx: Transaction,
  siteId: string,
  id: string,
): Promise<{ occurrence: string; by: string | null } | null> {
  const [found] = await tx.$queryRaw<{ occurrence: string; by: string | null }[]>`
    SELECT id AS occurrence, definition->'on'->>'by' AS by FROM alarm_occurrence
     WHERE site_id = ${siteId}::uuid AND alarm_id = ${id}::uuid LIMIT 1`;
  return found ?? null;
}

/** Alarms of a site that were raised by hand and want something still, by their ids. */
export async function openByHand(tx: Transaction, siteId: string): Promise<Map<string, HandAlarm>> {
  const rows = await tx.$queryRaw<{ id: string; systemId: string; kept: unknown }[]>`
    SELECT w.alarm_id AS id, w.system_id AS "systemId", o.definition AS kept
      FROM alarm_open w JOIN alarm_occurrence o ON o.site_id = w.site_id AND o.id = w.occurrence_id
     WHERE w.site_id = ${siteId}::uuid AND o.definition->'on'->>'kind' = 'by-hand'`;
  return new Map(
    rows.map(({ id, systemId, kept: text }) => {
      const kept = keptDefinition.parse(text);
      return [id, { id, systemId, definition: kept, kept }];
    }),
  );
}

/** Id of a system of a site by its key; null when there is none. */
export async function systemIdOf(tx: Transaction, siteId: string, key: string): Promise<string | null> {
  const found = await tx.system.findFirst({ where: { siteId, key, retiredAt: null }, select: { id: true } });
  return found?.id ?? null;
}

/** The systems of a site, in the order of its description. */
export async function listSystems(siteId: string): Promise<{ key: string; name: string }[]> {
  const where = { siteId, retiredAt: null };
  return await database().system.findMany({ where, select: { key: true, name: true }, orderBy: { ordinal: 'asc' } });
}
