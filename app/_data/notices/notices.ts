import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** Work by others on the site that reaches its systems, for a time. */
export interface NoticeRow {
  id: string;
  kind: string;
  what: string;
  /** Keys of the systems it reaches; none: all of them. */
  systems: string[];
  todo: string;
  from: Date;
  until: Date;
  at: Date;
  by: string;
}

/** Adds a notice. */
export async function addNotice(tx: Transaction, siteId: string, row: NoticeRow): Promise<void> {
  await tx.siteNotice.create({ data: { siteId, ...row } });
}

/** Says that it is over before its time. */
export async function endNotice(
  tx: Transaction,
  siteId: string,
  noticeId: string,
  end: { at: Date; by: string; note: string | null },
): Promise<void> {
  await tx.siteNoticeEnd.create({ data: { siteId, noticeId, ...end } });
}

/** One by its id, with whoever ended it. */
export async function findNotice(
  tx: Transaction,
  siteId: string,
  id: string,
): Promise<(NoticeRow & { endedBy: string | null }) | null> {
  const row = await tx.siteNotice.findUnique({ where: { siteId_id: { siteId, id } }, include: { end: true } });
  if (!row) return null;
  const { siteId: _, end, ...rest } = row;
  return { ...rest, endedBy: end?.by ?? null };
}

/** Those that are in force or still to come at an instant, in order of their beginning. A notice ends by its time. */
export async function openNotices(siteId: string, at: Date): Promise<NoticeRow[]> {
  const rows = await database().siteNotice.findMany({
    where: { siteId, until: { gt: at }, end: null },
    orderBy: [{ from: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ siteId: _, ...row }) => row);
}
