import 'server-only';
import type { MqttClient } from 'mqtt';
import { commandTopic } from '#core/readings/sparkplug/topic';
import type { Broker } from '#data/brokers/brokers';
import { now } from '../../clock';
import { encodeRebirth } from './decode';

/** ms after which a node that was asked to be born again may be asked once more. Common practice, no source. */
const ASK_AGAIN_MS = 30_000;

/** Asks nodes to be born again, where that was allowed; each not too often. */
export function askerOf(client: MqttClient, { asksRebirth }: Broker): (group: string, node: string) => void {
  const asked = new Map<string, number>();
  return (group, node) => {
    const atMs = now().getTime();
    const topic = commandTopic(group, node);
    if (!asksRebirth || atMs - (asked.get(topic) ?? 0) < ASK_AGAIN_MS) return;
    asked.set(topic, atMs);
    client.publish(topic, Buffer.from(encodeRebirth(atMs)), { qos: 0 });
  };
}
