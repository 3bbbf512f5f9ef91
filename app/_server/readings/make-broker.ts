import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { makeBroker } from '#data/brokers/brokers';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { newBroker } from '#shape/readings/broker-requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { brokerPlace } from './broker-place';
import { gatewayNamed } from './gateway-named';

export const makeBrokerShape = newBroker;

/** Has a worker subscribe to a broker, from which readings of a site come. Its password is sealed and shown to nobody. */
export async function makeReadingBroker(
  who: Who,
  { site: key, name, gateway, ...typed }: z.output<typeof makeBrokerShape>,
): Promise<Result<{ source: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const gatewayId = await gatewayNamed(siteId, gateway);
  if (!gatewayId.ok) return gatewayId;
  const place = brokerPlace(typed);
  if (!place.ok) return place;
  const at = now();
  return await inTransaction(async (tx) => {
    const kept = { passwordSealed: null, ...place.value };
    const source = await makeBroker(tx, siteId, { name, gatewayId: gatewayId.value }, kept, who.id, at);
    const body = { by: who.id, source, ...(gatewayId.value === null ? {} : { gateway: gatewayId.value }) };
    await appendRecords(tx, siteId, [{ kind: 'broker-made', body }], at);
    return ok({ source });
  });
}
