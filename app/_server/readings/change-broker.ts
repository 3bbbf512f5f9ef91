import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { changeBroker, isLivingBroker } from '#data/brokers/brokers';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { brokerChange } from '#shape/readings/broker-requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { brokerPlace } from './broker-place';

export const changeBrokerShape = brokerChange;

/** Changes where a broker is and who Holdfast is there; the connection begins anew with it. */
export async function changeReadingBroker(
  who: Who,
  { site: key, source, ...typed }: z.output<typeof changeBrokerShape>,
): Promise<Result<{ source: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const place = brokerPlace(typed);
  if (!place.ok) return place;
  const at = now();
  return await inTransaction(async (tx) => {
    if (!(await isLivingBroker(tx, siteId, source))) return refused({ why: 'not-found', what: 'source' });
    await changeBroker(tx, siteId, source, place.value);
    await appendRecords(tx, siteId, [{ kind: 'broker-changed', body: { by: who.id, source } }], at);
    return ok({ source });
  });
}
