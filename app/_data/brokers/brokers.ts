import 'server-only';
import type { Payload } from '#core/readings/topics';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Where a broker is and who Holdfast is there. */
export interface BrokerPlace {
  /** `mqtt://host:port` or `mqtts://host:port`. */
  address: string;
  username: string | null;
  passwordSealed: Uint8Array<ArrayBuffer> | null;
  /** Certificate that signs the broker's own (PEM); null for those everybody trusts. */
  authority: string | null;
  asksRebirth: boolean;
}

/** What is subscribed to, and how what comes is read. */
export interface TopicRow {
  id: string;
  topic: string;
  payload: Payload;
  field: string | null;
  timeField: string | null;
  unit: string | null;
}

/** A broker as whoever holds the connection knows it. */
export interface Broker extends BrokerPlace {
  siteId: string;
  sourceId: string;
  topics: TopicRow[];
  /** Filters that were given up. */
  ended: string[];
}

/** Makes a source that is a broker. @returns its id */
export async function makeBroker(
  tx: Transaction,
  siteId: string,
  source: { name: string; gatewayId: string | null },
  place: BrokerPlace,
  by: string,
  at: Date,
): Promise<string> {
  const id = newId();
  await tx.readingSource.create({ data: { siteId, id, ...source, createdAt: at, createdBy: by } });
  await tx.readingBroker.create({ data: { siteId, sourceId: id, ...place } });
  await tx.brokerState.create({ data: { siteId, sourceId: id } });
  return id;
}

/** Whether a source of a site is a broker that was not ended. */
export async function isLivingBroker(tx: Transaction, siteId: string, sourceId: string): Promise<boolean> {
  const where = { siteId, sourceId, source: { endedAt: null } };
  return (await tx.readingBroker.count({ where })) > 0;
}

/** Sets where a broker is and who Holdfast is there; a password that is left out stays. */
export async function changeBroker(
  tx: Transaction,
  siteId: string,
  sourceId: string,
  place: Omit<BrokerPlace, 'passwordSealed'> & Partial<BrokerPlace>,
): Promise<void> {
  await tx.readingBroker.update({ where: { siteId_sourceId: { siteId, sourceId } }, data: place });
}

/** Subscribes to something more. @returns its id */
export async function addTopic(
  tx: Transaction,
  siteId: string,
  sourceId: string,
  topic: Omit<TopicRow, 'id'>,
): Promise<string> {
  const id = newId();
  await tx.brokerTopic.create({ data: { siteId, id, sourceId, ...topic } });
  return id;
}

/** Gives a subscription up. @returns what it was; null when there is none */
export async function endTopic(
  tx: Transaction,
  siteId: string,
  id: string,
  at: Date,
): Promise<{ sourceId: string; topic: string } | null> {
  const found = await tx.brokerTopic.findFirst({ where: { siteId, id, endedAt: null } });
  if (!found) return null;
  await tx.brokerTopic.update({ where: { siteId_id: { siteId, id } }, data: { endedAt: at } });
  return { sourceId: found.sourceId, topic: found.topic };
}

/** Every living broker of every site: whoever holds connections asks for all of them. */
export async function livingBrokers(): Promise<Broker[]> {
  const rows = await database().readingBroker.findMany({
    where: { source: { endedAt: null } },
    include: { topics: { orderBy: { id: 'asc' } } },
    orderBy: [{ siteId: 'asc' }, { sourceId: 'asc' }],
  });
  return rows.map(({ topics, passwordSealed, ...row }) => {
    const living = topics.filter(({ endedAt }) => endedAt === null);
    return {
      ...row,
      passwordSealed: passwordSealed && Uint8Array.from(passwordSealed),
      topics: living.map(asTopic),
      ended: topics.filter(({ endedAt }) => endedAt !== null).map(({ topic }) => topic),
    };
  });
}

/** A subscription as it is kept. */
export function asTopic({
  id,
  topic,
  payload,
  field,
  timeField,
  unit,
}: Omit<TopicRow, 'payload'> & { payload: string }) {
  return { id, topic, payload: payload as Payload, field, timeField, unit };
}
