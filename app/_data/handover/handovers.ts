import 'server-only';
import type { Shown } from '#core/handover/shown';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A site that was handed over. */
export interface HandoverRow {
  id: string;
  at: Date;
  by: string;
  note: string | null;
  shown: Shown;
  /** SHA-256 of what was shown, in hex. */
  digest: string;
  taken: { at: Date; by: string; how: 'session' | 'password'; note: string | null } | null;
}

/** Keeps that somebody handed a site over, with what was shown. */
export async function addHandover(
  tx: Transaction,
  siteId: string,
  { digest, shown, taken: _, ...row }: HandoverRow,
): Promise<void> {
  const kept = shown as unknown as Prisma.InputJsonObject;
  await tx.handover.create({ data: { siteId, ...row, shown: kept, digest: Buffer.from(digest, 'hex') } });
}

/** Keeps that somebody took it. @throws when whoever gave it does, or somebody has */
export async function takeHandover(
  tx: Transaction,
  siteId: string,
  handoverId: string,
  taken: NonNullable<HandoverRow['taken']>,
): Promise<void> {
  await tx.handoverTaken.create({ data: { siteId, handoverId, ...taken } });
}

/** One by its id. */
export async function findHandover(
  siteId: string,
  id: string,
  asker: Pick<Transaction, 'handover'> = database(),
): Promise<HandoverRow | null> {
  const row = await asker.handover.findUnique({ where: { siteId_id: { siteId, id } }, include: { taken: true } });
  return row && asRow(row);
}

/** The latest ones, the newest first. @param most   how many at most */
export async function listHandovers(siteId: string, most: number): Promise<HandoverRow[]> {
  const rows = await database().handover.findMany({
    where: { siteId },
    include: { taken: true },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: most,
  });
  return rows.map(asRow);
}

type Kept = Prisma.HandoverGetPayload<{ include: { taken: true } }>;

function asRow({ id, at, by, note, shown, digest, taken }: Kept): HandoverRow {
  return {
    ...{ id, at, by, note },
    shown: shown as unknown as Shown,
    digest: Buffer.from(digest).toString('hex'),
    taken: taken && {
      at: taken.at,
      by: taken.by,
      how: taken.how === 'password' ? 'password' : 'session',
      note: taken.note,
    },
  };
}
