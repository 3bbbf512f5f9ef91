import 'server-only';
import { FACILITY_FORMAT, type Facility } from '#core/facility/facility';
import { facilityShape } from '#shape/facility/facility';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';
import { assemble, type Row, type StoredRows } from './assemble';
import { ERASED } from './names';
import { TABLES, type Table } from './nouns';

/** A facility with the revision of its site that it belongs to. */
export interface Loaded {
  facility: Facility;
  revision: number;
  /** Ids of its systems by key. */
  systemIds: ReadonlyMap<string, string>;
}

/**
 * The facility that is stored of a site, as it was imported. One question, so that what comes back was all true at once.
 *
 * @param siteId   the site
 * @param asker    the transaction to ask in; the client itself when left out
 * @returns        the facility; null when the site is not there or was never described
 * @throws         ZodError when what is stored is no valid facility any more
 */
export async function loadFacility(
  siteId: string,
  asker: Pick<Transaction, '$queryRaw'> = database(),
): Promise<Loaded | null> {
  const lists = TABLES.map((table) => Prisma.sql`(${listOf(table, siteId)}) AS ${Prisma.raw(`"${table}"`)}`);
  const [stored] = await asker.$queryRaw<(StoredRows & { site: Row; revision: number })[]>`
    SELECT to_jsonb(s) AS site, s.revision, ${Prisma.join(lists)}
      FROM site s WHERE s.id = ${siteId}::uuid AND s.revision > 0`;
  if (!stored) return null;
  const { site, revision, ...rows } = stored;
  const form = { format: FACILITY_FORMAT, ...assemble(site, rows) };
  return {
    facility: facilityShape.parse(form),
    revision,
    systemIds: new Map(rows.system.map(({ key, id }) => [key, id])),
  };
}

/** The living rows of a table as one list, in the order of the file, with what is kept of them in other tables. */
function listOf(table: Table, siteId: string): Prisma.Sql {
  return Prisma.sql`
    SELECT coalesce(jsonb_agg(to_jsonb(t) ${MORE[table] ?? Prisma.empty} ORDER BY t.ordinal), '[]')
      FROM ${Prisma.raw(`"${table}"`)} t WHERE t.site_id = ${siteId}::uuid AND t.retired_at IS NULL`;
}

const nameOf = (id: Prisma.Sql) => Prisma.sql`
  (SELECT coalesce(n.name, ${ERASED}::text) FROM person_name n WHERE n.site_id = t.site_id AND n.id = ${id})`;

/** What is laid over the row of a table. */
const MORE: Partial<Record<Table, Prisma.Sql>> = {
  person: Prisma.sql`|| jsonb_build_object('name', ${nameOf(Prisma.sql`t.name_id`)})`,
  equipment: Prisma.sql`|| jsonb_build_object('plan',
    (SELECT p.body FROM plan_in_force p WHERE p.site_id = t.site_id AND p.equipment_id = t.id))`,
  shift: Prisma.sql`|| jsonb_build_object('people',
    (SELECT jsonb_agg(p.key ORDER BY d.ordinal) FROM shift_person d
       JOIN person p ON p.site_id = d.site_id AND p.id = d.person_id
      WHERE d.site_id = t.site_id AND d.shift_id = t.id))`,
  safeguard: Prisma.sql`|| jsonb_build_object('off_by', ${nameOf(Prisma.sql`t.off_by_id`)}, 'tests',
    (SELECT jsonb_agg(jsonb_strip_nulls(jsonb_build_object('on', l.tested_on, 'result', l.result, 'by',
              CASE WHEN l.by_id IS NOT NULL THEN coalesce(n.name, ${ERASED}::text) END,
              'steps', l.steps, 'expected', l.expected, 'seen', l.seen)) ORDER BY w.place)
       FROM unnest(t.tests) WITH ORDINALITY w(id, place)
       JOIN safeguard_test l ON l.site_id = t.site_id AND l.id = w.id
       LEFT JOIN person_name n ON n.site_id = l.site_id AND n.id = l.by_id))`,
};
