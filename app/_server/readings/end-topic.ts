import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { endTopic } from '#data/brokers/brokers';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { topicPlace } from '#shape/readings/broker-requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const endTopicShape = topicPlace;

/** Gives a subscription up: nothing of it is heard from then on. */
export async function endBrokerTopic(
  who: Who,
  { site: key, topic }: z.output<typeof endTopicShape>,
): Promise<Result<{ topic: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    const ended = await endTopic(tx, siteId, topic, at);
    if (!ended) return refused({ why: 'not-found', what: 'topic' });
    const body = { by: who.id, source: ended.sourceId, topic: ended.topic };
    await appendRecords(tx, siteId, [{ kind: 'topic-ended', body }], at);
    return ok({ topic: ended.topic });
  });
}
