import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import { MOST_ROWS, type Window } from './window';

/** What somebody recorded on a round near an incident, with the line of the sheet it stands on. */
export interface NearRoundEntry {
  id: string;
  round: string;
  at: Date;
  by: string;
  /** The line of the sheet; null for one that the sheet does not have. */
  what: string | null;
  kind: string | null;
  quantity: string | null;
  value: unknown;
  notDone: string | null;
  note: string | null;
  isCorrected: boolean;
  /** Ids of its photos, in order. */
  photos: string[];
}

/** Entries of rounds within a window that are about the system, or about the site itself. */
export async function nearRoundEntries({ siteId, systemId, from, to }: Window): Promise<NearRoundEntry[]> {
  const ours =
    systemId === null
      ? Prisma.empty
      : Prisma.sql`AND (c.line IS NULL OR c.line->'about'->>'system' IS NULL OR c.line->'about'->>'system' =
          (SELECT key FROM system WHERE site_id = ${siteId}::uuid AND id = ${systemId}::uuid))`;
  return await database().$queryRaw<NearRoundEntry[]>`
    SELECT e.id, r.name AS round, e.at, e.by, c.line->>'what' AS what, c.line->>'kind' AS kind,
           c.line->>'quantity' AS quantity, e.value, e.not_done AS "notDone", e.note,
           EXISTS (SELECT FROM round_entry l WHERE l.site_id = e.site_id AND l.supersedes = e.id) AS "isCorrected",
           ARRAY(SELECT p.id::text FROM round_photo p WHERE p.site_id = e.site_id AND p.entry_id = e.id
                  ORDER BY p.taken_at, p.id) AS photos
      FROM round_entry e
      JOIN round r ON r.site_id = e.site_id AND r.id = e.round_id
      LEFT JOIN LATERAL (
        SELECT line FROM jsonb_path_query(r.sheet, '$.places[*].checks[*]') line WHERE line->>'key' = e.check_key LIMIT 1
      ) c ON true
     WHERE e.site_id = ${siteId}::uuid AND e.at >= ${from} AND e.at < ${to} ${ours}
     ORDER BY e.at, e.id LIMIT ${MOST_ROWS}`;
}
