import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { endSource } from '#data/readings/sources';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { sourcePlace } from '#shape/readings/source-requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const endSourceShape = sourcePlace;

/** Ends a source: from then on its token opens nothing. What it sent stays. */
export async function endReadingSource(
  who: Who,
  { site: key, source }: z.output<typeof endSourceShape>,
): Promise<Result<{ source: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    if (!(await endSource(tx, siteId, source, at))) return refused({ why: 'not-found', what: 'source' });
    await appendRecords(tx, siteId, [{ kind: 'source-ended', body: { by: who.id, source } }], at);
    return ok({ source });
  });
}
