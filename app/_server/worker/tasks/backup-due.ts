import 'server-only';
import { dailyBackup } from '../../backup/daily-backup';

/** Looks every minute whether the daily backup is to be made, so that one that was missed is caught up. */
export async function backupDue(): Promise<void> {
  await dailyBackup();
}
