import 'server-only';
import { database } from '../client';

/** When an anchor of any record last reached a place elsewhere, and which kind of place; null when none ever did. */
export async function lastAnchorSent(): Promise<{ place: string; sentAt: Date } | null> {
  return await database().anchorSent.findFirst({
    select: { place: true, sentAt: true },
    orderBy: [{ sentAt: 'desc' }, { place: 'asc' }],
  });
}
