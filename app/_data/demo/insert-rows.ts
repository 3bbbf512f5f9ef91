import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import type { Transaction } from '../transaction';

/** Rows that go in one statement. */
const AT_ONCE = 2000;

/**
 * Adds many rows of one table to what a site of the demonstration has behind it, in few statements: through Prisma alone they
 * would take longer than all the rest.
 *
 * @param table     its name
 * @param columns   type of each column that is written, by its name
 * @param rows      values by column; dates as they are, JSON as plain values
 */
export async function insertRows<C extends string>(
  tx: Transaction,
  table: string,
  columns: Readonly<Record<C, string>>,
  rows: readonly Record<C, unknown>[],
): Promise<void> {
  const names = Object.keys(columns)
    .map((name) => `"${name}"`)
    .join(', ');
  const typed = Object.entries(columns)
    .map(([name, type]) => `"${name}" ${String(type)}`)
    .join(', ');
  const into = Prisma.raw(`"${table}" (${names}) SELECT ${names}`);
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    const said = JSON.stringify(rows.slice(from, from + AT_ONCE));
    await tx.$executeRaw`INSERT INTO ${into} FROM jsonb_to_recordset(${said}::jsonb) AS given(${Prisma.raw(typed)})`;
  }
}
