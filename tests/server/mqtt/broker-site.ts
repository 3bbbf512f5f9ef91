import mqtt from 'mqtt';
import { afterEach } from 'vitest';
import type { Payload } from '#core/readings/topics';
import { addTopic, makeBroker } from '#data/brokers/brokers';
import { listBrokers } from '#data/brokers/list-brokers';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { seal } from '#server/machine/seal';
import { BROKER_PASSWORD } from '#server/mqtt/stay-connected';
import { keepBrokers, type Keeping } from '#server/worker/keep-brokers';
import type { Copy } from '../../_support/database';

/** A topic as a test says it: filter, payload, and what else. */
export type Said = [string, Payload, { field?: string; timeField?: string; unit?: string }?];

/** Makes a broker of a site. @returns the id of its source */
export async function aBroker(
  siteId: string,
  port: number,
  topics: Said[],
  { password, asksRebirth = false }: { password?: string; asksRebirth?: boolean } = {},
): Promise<string> {
  const sealed = password === undefined ? null : seal(password, BROKER_PASSWORD);
  if (sealed && !sealed.ok) throw new Error(sealed.reason);
  const place = {
    address: `mqtt://127.0.0.1:${port}`,
    username: sealed ? 'probe' : null,
    passwordSealed: sealed ? sealed.value : null,
    authority: null,
    asksRebirth,
  };
  return await inTransaction(async (tx) => {
    const id = await makeBroker(tx, siteId, { name: 'Broker in the hall', gatewayId: null }, place, 'local', now());
    for (const [topic, payload, { field = null, timeField = null, unit = null } = {}] of topics)
      await addTopic(tx, siteId, id, { topic, payload, field, timeField, unit });
    return id;
  });
}

/** Waits until something is so, for 45 s at most: a lease of somebody who is gone lasts 15. @returns what it was */
export async function soon<T>(what: () => Promise<T | null | undefined | false>): Promise<T> {
  const until = performance.now() + 45_000;
  for (;;) {
    const found = await what();
    if (found) return found;
    if (performance.now() > until) throw new Error('it never came');
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

/** Whoever keeps the connections, until the test is over. */
export function keepers(): { begin: (lookMs?: number, holdS?: number) => Keeping } {
  const begun: Keeping[] = [];
  afterEach(async () => {
    await Promise.all(begun.splice(0).map((one) => one.stop()));
  });
  return {
    begin: (lookMs = 100, holdS = 2) => {
      const one = keepBrokers(lookMs, holdS);
      begun.push(one);
      return one;
    },
  };
}

/** The one broker of a site as it is listed, once it is connected. */
export async function connected(siteId: string) {
  return await soon(async () => {
    const [one] = await listBrokers(siteId);
    return one?.state.connectedAt ? one : null;
  });
}

/** Somebody who sends to a broker. */
export async function sender(port: number, more: mqtt.IClientOptions = {}): Promise<mqtt.MqttClient> {
  return await mqtt.connectAsync({ host: '127.0.0.1', port, reconnectPeriod: 0, ...more });
}

/** Readings of a site: key of the sensor and value, in the order of their times. */
export async function readingsOf(query: Copy['query'], siteId: string): Promise<[string, number][]> {
  const { rows } = await query(
    `SELECT s.key, r.value FROM reading r JOIN sensor s ON s.site_id = r.site_id AND s.id = r.sensor_id
      WHERE r.site_id = $1 ORDER BY r.at, s.key`,
    [siteId],
  );
  return rows.map(({ key, value }) => [key, value]);
}
