import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A photo of an entry. */
interface RoundPhoto {
  id: string;
  entryId: string;
  takenAt: Date;
  recordedAt: Date;
  by: string;
  width: number;
  height: number;
  /** WebP. */
  bytes: Uint8Array<ArrayBuffer>;
}

/** Adds a photo. One that is there already is left as it is. @returns whether it is new */
export async function addPhoto(tx: Transaction, siteId: string, photo: RoundPhoto): Promise<boolean> {
  const { count } = await tx.roundPhoto.createMany({ data: [{ siteId, ...photo }], skipDuplicates: true });
  return count > 0;
}

/** How many photos an entry has. */
export async function countPhotos(tx: Transaction, siteId: string, entryId: string): Promise<number> {
  return await tx.roundPhoto.count({ where: { siteId, entryId } });
}

/** A photo; null when the site has none of this id. */
export async function findPhoto(
  siteId: string,
  id: string,
  asker: Pick<Transaction, 'roundPhoto'> = database(),
): Promise<Pick<RoundPhoto, 'entryId' | 'bytes'> | null> {
  return await asker.roundPhoto.findUnique({
    where: { siteId_id: { siteId, id } },
    select: { entryId: true, bytes: true },
  });
}
