import 'server-only';
import { hostname } from 'node:os';
import { administratorAddresses } from '#data/accounts/administrators';
import { type DiskSighting, type Holds, recordDisk } from '#data/machine/disks';
import { claimNotice, releaseNotice } from '#data/machine/notices';
import { logError, logInfo } from '../log';
import { isMailConfigured, sendMail } from '../mail/send-mail';
import { bytesWords } from './bytes-words';
import { backupFolder, dataFolder } from './places';
import { roomOf, roomState, stopUnder } from './room';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/**
 * Keeps how much room the disks of this machine have, and writes to the administrators when one is nearly full: once a day at
 * most, and again within the hour when no mail could be sent.
 *
 * @param at   the instant
 */
export async function watchDisks(at: Date): Promise<void> {
  const folders: [Holds, string | null][] = [
    ['data', dataFolder()],
    ['backups', backupFolder()],
  ];
  for (const [holds, folder] of folders) {
    const room = folder === null ? null : await roomOf(folder);
    if (folder === null || room === null) continue;
    const seen: DiskSighting = { machine: hostname(), folder, holds, ...room, seenAt: at };
    await recordDisk(seen, new Date(at.getTime() - DAY_MS));
    if (roomState(room) !== 'plenty') await warn(seen, at);
  }
}

async function warn(seen: DiskSighting, at: Date): Promise<void> {
  const notice = `disk ${seen.machine} ${seen.folder}`;
  if (!(await claimNotice(notice, at, new Date(at.getTime() - DAY_MS)))) return;
  logInfo('disk nearly full', { folder: seen.folder, free: seen.free });
  if (!isMailConfigured()) return;
  try {
    const to = await administratorAddresses();
    if (to.length > 0) await sendMail({ to, subject: `Holdfast: ${subjectOf(seen)}`, text: textOf(seen) });
  } catch (error) {
    logError('mail about a disk could not be sent', error);
    await releaseNotice(notice, new Date(at.getTime() - DAY_MS + HOUR_MS));
  }
}

function subjectOf({ machine, free }: DiskSighting): string {
  return `the disk of ${machine} has ${bytesWords(free)} left`;
}

function textOf(seen: DiskSighting): string {
  const { machine, folder, holds, free, total } = seen;
  const what = holds === 'data' ? 'the data of Holdfast' : 'the backups of Holdfast';
  return [
    `The disk of ${machine} that holds ${what} (${folder}) has ${bytesWords(free)} of ${bytesWords(total)} left.`,
    '',
    holds === 'data'
      ? `Under ${bytesWords(stopUnder())} Holdfast takes no more changes; reading goes on. Make room before that.`
      : 'When it is full, no more backups are made. Make room, or name another folder in HOLDFAST_BACKUP_FOLDER.',
    '',
    'This is said once a day for as long as it is so.',
    '',
  ].join('\n');
}
