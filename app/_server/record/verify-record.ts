import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import type { ChainVerdict } from '#data/records/verify-chain';
import { sitePlace } from '#shape/reviews/case-place';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { checkRecord } from './check-record';

export const verifyRecordShape = sitePlace;

/** Works out every seal of one site's record again, and holds it to the last anchor that is remembered here. */
export async function verifyRecord(
  who: Who,
  { site }: z.output<typeof verifyRecordShape>,
): Promise<Result<ChainVerdict, Refusal>> {
  const found = await siteFor(who, 'audit', site);
  return found.ok ? ok(await checkRecord(found.value.id)) : found;
}
