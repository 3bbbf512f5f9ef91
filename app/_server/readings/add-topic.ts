import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addTopic, isLivingBroker } from '#data/brokers/brokers';
import { sensorsAt, setAlias } from '#data/readings/sensor-names';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { newTopic } from '#shape/readings/broker-requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const addTopicShape = newTopic;

/** Subscribes to something more at a broker; of a single topic it can be said which sensor it is. */
export async function addBrokerTopic(
  who: Who,
  { site: key, source, topic, payload, field, timeField, unit, sensor }: z.output<typeof addTopicShape>,
): Promise<Result<{ topic: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  if (sensor !== undefined && !(await sensorsAt(siteId)).some(({ id }) => id === sensor))
    return refused({ why: 'invalid', faults: [{ path: 'sensor', message: 'is no sensor of this site' }] });
  const at = now();
  const isObject = payload === 'field';
  const form = {
    field: isObject ? (field ?? null) : null,
    timeField: isObject ? (timeField ?? null) : null,
    unit: isObject || payload === 'number' ? (unit ?? null) : null,
  };
  return await inTransaction(async (tx) => {
    if (!(await isLivingBroker(tx, siteId, source))) return refused({ why: 'not-found', what: 'source' });
    await addTopic(tx, siteId, source, { topic, payload, ...form });
    if (sensor !== undefined) await setAlias(tx, siteId, topic, sensor);
    const named = sensor === undefined ? [] : [{ kind: 'sensor-named', body: { by: who.id, sensor, name: topic } }];
    const added = { kind: 'topic-added', body: { by: who.id, source, topic } };
    await appendRecords(tx, siteId, [added, ...named], at);
    return ok({ topic });
  });
}
