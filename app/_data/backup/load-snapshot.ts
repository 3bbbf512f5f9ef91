import 'server-only';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import type { BackupFoot, BackupHeader } from '#shape/backup/backup-file';
import { connectionSettings } from '../connection';
import { type Broken, firstBroken, type KeptLink } from '../records/first-broken';
import { beginCopying } from './settings';
import { type Table, tablesInOrder } from './tables';
import { headsOf } from './write-snapshot';

/** What can be done with a database while it is filled; nothing of it is there for others before the end. */
export interface Loading {
  /** Lays the tables of one migration. */
  lay: (sql: string) => Promise<void>;
  /** Makes the parts of the readings for months, by their first days. */
  makeParts: (days: readonly string[]) => Promise<void>;
  /** Names of tables that the migrations did not lay. */
  missing: (tables: BackupHeader['tables']) => Promise<string[]>;
  /** Loads rows in the text form of COPY. @returns how many */
  load: (table: Table, rows: AsyncIterable<Buffer>) => Promise<number>;
  heads: () => Promise<BackupFoot['heads']>;
  /** Ids of the sites that have a record. */
  recorded: () => Promise<string[]>;
  /** Works every seal of a site's record out again. @returns null when it is whole */
  firstBroken: (siteId: string) => Promise<Broken | null>;
}

/** The table Prisma keeps of the migrations it has applied, as it makes it itself. */
const MIGRATIONS = `
  CREATE TABLE _prisma_migrations (
    id VARCHAR(36) PRIMARY KEY NOT NULL, checksum VARCHAR(64) NOT NULL, finished_at TIMESTAMPTZ,
    migration_name VARCHAR(255) NOT NULL, logs TEXT, rolled_back_at TIMESTAMPTZ,
    started_at TIMESTAMPTZ NOT NULL DEFAULT now(), applied_steps_count INTEGER NOT NULL DEFAULT 0)`;

/** Links of a record that are read at once. */
const PAGE = 1000;

/**
 * Fills an empty database in one transaction: all of it is there in the end, or nothing.
 *
 * @param url    address of the database, as its owner
 * @param work   fills it
 * @returns      what the work returned; null when the database is not empty, and was left as it is
 */
export async function loadSnapshot<T>(url: string, work: (into: Loading) => Promise<T>): Promise<T | null> {
  const client = new pg.Client({ ...connectionSettings(url) });
  // A connection that breaks fails the question under way; without a listener it would end the process besides.
  client.on('error', () => undefined);
  await client.connect();
  try {
    await beginCopying(client, 'ISOLATION LEVEL READ COMMITTED');
    if (!(await isEmpty(client))) return null;
    await client.query(MIGRATIONS);
    const done = await work(loadingInto(client));
    await client.query('COMMIT');
    return done;
  } finally {
    // Whatever was not committed is gone with the connection.
    await client.end();
  }
}

function loadingInto(client: pg.Client): Loading {
  return {
    lay: async (sql) => {
      await client.query(sql);
    },
    makeParts: async (days) => {
      for (const day of days) await client.query('SELECT make_reading_part($1::date)', [day]);
    },
    missing: async (tables) => {
      const there = new Set((await tablesInOrder(client)).map(({ name }) => name));
      return tables.map(({ name }) => name).filter((name) => !there.has(name));
    },
    load: async (table, rows) => {
      const held = await isHeldToRules(client, table);
      const name = `public.${pg.escapeIdentifier(table.name)}`;
      if (held) await client.query(`ALTER TABLE ${name} DISABLE TRIGGER "lawful"`);
      const copy = client.query(copyFrom(copyIn(table)));
      await pipeline(Readable.from(rows), copy);
      if (held) await client.query(`ALTER TABLE ${name} ENABLE TRIGGER "lawful"`);
      return copy.rowCount;
    },
    heads: () => headsOf(client),
    recorded: async () => {
      const { rows } = await client.query('SELECT site_id AS id FROM record_head UNION SELECT site_id FROM record');
      return rows.map(({ id }) => id);
    },
    firstBroken: async (siteId) => {
      const { rows } = await client.query('SELECT seq, hash FROM record_head WHERE site_id = $1', [siteId]);
      return await firstBroken(linksOf(client, siteId), rows[0] ?? null);
    },
  };
}

/** Empty but for what an extension of the server brought along. */
/** Whether rows of a table are held to what is there as they are added. They were when they were kept, and come back as they are. */
async function isHeldToRules(client: pg.Client, { name }: Table): Promise<boolean> {
  const { rowCount } = await client.query(
    `SELECT FROM pg_trigger WHERE tgrelid = to_regclass('public.' || quote_ident($1)) AND tgname = 'lawful'`,
    [name],
  );
  return rowCount !== 0;
}

async function isEmpty(client: pg.Client): Promise<boolean> {
  const { rows } = await client.query<{ found: boolean }>(
    `SELECT EXISTS (SELECT FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND NOT EXISTS (
              SELECT FROM pg_depend d WHERE d.objid = c.oid AND d.classid = 'pg_class'::regclass AND d.deptype = 'e'))
         OR to_regnamespace('graphile_worker') IS NOT NULL AS found`,
  );
  return rows[0]?.found === false;
}

function copyIn({ name, columns }: Table): string {
  const listed = columns.map((column) => pg.escapeIdentifier(column)).join(', ');
  return `COPY public.${pg.escapeIdentifier(name)} (${listed}) FROM STDIN`;
}

async function* linksOf(client: pg.Client, siteId: string): AsyncGenerator<KeptLink> {
  for (let from = 0; ; ) {
    const { rows } = await client.query<KeptLink>(
      `SELECT site_id AS "siteId", seq, at, kind, body, prev_hash AS "prevHash", hash
         FROM record WHERE site_id = $1 AND seq > $2 ORDER BY seq LIMIT $3`,
      [siteId, from, PAGE],
    );
    yield* rows;
    const end = rows.at(-1);
    if (!end) return;
    from = end.seq;
  }
}
