import 'server-only';
import { database } from '../client';

/** What a folder is for. */
export type Holds = 'data' | 'backups';

/** How much room a disk of a machine had when a worker there last looked. */
export interface DiskSighting {
  machine: string;
  folder: string;
  holds: Holds;
  /** Bytes. */
  free: number;
  total: number;
  seenAt: Date;
}

/** Keeps what was seen, in place of what was seen there before; machines not seen since `forgetBefore` are forgotten. */
export async function recordDisk(
  { machine, folder, holds, free, total, seenAt }: DiskSighting,
  forgetBefore: Date,
): Promise<void> {
  const { diskSighting } = database();
  const seen = { holds, freeBytes: BigInt(free), totalBytes: BigInt(total), seenAt };
  await diskSighting.upsert({
    where: { machine_folder: { machine, folder } },
    create: { machine, folder, ...seen },
    update: seen,
  });
  await diskSighting.deleteMany({ where: { seenAt: { lt: forgetBefore } } });
}

/** Every disk that was seen, by machine and folder. */
export async function listDisks(): Promise<DiskSighting[]> {
  const rows = await database().diskSighting.findMany({ orderBy: [{ machine: 'asc' }, { folder: 'asc' }] });
  return rows.map(({ freeBytes, totalBytes, holds, ...row }) => ({
    ...row,
    holds: holds as Holds,
    free: Number(freeBytes),
    total: Number(totalBytes),
  }));
}
