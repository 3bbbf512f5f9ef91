import 'server-only';
import type { Entry, EntryValue } from '#core/rounds/entry';
import { entryValue } from '#shape/rounds/sheet';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

type Asker = Pick<Transaction, 'roundEntry' | '$queryRaw'>;

/** An entry that is to be added. */
export type NewEntry = Entry & { recordedAt: Date };

/** What was recorded on a round, in order, corrections among it. */
export async function listEntries(siteId: string, roundId: string, asker: Asker = database()): Promise<Entry[]> {
  const rows = await asker.roundEntry.findMany({
    where: { siteId, roundId },
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ checkKey, at, value, ...row }) => ({
    id: row.id,
    check: checkKey,
    atMs: at.getTime(),
    by: row.by,
    value: value === null ? null : entryValue.parse(value),
    notDone: row.notDone,
    note: row.note,
    supersedes: row.supersedes,
    reason: row.reason,
  }));
}

/** Adds entries to a round. One that is there already is left as it is. */
export async function addEntries(
  tx: Transaction,
  siteId: string,
  roundId: string,
  entries: readonly NewEntry[],
): Promise<void> {
  const data = entries.map(({ check, atMs, value, ...entry }) => ({
    siteId,
    roundId,
    checkKey: check,
    at: new Date(atMs),
    value: value === null ? Prisma.DbNull : (value as Prisma.InputJsonObject),
    ...entry,
  }));
  await tx.roundEntry.createMany({ data, skipDuplicates: true });
}

/**
 * What stood on the rounds of the month before one that was due at an instant, for each of its lines: the latest first. A line
 * is looked at on more than one round of the timetable, so all of them count.
 *
 * @param checks   keys of the lines
 * @param many     the most that is told of each line
 */
export async function listBefore(
  siteId: string,
  dueAt: Date,
  checks: readonly string[],
  many: number,
): Promise<Map<string, { value: EntryValue; at: Date }[]>> {
  const rows = await database().$queryRaw<{ check: string; at: Date; value: unknown }[]>`
    SELECT w.check, l.at, l.value
      FROM unnest(${[...checks]}::text[]) AS w(check)
      JOIN LATERAL (
        SELECT e.at, e.value
          FROM round r
          JOIN round_entry e ON e.site_id = r.site_id AND e.round_id = r.id
         WHERE r.site_id = ${siteId}::uuid AND r.due_at < ${dueAt.toISOString()}::timestamptz
           AND r.due_at > ${dueAt.toISOString()}::timestamptz - interval '30 days'
           AND e.check_key = w.check AND e.value IS NOT NULL
           AND NOT EXISTS (SELECT FROM round_entry c WHERE c.site_id = e.site_id AND c.supersedes = e.id)
         ORDER BY r.due_at DESC LIMIT ${many}) l ON true`;
  const found = new Map<string, { value: EntryValue; at: Date }[]>();
  for (const { check, at, value } of rows) {
    const list = found.get(check) ?? [];
    list.push({ at, value: entryValue.parse(value) });
    found.set(check, list);
  }
  return found;
}
