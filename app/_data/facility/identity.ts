import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';
import type { Member } from './members';
import { TABLES, type Table } from './nouns';

/** Ids of the things of a facility by what the file calls them. */
export interface Identity {
  /** Ids that were minted because nothing living has the key. */
  minted: ReadonlySet<string>;
  /** Id of a thing. @throws when there is none, which the reader of the file has ruled out */
  idOf: (table: Table, system: string | null, key: string) => string;
  /** Id of what a link means: of the same system if it has one of that key, else of the site. */
  linked: (table: Table, system: string | null, key: string) => string;
}

interface Living {
  noun: Table;
  id: string;
  key: string;
  system: string | null;
}

/**
 * Gives every thing of a facility its id: that of the living thing with its key in its list, else a new one.
 *
 * @param siteId    the site
 * @param members   the things of the facility as it is to be
 */
export async function identify(tx: Transaction, siteId: string, members: readonly Member[]): Promise<Identity> {
  const living = new Map<string, string>();
  for (const { noun, id, key, system } of await findLiving(tx, siteId)) living.set(nameOf(noun, system, key), id);
  const ids = new Map<string, string>();
  const minted = new Set<string>();
  for (const { table, system, key } of members) {
    const name = nameOf(table, system, key);
    const id = living.get(name) ?? newId();
    if (!living.has(name)) minted.add(id);
    ids.set(name, id);
  }
  const idOf: Identity['idOf'] = (table, system, key) => {
    const id = ids.get(nameOf(table, system, key));
    if (id === undefined) throw new Error(`No ${table} "${key}"${system === null ? '' : ` in ${system}`}`);
    return id;
  };
  const linked: Identity['linked'] = (table, system, key) =>
    idOf(table, ids.has(nameOf(table, system, key)) ? system : null, key);
  return { minted, idOf, linked };
}

function nameOf(table: Table, system: string | null, key: string): string {
  return `${table}/${system ?? ''}/${key}`;
}

const IN_SYSTEM: ReadonlySet<Table> = new Set([
  'safeguard',
  'tank',
  'equipment',
  'sensor',
  'stock',
  'alarm_definition',
  'operating_state',
]);

/** Everything that is in the file as it stands. */
async function findLiving(tx: Transaction, siteId: string): Promise<Living[]> {
  const parts = TABLES.map((table) => {
    const name = Prisma.raw(`"${table}"`);
    return IN_SYSTEM.has(table)
      ? Prisma.sql`SELECT ${table}::text AS noun, t.id, t.key, s.key AS system FROM ${name} t
                     LEFT JOIN system s ON s.site_id = t.site_id AND s.id = t.system_id
                    WHERE t.site_id = ${siteId}::uuid AND t.retired_at IS NULL`
      : Prisma.sql`SELECT ${table}::text AS noun, t.id, t.key, NULL AS system FROM ${name} t
                    WHERE t.site_id = ${siteId}::uuid AND t.retired_at IS NULL`;
  });
  return await tx.$queryRaw<Living[]>(Prisma.join(parts, ' UNION ALL '));
}
