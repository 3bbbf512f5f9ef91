import 'server-only';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { roundSheetShape } from '#shape/facility/round-sheet';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A sheet that somebody is writing. */
export interface SheetDraft {
  sheet: RoundSheet;
  /** Version it began from; null for a sheet that was never in force. */
  basedOn: number | null;
  changedAt: Date;
  changedBy: string;
}

type Asker = Pick<Transaction, 'roundSheetDraft'>;

/** The drafts of a site, by key. @throws ZodError when one is no valid sheet any more */
export async function listSheetDrafts(siteId: string, asker: Asker = database()): Promise<Map<string, SheetDraft>> {
  const rows = await asker.roundSheetDraft.findMany({ where: { siteId }, orderBy: { key: 'asc' } });
  return new Map(rows.map(({ key, body, ...row }) => [key, { ...row, sheet: roundSheetShape.parse(body) }]));
}

/** Keeps a draft in the place of the one with its key. */
export async function keepSheetDraft(tx: Asker, siteId: string, draft: SheetDraft): Promise<void> {
  const { sheet, ...row } = draft;
  const held = { ...row, body: sheet as unknown as Prisma.InputJsonObject };
  const { key } = sheet;
  await tx.roundSheetDraft.upsert({
    where: { siteId_key: { siteId, key } },
    create: { siteId, key, ...held },
    update: held,
  });
}

/** Forgets drafts. */
export async function dropSheetDrafts(tx: Asker, siteId: string, keys: readonly string[]): Promise<void> {
  await tx.roundSheetDraft.deleteMany({ where: { siteId, key: { in: [...keys] } } });
}
