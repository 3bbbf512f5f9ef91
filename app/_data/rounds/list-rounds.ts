import 'server-only';
import { groupBy } from '#core/group-by';
import { database } from '../client';

/** A round that was begun, with who signed and who looked again. */
export interface RoundRow {
  id: string;
  /** Key of its slot; null for one walked besides the timetable. */
  slot: string | null;
  /** Key of the kept sheet that it walks; null for one of the timetable or besides. */
  sheet: string | null;
  name: string;
  dueAt: Date;
  begunAt: Date;
  begunBy: string;
  signed: { at: Date; by: string; note: string | null } | null;
  secondLook: { at: Date; by: string; note: string | null } | null;
  /** Whether it is signed, and somebody else is to sign it as well. */
  wantsSecond: boolean;
}

type Raw = Omit<RoundRow, 'signed' | 'secondLook'> & Record<'signed' | 'secondLook', Signature | null>;
interface Signature {
  at: string;
  by: string;
  note: string | null;
}

/**
 * Rounds of a site that were due within some time, the latest first. One question.
 *
 * @param besides   ids of rounds that are told as well, whenever they were due
 */
export async function listRounds(
  siteId: string,
  from: Date,
  to: Date,
  besides: readonly string[] = [],
): Promise<RoundRow[]> {
  return (await listRoundsOf([siteId], from, to, besides)).get(siteId) ?? [];
}

/** The same of several sites, in one question for all of them; a site that has none is left out. */
export async function listRoundsOf(
  siteIds: readonly string[],
  from: Date,
  to: Date,
  besides: readonly string[] = [],
): Promise<ReadonlyMap<string, RoundRow[]>> {
  const rows = await database().$queryRaw<(Raw & { siteId: string })[]>`
    SELECT r.site_id AS "siteId", r.id, s.key AS slot, k.key AS sheet, r.name, r.due_at AS "dueAt", r.begun_at AS "begunAt", r.begun_by AS "begunBy",
           (SELECT jsonb_build_object('at', g.at, 'by', g.by, 'note', g.note) FROM round_signature g
             WHERE g.site_id = r.site_id AND g.round_id = r.id AND g.kind = 'signed' ORDER BY g.at LIMIT 1) AS signed,
           (SELECT jsonb_build_object('at', g.at, 'by', g.by, 'note', g.note) FROM round_signature g
             WHERE g.site_id = r.site_id AND g.round_id = r.id AND g.kind = 'second-look'
               AND NOT EXISTS (SELECT FROM taken_back b WHERE b.site_id = g.site_id AND b.what = 'second-look' AND b.about = g.id)
             ORDER BY g.at LIMIT 1) AS "secondLook",
           (r.sheet @? '$ ? (@.signing.second == true || @.places[*].checks[*].secondSignature == true)'
            AND EXISTS (SELECT FROM round_signature g WHERE g.site_id = r.site_id AND g.round_id = r.id AND g.kind = 'signed')
            AND NOT EXISTS (SELECT FROM round_signature g WHERE g.site_id = r.site_id AND g.round_id = r.id AND g.kind = 'second')) AS "wantsSecond"
      FROM round r
      LEFT JOIN round_slot s ON s.site_id = r.site_id AND s.id = r.slot_id
      LEFT JOIN round_sheet k ON k.site_id = r.site_id AND k.id = r.sheet_id
     WHERE r.site_id = ANY(${[...siteIds]}::uuid[]) AND ((r.due_at >= ${from.toISOString()}::timestamptz
         AND r.due_at < ${to.toISOString()}::timestamptz) OR r.id = ANY(${[...besides]}::uuid[]))
     ORDER BY r.due_at DESC, r.begun_at DESC`;
  const bySite = groupBy(rows, ({ siteId }) => siteId);
  return new Map([...bySite].map(([siteId, own]) => [siteId, own.map(rowOf)]));
}

function rowOf({ siteId: _, ...row }: Raw & { siteId: string }): RoundRow {
  return { ...row, signed: dated(row.signed), secondLook: dated(row.secondLook) };
}

function dated(signature: Signature | null): RoundRow['signed'] {
  return signature && { ...signature, at: new Date(signature.at) };
}

/** Since when sites are walked with Holdfast: since they were set up, or their first round was due if that is earlier. */
export async function walkedSinceOf(siteIds: readonly string[]): Promise<ReadonlyMap<string, Date>> {
  const rows = await database().$queryRaw<{ siteId: string; since: Date }[]>`
    SELECT s.id AS "siteId", least(s.created_at, (SELECT min(r.due_at) FROM round r WHERE r.site_id = s.id)) AS since
      FROM site s WHERE s.id = ANY(${[...siteIds]}::uuid[])`;
  return new Map(rows.map(({ siteId, since }) => [siteId, since]));
}
