import 'server-only';
import { lastBadRun, lastGoodRun } from '#data/backup/runs';
import { now } from '../clock';
import { machineEnv } from '../env';
import { backupFolder } from '../machine/places';
import { nextSlot } from './due';

/** ms after which the last good backup is too old: one day's was missed. */
const LATE_MS = 26 * 3_600_000;

/** How it stands with the daily backups. */
export interface BackupState {
  /** off: none are made. none: none has been made yet. late: the last good one is more than a day old. */
  state: 'off' | 'none' | 'late' | 'good';
  /** The last good one. */
  last: { at: string; machine: string; path: string; bytes: number; ageS: number } | null;
  /** The last failure, when no good one came after it. */
  problem: { at: string; machine: string; words: string } | null;
  /** When the next is made, when all goes well; null when none are made. */
  nextAt: string | null;
}

/** The last good backup, how old and how large it is, and what went wrong since. */
export async function backupState(): Promise<BackupState> {
  const at = now();
  const [good, bad] = await Promise.all([lastGoodRun(), lastBadRun()]);
  const isOff = backupFolder() === null;
  const ageMs = good && at.getTime() - good.beganAt.getTime();
  const isProblem = bad !== null && (good === null || bad.beganAt > good.beganAt);
  return {
    state: isOff ? 'off' : ageMs === null ? 'none' : ageMs > LATE_MS ? 'late' : 'good',
    last: good && {
      at: good.beganAt.toISOString(),
      machine: good.machine,
      path: good.path,
      bytes: good.bytes,
      ageS: (ageMs ?? 0) / 1000,
    },
    problem: isProblem ? { at: bad.endedAt.toISOString(), machine: bad.machine, words: bad.problem } : null,
    nextAt: isOff ? null : nextSlot(at, machineEnv().HOLDFAST_BACKUP_HOUR).toISOString(),
  };
}
