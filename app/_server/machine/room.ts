import 'server-only';
import { statfs } from 'node:fs/promises';
import { dirname } from 'node:path';
import { machineEnv } from '../env';

const MB = 1_000_000;
const GB = 1000 * MB;
/** A disk is called nearly full under this share of it, or under `SMALL`, whichever is less, but never under `LEAST`. */
const SHARE = 0.1;
const SMALL = 5 * GB;
const LEAST = 1 * GB;

/** How much room a disk has. */
export interface Room {
  /** Bytes free for ordinary programs. */
  free: number;
  /** Bytes it holds in all. */
  total: number;
}

/** plenty; low: somebody has to make room; none: nothing more is taken. */
export type RoomState = 'plenty' | 'low' | 'none';

/**
 * @param folder   which need not exist yet: then its nearest folder that does is asked
 * @returns        null when the system does not say
 */
export async function roomOf(folder: string): Promise<Room | null> {
  try {
    const { bavail, blocks, bsize } = await statfs(folder);
    return { free: bavail * bsize, total: blocks * bsize };
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT' && dirname(folder) !== folder;
    return isMissing ? await roomOf(dirname(folder)) : null;
  }
}

/** Bytes under which a disk of this size is called nearly full. @param total bytes it holds */
export function warnUnder(total: number): number {
  const { HOLDFAST_DISK_WARN_MB: said } = machineEnv();
  return said === undefined ? Math.max(LEAST, Math.min(SHARE * total, SMALL)) : said * MB;
}

/** @returns bytes under which no change is taken any more */
export function stopUnder(): number {
  return machineEnv().HOLDFAST_DISK_STOP_MB * MB;
}

/** What the room of a disk means. */
export function roomState({ free, total }: Room): RoomState {
  if (free < stopUnder()) return 'none';
  return free < warnUnder(total) ? 'low' : 'plenty';
}
