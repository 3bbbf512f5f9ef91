import 'server-only';
import { createHash, type Hash } from 'node:crypto';
import pg, { type PoolClient } from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { BACKUP_FORMAT, type BackupFoot, type BackupHeader } from '#shape/backup/backup-file';
import { pool } from '../pool';
import { LEFT_OUT } from './left-out';
import { beginCopying } from './settings';
import { type Table, tablesInOrder } from './tables';

/** Ends the rows of a table: no row is ever written like this. */
const END_OF_TABLE = Buffer.from('\\.\n');

/**
 * Everything a backup holds, as it stood at one instant, piece by piece: nobody who writes is held up, and no more than a
 * few rows are in memory.
 *
 * @param at   the instant, for the header
 * @throws     when the database does not answer, or a migration was broken off half-way
 */
export async function* writeSnapshot(at: Date): AsyncGenerator<Buffer> {
  const client = await pool().connect();
  let isDone = false;
  try {
    await beginCopying(client, 'ISOLATION LEVEL REPEATABLE READ READ ONLY');
    yield* sealed(client, at);
    await client.query('COMMIT');
    isDone = true;
  } finally {
    // A connection that was left in the middle of a table is of no use to anybody.
    client.release(!isDone);
  }
}

async function* sealed(client: PoolClient, at: Date): AsyncGenerator<Buffer> {
  const hash = createHash('sha256');
  const tables = (await tablesInOrder(client)).filter(({ name }) => !LEFT_OUT.includes(name));
  yield counted(hash, line(await headerOf(client, tables, at)));
  const rows: BackupFoot['rows'] = {};
  for (const table of tables) {
    yield counted(hash, line({ table: table.name }));
    const copy = client.query(copyTo(copyOut(table)));
    for await (const piece of copy) yield counted(hash, piece);
    rows[table.name] = copy.rowCount;
    yield counted(hash, END_OF_TABLE);
  }
  yield counted(hash, line({ rows, heads: await headsOf(client) } satisfies BackupFoot));
  yield line({ sha256: hash.digest('hex') });
}

function counted(hash: Hash, piece: Buffer): Buffer {
  hash.update(piece);
  return piece;
}

function line(value: object): Buffer {
  return Buffer.from(`${JSON.stringify(value)}\n`);
}

/** A query, since a table that is kept in parts cannot be copied by its name. */
function copyOut({ name, columns }: Table): string {
  const listed = columns.map((column) => pg.escapeIdentifier(column)).join(', ');
  return `COPY (SELECT ${listed} FROM public.${pg.escapeIdentifier(name)}) TO STDOUT`;
}

async function headerOf(client: PoolClient, tables: Table[], at: Date): Promise<BackupHeader> {
  const { rows } = await client.query<{ name: string; checksum: string; isFinished: boolean }>(
    `SELECT migration_name AS name, checksum, finished_at IS NOT NULL AS "isFinished"
       FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY started_at, migration_name`,
  );
  const broken = rows.find(({ isFinished }) => !isFinished);
  if (broken) throw new Error(`the migration ${broken.name} was broken off half-way`);
  const version = await client.query<{ server: string }>(`SELECT current_setting('server_version') AS server`);
  return {
    format: BACKUP_FORMAT,
    at: at.toISOString(),
    server: version.rows[0]?.server ?? '',
    migrations: rows.map(({ name, checksum }) => ({ name, checksum })),
    tables,
    parts: await partsOf(client),
  };
}

/** First days of the months of which there is a part of the readings. */
async function partsOf(client: PoolClient): Promise<string[]> {
  const { rows } = await client.query<{ day: string }>(
    `SELECT to_char(to_date(c.relname, '"reading_"YYYY_MM'), 'YYYY-MM-DD') AS day
       FROM pg_inherits i JOIN pg_class c ON c.oid = i.inhrelid
      WHERE i.inhparent = 'public.reading'::regclass ORDER BY 1`,
  );
  return rows.map(({ day }) => day);
}

/**
 * The last link of the record of every site.
 *
 * @param client   a connection, in the transaction whose view is meant
 */
export async function headsOf(client: pg.ClientBase): Promise<BackupFoot['heads']> {
  const { rows } = await client.query<BackupFoot['heads'][number]>(
    `SELECT site_id AS site, seq, encode(hash, 'hex') AS seal FROM record_head ORDER BY site_id`,
  );
  return rows;
}
