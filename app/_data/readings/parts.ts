import 'server-only';
import { pool } from '../pool';

/** Parts known to be there, by the pool that reaches them: asking again at every batch would double the questions. */
const known = new WeakMap<object, Set<string>>();

/**
 * Makes the parts that readings of these instants lie in, where they are not there yet. On a connection of its own: a part
 * stays even when what was to be stored in it does not.
 *
 * @param instants   of readings
 * @throws           for an instant before 1990 or more than 400 days ahead
 */
export async function ensureParts(instants: readonly Date[]): Promise<void> {
  const there = partsKnown();
  const months = new Set<string>();
  for (const instant of instants) {
    const month = monthOf(instant);
    if (!there.has(month)) months.add(month);
  }
  for (const month of [...months].sort()) {
    await pool().query('SELECT make_reading_part($1::date)', [`${month}-01`]);
    there.add(month);
  }
}

/** Forgets what parts there are: somebody took one away. */
export function forgetParts(): void {
  known.delete(pool());
}

/**
 * Whether there is a part for readings of an instant, asked of the database and not remembered.
 *
 * @throws   when the database does not answer
 */
export async function hasPart(instant: Date): Promise<boolean> {
  const { rows } = await pool().query(
    `SELECT FROM pg_inherits i JOIN pg_class c ON c.oid = i.inhrelid
      WHERE i.inhparent = 'public.reading'::regclass AND c.relname = $1`,
    [`reading_${monthOf(instant).replace('-', '_')}`],
  );
  return rows.length > 0;
}

/** First instants of the month of an instant and of those after it, UTC. */
export function monthsFrom(instant: Date, count: number): Date[] {
  return Array.from(
    { length: count },
    (_, ahead) => new Date(Date.UTC(instant.getUTCFullYear(), instant.getUTCMonth() + ahead, 1)),
  );
}

function monthOf(instant: Date): string {
  return instant.toISOString().slice(0, 7);
}

function partsKnown(): Set<string> {
  const there = known.get(pool()) ?? new Set<string>();
  known.set(pool(), there);
  return there;
}
