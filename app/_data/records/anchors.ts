import 'server-only';
import { database } from '../client';
import { asDate, asDay } from '../day';

/** Where anchors go. */
export type AnchorPlaceName = 'file' | 'mail' | 'webhook';

/** Where the record of a site stood on a day. */
export interface DayAnchor {
  siteId: string;
  /** ISO date, in UTC. */
  day: string;
  seq: number;
  /** 64 hexadecimal digits. */
  seal: string;
  at: Date;
}

/** That an anchor reached a place. */
export interface SentAnchor {
  place: string;
  /** The file, the machine that was called, or the mail address without whose it is. */
  target: string;
  sentAt: Date;
}

const SENT = { place: true, target: true, sentAt: true } as const;

/** Keeps the anchor of a day; one that is there already stays as it is. */
export async function keepAnchor({ siteId, day, seq, seal, at }: DayAnchor): Promise<void> {
  const data = [{ siteId, day: asDate(day), seq, seal: Buffer.from(seal, 'hex'), at }];
  await database().recordAnchor.createMany({ data, skipDuplicates: true });
}

/** The latest anchors of a site with where they went, newest first. @param most how many at most */
export async function anchorsOf(siteId: string, most: number): Promise<(DayAnchor & { sent: SentAnchor[] })[]> {
  const rows = await database().recordAnchor.findMany({
    where: { siteId },
    include: { sent: { select: SENT, orderBy: { place: 'asc' } } },
    orderBy: { day: 'desc' },
    take: most,
  });
  return rows.map(({ sent, ...row }) => ({ ...asAnchor(row), sent }));
}

/** Every anchor of a day that has not reached a place. */
export async function unsentAnchors(day: string, place: AnchorPlaceName): Promise<DayAnchor[]> {
  const rows = await database().recordAnchor.findMany({
    where: { day: asDate(day), sent: { none: { place } } },
    orderBy: { siteId: 'asc' },
  });
  return rows.map(asAnchor);
}

/** Notes that anchors reached a place; one that is noted already stays as it is. */
export async function noteSent(
  anchors: readonly DayAnchor[],
  { place, target, sentAt }: SentAnchor & { place: AnchorPlaceName },
): Promise<void> {
  const data = anchors.map(({ siteId, day }) => ({ siteId, day: asDate(day), place, target, sentAt }));
  await database().anchorSent.createMany({ data, skipDuplicates: true });
}

function asAnchor(row: { siteId: string; day: Date; seq: number; seal: Uint8Array; at: Date }): DayAnchor {
  return { ...row, day: asDay(row.day), seal: Buffer.from(row.seal).toString('hex') };
}
