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

/** A thing by what the file calls it. */
export interface Called {
  table: Table;
  /** Key of its system; null for a list of the site. */
  system: string | null;
  key: string;
}

/** What keys alone do not say of a change. */
export interface Orders {
  /** Things that are others than those that had their keys: the old ones are retired. */
  fresh: readonly Called[];
  /** Things that stay what they are under another key or in another system. */
  moved: readonly { from: Called; to: Called }[];
}

/** Nothing but what the keys say. */
export const NO_ORDERS: Orders = { fresh: [], moved: [] };

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
 * @param orders    which are others than the keys say
 */
export async function identify(
  tx: Transaction,
  siteId: string,
  members: readonly Member[],
  orders: Orders = NO_ORDERS,
): Promise<Identity> {
  const living = new Map<string, string>();
  for (const { noun, id, key, system } of await findLiving(tx, siteId)) living.set(nameOf(noun, system, key), id);
  carryOut(orders, living);
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

function carryOut({ fresh, moved }: Orders, living: Map<string, string>): void {
  const name = ({ table, system, key }: Called) => nameOf(table, system, key);
  for (const one of fresh) living.delete(name(one));
  for (const { from, to } of moved) {
    const id = living.get(name(from));
    if (id === undefined) continue;
    living.delete(name(from));
    living.set(name(to), id);
  }
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
