import 'server-only';
import { pool } from '../pool';

/** Why the readings of a month are still there, or that they are gone. */
export type Retiring = 'retired' | 'retired-before' | 'too-new' | 'no-part' | 'older-kept' | 'wanted' | 'not-rolled-up';

/** First days of the months of which there is a part of the readings and that were not retired, the oldest first. */
export async function monthsKept(): Promise<string[]> {
  const { rows } = await pool().query<{ month: string }>(
    `SELECT to_char(to_date(c.relname, '"reading_"YYYY_MM'), 'YYYY-MM-DD') AS month
       FROM pg_inherits i JOIN pg_class c ON c.oid = i.inhrelid
      WHERE i.inhparent = 'public.reading'::regclass
        AND to_date(c.relname, '"reading_"YYYY_MM') NOT IN (SELECT "month" FROM reading_retired) ORDER BY 1`,
  );
  return rows.map(({ month }) => month);
}

/**
 * Lets the readings of a month go, where every site that has any in it says so and all of it is rolled up. What an incident
 * cites stays.
 *
 * @param month   its first day, ISO
 */
export async function retireMonth(month: string): Promise<Retiring> {
  const { rows } = await pool().query<{ outcome: Retiring }>('SELECT retire_reading_part($1::date) AS outcome', [
    month,
  ]);
  return rows[0]?.outcome ?? 'no-part';
}

/** The first instant of which all readings are kept, to be asked for beside something else; null: nothing was retired yet. */
export const KEPT_FROM = `(SELECT (max("month") + interval '1 month') AT TIME ZONE 'UTC' FROM reading_retired)`;

/** The first instant of which all readings are kept: what is older is taken in no more. */
export async function keptFrom(): Promise<Date | null> {
  const { rows } = await pool().query<{ at: Date | null }>(`SELECT ${KEPT_FROM} AS at`);
  return rows[0]?.at ?? null;
}
