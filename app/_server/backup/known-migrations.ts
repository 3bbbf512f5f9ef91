import 'server-only';
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { BackupHeader } from '#shape/backup/backup-file';
import { BackupFault } from './backup-fault';

/**
 * The SQL of the migrations a backup was made under, as this copy of Holdfast has it.
 *
 * @param folder       of this copy's migrations
 * @param migrations   those of the backup, in the order they were applied
 * @returns            the SQL of each, in the same order
 * @throws             {BackupFault} when this copy does not know one, or has another text of it
 */
export async function knownMigrations(folder: string, migrations: BackupHeader['migrations']): Promise<string[]> {
  return await Promise.all(
    migrations.map(async ({ name, checksum }) => {
      const sql = await readFile(join(folder, name, 'migration.sql')).catch(() => undefined);
      if (!sql)
        throw new BackupFault(
          `The backup was made by a newer Holdfast: it has the migration ${name}, which this copy does not know. ` +
            'Update this copy and restore again.',
        );
      if (createHash('sha256').update(sql).digest('hex') !== checksum)
        throw new BackupFault(
          `The backup was made under another text of the migration ${name}: it cannot be restored.`,
        );
      return sql.toString('utf8');
    }),
  );
}
