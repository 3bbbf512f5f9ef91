import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { type ChainVerdict, verifyChain } from '#data/records/verify-chain';
import { findSite } from '#data/sites';
import { sitePlace } from '#shape/reviews/case-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

export const verifyRecordShape = sitePlace;

/** Works out every seal of one site's record again. */
export async function verifyRecord(
  who: Who,
  { site }: z.output<typeof verifyRecordShape>,
): Promise<Result<ChainVerdict, Refusal>> {
  const entry = may(who, 'see', site) ? await findSite(site) : null;
  if (!entry) return refused({ why: 'not-found', what: 'site' });
  if (!may(who, 'audit', site)) return refused({ why: 'not-allowed' });
  return ok(await verifyChain(entry.id));
}
