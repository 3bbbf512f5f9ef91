import 'server-only';
import { join, resolve } from 'node:path';
import { machineEnv } from '../env';

/** Word in place of a folder that means: make no backups. */
const OFF = 'off';

/** @returns the folder of the embedded database, the logs and, when no other is named, the backups */
export function dataFolder(): string {
  return resolve(/* turbopackIgnore: true */ process.cwd(), machineEnv().HOLDFAST_DATA);
}

/** @returns the folder of the daily backups; null when none are made */
export function backupFolder(): string | null {
  const { HOLDFAST_BACKUP_FOLDER: named } = machineEnv();
  if (named === OFF) return null;
  return named === undefined
    ? join(dataFolder(), 'backups')
    : resolve(/* turbopackIgnore: true */ process.cwd(), named);
}
