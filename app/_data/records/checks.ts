import 'server-only';
import { database } from '../client';
import type { ChainVerdict } from './verify-chain';

/** When the record of a site was last gone through, and what came of it. */
export interface RecordCheck {
  siteId: string;
  checkedAt: Date;
  /** Links it had then. */
  links: number;
  /** The first broken link and what is wrong with it; null while the record is whole. */
  brokenSeq: number | null;
  wrong: string | null;
}

/** Notes what came of going through the record of a site. */
export async function noteCheck(siteId: string, verdict: ChainVerdict, checkedAt: Date): Promise<void> {
  const found = verdict.isWhole
    ? { links: verdict.links, brokenSeq: null, wrong: null }
    : { links: verdict.seq, brokenSeq: verdict.seq, wrong: verdict.wrong };
  const row = { ...found, checkedAt };
  await database().recordCheck.upsert({ where: { siteId }, create: { siteId, ...row }, update: row });
}

/** What is known of these sites; one whose record was never gone through is left out. */
export async function checksOf(siteIds: readonly string[]): Promise<RecordCheck[]> {
  return await database().recordCheck.findMany({ where: { siteId: { in: [...siteIds] } } });
}
