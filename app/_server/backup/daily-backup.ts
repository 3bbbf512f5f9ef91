import 'server-only';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { alone } from '#data/backup/alone';
import { lastBadRun, lastGoodRun, type Outcome, recordRun } from '#data/backup/runs';
import { now } from '../clock';
import { machineEnv } from '../env';
import { logError, logInfo } from '../log';
import { backupFolder } from '../machine/places';
import { isBackupDue } from './due';
import { readBackup } from './read-backup';
import { backupName, outOfTime } from './retention';
import { PART, writeBackup } from './write-backup';

const DAY_MS = 86_400_000;
/** Days for which it is remembered how a backup went. */
const REMEMBERED_DAYS = 400;

/**
 * Makes the daily backup when it is due, and removes those that have had their time; one worker at once does it. A failure
 * is logged, kept, and tried again an hour later.
 */
export async function dailyBackup(): Promise<void> {
  const folder = backupFolder();
  if (folder === null || !(await isDue())) return;
  await alone(async () => {
    // Whoever was at it a moment ago may have done it.
    if (await isDue()) await backUp(folder, now());
  });
}

async function isDue(): Promise<boolean> {
  const [good, bad] = await Promise.all([lastGoodRun(), lastBadRun()]);
  const runs = { goodAt: good?.beganAt ?? null, failedAt: bad?.endedAt ?? null };
  return isBackupDue(runs, now(), machineEnv().HOLDFAST_BACKUP_HOUR);
}

async function backUp(folder: string, beganAt: Date): Promise<void> {
  const path = join(folder, backupName(beganAt));
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const bytes = await writeBackup(path, beganAt);
    // Read back from the disk: what cannot be read is no backup.
    await readBackup(path);
    await keepRun(beganAt, { path, bytes, problem: null });
    logInfo('backup made', { path, bytes });
  } catch (error) {
    logError('backup failed', error);
    await keepRun(beganAt, {
      path: null,
      bytes: null,
      problem: error instanceof Error ? error.message : String(error),
    });
    // Written and not readable: it must not pass for one.
    await rm(path, { force: true }).catch(() => undefined);
    return;
  }
  await clearAway(folder, beganAt).catch((error: unknown) => logError('old backups could not be removed', error));
}

async function keepRun(beganAt: Date, outcome: Outcome): Promise<void> {
  const forgetBefore = new Date(beganAt.getTime() - REMEMBERED_DAYS * DAY_MS);
  await recordRun({ beganAt, endedAt: now(), machine: hostname(), ...outcome }, forgetBefore);
}

/** Backups that have had their time, and what is left of those that were broken off a day ago and longer. */
async function clearAway(folder: string, at: Date): Promise<void> {
  const names = await readdir(folder);
  const gone = outOfTime(names);
  for (const name of names.filter((one) => one.endsWith(PART))) {
    const { mtimeMs } = await stat(join(folder, name));
    if (at.getTime() - mtimeMs > DAY_MS) gone.push(name);
  }
  for (const name of gone) await rm(join(folder, name), { force: true });
}
