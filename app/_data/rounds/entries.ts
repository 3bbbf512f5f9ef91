import 'server-only';
import type { Check } from '#core/rounds/check';
import type { Entry, EntryValue } from '#core/rounds/entry';
import { entryValue } from '#shape/rounds/entry-value';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

type Asker = Pick<Transaction, 'roundEntry' | '$queryRaw'>;

/** An entry that is to be added. */
export type NewEntry = Entry & {
  recordedAt: Date;
  /** How far the clock of the telephone was off, s; null or left out when it was not. */
  clockOffS?: number | null;
  /** The line as whoever entered it saw it, where the sheet of the round has none like it. */
  line?: Check | null;
};

/** By when they were made: one that came late does not stand over what was seen after it. A correction bears the time it corrects. */
const BY_TIME = [
  { at: 'asc' },
  { recordedAt: 'asc' },
  { id: 'asc' },
] as const satisfies Prisma.RoundEntryOrderByWithRelationInput[];

/** What was recorded on a round, in order, corrections among it. */
export async function listEntries(siteId: string, roundId: string, asker: Asker = database()): Promise<Entry[]> {
  const rows = await asker.roundEntry.findMany({
    where: { siteId, roundId },
    orderBy: BY_TIME,
  });
  return rows.map(entryOf);
}

/** An entry out of its row. @throws ZodError when what it holds is no valid value any more */
export function entryOf({ checkKey, at, value, ...row }: Prisma.RoundEntryModel): Entry {
  return {
    id: row.id,
    check: checkKey,
    atMs: at.getTime(),
    by: row.by,
    value: value === null ? null : entryValue.parse(value),
    notDone: row.notDone,
    note: row.note,
    supersedes: row.supersedes,
    reason: row.reason,
  };
}

/** Adds entries to a round. One that is there already is left as it is. */
export async function addEntries(
  tx: Transaction,
  siteId: string,
  roundId: string,
  entries: readonly NewEntry[],
): Promise<void> {
  const data = entries.map(({ check, atMs, value, line = null, ...entry }) => ({
    siteId,
    roundId,
    checkKey: check,
    at: new Date(atMs),
    value: value === null ? Prisma.DbNull : (value as Prisma.InputJsonObject),
    line: line === null ? Prisma.DbNull : (line as unknown as Prisma.InputJsonObject),
    ...entry,
  }));
  await tx.roundEntry.createMany({ data, skipDuplicates: true });
}

/** Whether an entry with this id is there, on whichever round of the site. */
export async function isEntryElsewhere(tx: Transaction, siteId: string, id: string): Promise<boolean> {
  return (await tx.roundEntry.findUnique({ where: { siteId_id: { siteId, id } }, select: { id: true } })) !== null;
}

/**
 * What stood on lines of rounds in the month before an instant, for each line: the latest first. A line is looked at on more
 * than one round of the timetable, so all of them count.
 *
 * @param lines   keys of the lines
 * @param many    the most that is told of each line
 */
export async function listBefore(
  siteId: string,
  before: Date,
  lines: readonly string[],
  many: number,
): Promise<Map<string, { value: EntryValue; at: Date }[]>> {
  const until = before.toISOString();
  const rows = await database().$queryRaw<{ line: string; at: Date; value: unknown }[]>`
    SELECT w.line, l.at, l.value
      FROM unnest(${[...lines]}::text[]) AS w(line)
      JOIN LATERAL (
        SELECT e.at, e.value
          FROM round_entry e
         WHERE e.site_id = ${siteId}::uuid AND e.check_key = w.line AND e.value IS NOT NULL
           AND e.at < ${until}::timestamptz AND e.at > ${until}::timestamptz - interval '30 days'
           AND NOT EXISTS (SELECT FROM round_entry c WHERE c.site_id = e.site_id AND c.supersedes = e.id)
         ORDER BY e.at DESC LIMIT ${many}) l ON true`;
  const found = new Map<string, { value: EntryValue; at: Date }[]>();
  for (const { line, at, value } of rows) {
    const list = found.get(line) ?? [];
    list.push({ at, value: entryValue.parse(value) });
    found.set(line, list);
  }
  return found;
}
