import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { anchorsOf, type SentAnchor } from '#data/records/anchors';
import { sealAt } from '#data/records/seal-at';
import type { ChainVerdict } from '#data/records/verify-chain';
import { listRecordedSites, type SiteEntry } from '#data/sites';
import { type Anchor, anchor } from '#shape/record/anchor';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { checkRecord } from './check-record';

/** What an anchor says and the record does not. */
export interface BrokenAnchor {
  anchor: Anchor;
  wrong: 'another seal' | 'no such link' | 'no such site';
}

/** The record of one site, gone through. */
export interface SiteAudit {
  key: string;
  name: string;
  verdict: ChainVerdict;
  /** Anchors of this site that hold. */
  held: number;
  /** Where a whole record stands now, to be kept elsewhere; null when it is empty or broken. */
  anchor: Anchor | null;
  /** The last daily anchor and where it went; null when there never was one. */
  daily: { day: string; seq: number; sent: SentAnchor[] } | null;
}

/** Every record that may be seen, and every anchor that does not hold. */
export interface Audit {
  sites: SiteAudit[];
  broken: BrokenAnchor[];
}

export const auditRecordsShape = z.object({ anchors: z.array(anchor) });

/** Works out every seal of every record again, and holds each to the anchors that were kept elsewhere. */
export async function auditRecords(
  who: Who,
  { anchors }: z.output<typeof auditRecordsShape>,
): Promise<Result<Audit, Refusal>> {
  const entries = (await listRecordedSites()).filter(({ key }) => may(who, 'audit', key));
  const broken: BrokenAnchor[] = anchors
    .filter(({ site }) => !entries.some(({ id }) => id === site))
    .map((kept) => ({ anchor: kept, wrong: 'no such site' }));
  const sites: SiteAudit[] = [];
  for (const entry of entries) {
    const own = anchors.filter(({ site }) => site === entry.id);
    const failed = await brokenOf(own);
    broken.push(...failed);
    sites.push(await auditOf(entry, own.length - failed.length));
  }
  return ok({ sites, broken });
}

async function brokenOf(anchors: readonly Anchor[]): Promise<BrokenAnchor[]> {
  const broken: BrokenAnchor[] = [];
  for (const kept of anchors) {
    const seal = await sealAt(kept.site, kept.seq);
    if (seal === null) broken.push({ anchor: kept, wrong: 'no such link' });
    else if (seal !== kept.seal) broken.push({ anchor: kept, wrong: 'another seal' });
  }
  return broken;
}

async function auditOf({ id, key, name }: SiteEntry, held: number): Promise<SiteAudit> {
  const verdict = await checkRecord(id);
  const seq = verdict.isWhole ? verdict.links : 0;
  const seal = await sealAt(id, seq);
  const anchor = seal === null ? null : { site: id, seq, seal, at: now().toISOString() };
  const [daily = null] = await anchorsOf(id, 1);
  return { key, name, verdict, held, anchor, daily };
}
