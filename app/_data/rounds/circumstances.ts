import 'server-only';
import type { Check } from '#core/rounds/check';
import { checkShape } from '#shape/rounds/sheet';
import { database } from '../client';

/** What stands beside an entry. */
export interface Circumstances {
  /** The line as whoever entered it saw it, where the sheet of the round has none like it. */
  line: Check | null;
  /** How far the clock of the telephone was off when it was sent, s; null when it was not. */
  clockOffS: number | null;
  /** Ids of its photos, in order. */
  photos: string[];
}

/** What stands beside the entries of a round, by the entry; of those that have nothing beside them, nothing. One question. */
export async function circumstancesOf(siteId: string, roundId: string): Promise<Map<string, Circumstances>> {
  const rows = await database().$queryRaw<(Omit<Circumstances, 'line'> & { id: string; line: unknown })[]>`
    SELECT e.id, e.line, e.clock_off_s AS "clockOffS",
           ARRAY(SELECT p.id::text FROM round_photo p WHERE p.site_id = e.site_id AND p.entry_id = e.id
                  ORDER BY p.taken_at, p.id) AS photos
      FROM round_entry e
     WHERE e.site_id = ${siteId}::uuid AND e.round_id = ${roundId}::uuid
       AND (e.line IS NOT NULL OR e.clock_off_s IS NOT NULL
            OR EXISTS (SELECT FROM round_photo p WHERE p.site_id = e.site_id AND p.entry_id = e.id))`;
  return new Map(
    rows.map(({ id, line, ...rest }) => [id, { ...rest, line: line === null ? null : checkShape.parse(line) }]),
  );
}
