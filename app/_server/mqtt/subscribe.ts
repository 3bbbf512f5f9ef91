import 'server-only';
import type { MqttClient } from 'mqtt';
import type { Broker } from '#data/brokers/brokers';
import { whyOf } from './why';

/** Reason codes from which on a subscription was refused (MQTT 3.1.1 and 5, SUBACK). */
const REFUSED_FROM = 128;

/**
 * Subscribes to what is wanted, and gives up what is not any more: the broker may remember it from an earlier connection.
 *
 * @param troubled   told, as a sentence, what does not work
 */
export async function subscribe(
  client: MqttClient,
  broker: Broker,
  filters: string[],
  troubled: (said: string) => void,
): Promise<void> {
  try {
    const given = broker.ended.map((topic) => topic.replaceAll(/\{(system|sensor)\}/g, '+'));
    const unwanted = [...new Set(given)].filter((filter) => !filters.includes(filter));
    if (unwanted.length > 0) await client.unsubscribeAsync(unwanted);
    for (const filter of filters) {
      const granted = await client.subscribeAsync(filter, { qos: 1 });
      if (granted.some(({ qos }) => qos >= REFUSED_FROM)) troubled(`The broker does not let us hear ${filter}.`);
    }
  } catch (error) {
    // That a connection ended is told by its end.
    if (client.connected) troubled(`Not everything could be subscribed to: ${whyOf(error, true).said}`);
  }
}
