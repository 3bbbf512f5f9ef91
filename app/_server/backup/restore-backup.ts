import 'server-only';
import { type Loading, loadSnapshot } from '#data/backup/load-snapshot';
import type { BackupFoot, BackupHeader } from '#shape/backup/backup-file';
import { BackupFault } from './backup-fault';
import { knownMigrations } from './known-migrations';
import { readBackup } from './read-backup';

/** What to restore, and where to. */
export interface Restore {
  /** The backup. */
  path: string;
  /** Address of an empty database, as its owner. */
  url: string;
  /** Folder of this copy's migrations. */
  migrations: string;
  /** Whether a record that was broken already when the backup was made is taken as it is. */
  takeBroken: boolean;
}

/** What was restored. */
export interface Restored {
  /** Instant of the snapshot. */
  at: string;
  tables: number;
  rows: number;
  /** Sites with a record, and how many links their records have. */
  sites: number;
  links: number;
  /** Records that are broken, in words. */
  broken: string[];
}

/**
 * Fills an empty database from a backup. The file is read twice: once to its end before anything is touched, and once to be
 * loaded. All of it is there afterwards, or nothing.
 *
 * @throws   {BackupFault} with one sentence: the file, the database or the record is not as it must be
 */
export async function restoreBackup(restore: Restore): Promise<Restored> {
  const { path, url, migrations } = restore;
  const { header } = await readBackup(path);
  const sql = await knownMigrations(migrations, header.migrations);
  const restored = await loadSnapshot(url, (into) => fill(into, restore, sql)).catch((error: unknown) => {
    const { code, message } = error as { code?: string; message: string };
    // What PostgreSQL says of values, of keys and of names: the rows are not those of these tables.
    if (/^(22|23|42)...$/.test(code ?? '')) throw new BackupFault(`${path} does not fit its own tables: ${message}.`);
    throw error;
  });
  if (restored === null)
    throw new BackupFault(
      'The database is not empty, and a backup is restored into an empty one only: it was left as it is.',
    );
  return restored;
}

async function fill(into: Loading, { path, takeBroken }: Restore, sql: string[]): Promise<Restored> {
  const rows: BackupFoot['rows'] = {};
  const columnsOf = new Map<string, string[]>();
  const { header, foot } = await readBackup(path, {
    header: async ({ tables, parts }) => {
      for (const one of sql) await into.lay(one);
      await into.makeParts(parts);
      const missing = await into.missing(tables);
      if (missing.length > 0) throw new BackupFault(`its own migrations lay no table ${missing.join(', ')}`);
      for (const { name, columns } of tables) columnsOf.set(name, columns);
    },
    table: async (name, pieces) => {
      rows[name] = await into.load({ name, columns: columnsOf.get(name) ?? [] }, pieces);
    },
  });
  requireSame(path, 'numbers of rows', rows, foot.rows);
  requireSame(path, 'last links of the records', await into.heads(), foot.heads);
  const broken = await brokenRecords(into);
  if (broken.length > 0 && !takeBroken)
    throw new BackupFault(
      `The record in ${path} is broken (${broken.join('; ')}): it was changed after it was written, in the backup or before. ` +
        'Nothing was restored; --take-broken restores it as it is.',
    );
  return summary(header, foot, broken);
}

function requireSame(path: string, what: string, found: unknown, expected: unknown): void {
  if (JSON.stringify(found) !== JSON.stringify(expected))
    throw new BackupFault(`${path} was altered: the ${what} are not what its foot says. Nothing was restored.`);
}

async function brokenRecords(into: Loading): Promise<string[]> {
  const broken: string[] = [];
  for (const site of await into.recorded()) {
    const found = await into.firstBroken(site);
    if (found) broken.push(`site ${site}, link ${found.seq}: ${found.wrong}`);
  }
  return broken;
}

function summary({ at, tables }: BackupHeader, { rows, heads }: BackupFoot, broken: string[]): Restored {
  return {
    at,
    tables: tables.length,
    rows: Object.values(rows).reduce((sum, count) => sum + count, 0),
    sites: heads.length,
    links: heads.reduce((sum, { seq }) => sum + seq, 0),
    broken,
  };
}
