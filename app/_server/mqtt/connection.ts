import 'server-only';
import { isIP } from 'node:net';
import mqtt, { type IClientOptions, type MqttClient } from 'mqtt';
import type { Broker } from '#data/brokers/brokers';
import { now } from '../clock';
import { commandTopic } from '#core/readings/sparkplug/topic';
import { Intake, type Life } from './intake';
import { MessageReader } from './read-message';
import { encodeRebirth } from './sparkplug/decode';
import type { Where } from './where';
import { type Why, whyOf } from './why';

/** Versions of MQTT by the number that stands in CONNECT: 3.1.1 and 5. */
export type Version = 4 | 5;

/** s between two signs of life on a connection on which nothing else is said. */
const KEEPALIVE_S = 60;
const CONNECT_WITHIN_MS = 10_000;
const FAREWELL_MS = 1000;
const NO_ANSWER: Why = { said: 'The machine does not answer.', mayBeVersion: false };
/** s for which the broker keeps what is for us after we went away (MQTT 5; 3.1.1 leaves it to the broker). */
const KEPT_FOR_S = 7 * 86_400;
/** Messages that may be on their way unacknowledged (MQTT 5). */
const ON_THEIR_WAY = 1000;
/** ms after which a node that was asked to be born again may be asked once more. */
const ASK_AGAIN_MS = 30_000;
/** Reason codes from which on a subscription was refused (MQTT 3.1.1 and 5, SUBACK). */
const REFUSED_FROM = 128;

/** What a connection tells. */
export interface Ears {
  /** The broker took it. */
  taken: (version: Version) => void;
  /** Something of it does not work. */
  troubled: (said: string) => void;
}

/** A connection. */
export interface Connection {
  /** Resolves once it is over, with why. */
  over: Promise<Why & { wasTaken: boolean }>;
  /** Stores what came, says farewell, and ends it. The broker keeps what comes meanwhile. */
  stop: () => Promise<void>;
}

/**
 * The name Holdfast has at a broker: the same at every connection, so that the broker keeps what comes meanwhile. A broker has to
 * take 23 letters and figures (MQTT 3.1.1, 3.1.3.1).
 */
export function clientIdOf(sourceId: string): string {
  return `holdfast${sourceId.replaceAll('-', '').slice(-15)}`;
}

/**
 * Connects to a broker once, and subscribes. Each message is acknowledged once it is stored and not before: what is
 * unacknowledged when the connection or the process ends, the broker sends again.
 */
export function connectTo(
  broker: Broker,
  where: Where,
  { version, password }: { version: Version; password: string | null },
  ears: Ears,
): Connection {
  const client = mqtt.connect(optionsFor(broker, where, version, password));
  const reader = new MessageReader(broker);
  const life: Life = { sinceMs: now().getTime(), mayRepeat: false };
  const intake = new Intake(broker, reader, life, askerOf(client, broker));
  let isReached = false;
  for (const event of ['connect', 'secureConnect'])
    client.stream.once(event, () => {
      isReached = true;
    });
  let wasTaken = false;
  let last: unknown;
  // Handed on to what takes them in, which says when the next may come; the acknowledgement is sent once it is stored.
  client.handleMessage = ({ topic, payload, qos, dup, retain, messageId }, done) => {
    const hand = () => (qos === 1 ? done(new Error('it is acknowledged once it is stored')) : done());
    const asked = qos === 1 && messageId !== undefined ? { packetId: messageId } : {};
    const acknowledge = acknowledger(client, asked.packetId);
    const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
    intake.take({ topic, payload: bytes, isRetained: retain, isAgain: dup, acknowledge, ...asked }, hand);
  };
  // Told before anything that came with it is handled.
  client.on('packetreceive', (packet) => {
    if (packet.cmd === 'connack') life.mayRepeat = packet.sessionPresent;
  });
  client.on('connect', () => {
    wasTaken = true;
    ears.taken(version);
    void subscribe(client, broker, reader.filters(), ears);
  });
  client.on('error', (error) => {
    last = error;
  });
  client.on('disconnect', ({ reasonCode }) => {
    last = Object.assign(new Error('the broker ended it'), { code: reasonCode });
  });
  const over = new Promise<Why & { wasTaken: boolean }>((resolve) => {
    client.once('close', () => {
      client.end(true);
      const why = isReached || last !== undefined ? whyOf(last, wasTaken) : NO_ANSWER;
      void intake.stop().then(() => resolve({ ...why, wasTaken }));
    });
  });
  return {
    over,
    stop: async () => {
      await intake.stop();
      client.end();
      // Whoever does not hear the farewell is left without one.
      const late = setTimeout(() => client.stream.destroy(), FAREWELL_MS);
      await over;
      clearTimeout(late);
    },
  };
}

function optionsFor(broker: Broker, where: Where, version: Version, password: string | null): IClientOptions {
  const { host, port, name, isTls } = where;
  const tls = {
    ...(isIP(name) === 0 ? { servername: name } : {}),
    ...(broker.authority === null ? {} : { ca: broker.authority }),
  };
  const kept = { sessionExpiryInterval: KEPT_FOR_S, receiveMaximum: ON_THEIR_WAY };
  return {
    protocol: isTls ? 'mqtts' : 'mqtt',
    host,
    port,
    clientId: clientIdOf(broker.sourceId),
    protocolVersion: version,
    clean: false,
    keepalive: KEEPALIVE_S,
    connectTimeout: CONNECT_WITHIN_MS,
    // Whoever holds the connection begins a new one, so that nothing of one is taken for part of the next.
    reconnectPeriod: 0,
    resubscribe: false,
    ...(broker.username === null ? {} : { username: broker.username }),
    ...(password === null ? {} : { password }),
    ...(version === 5 ? { properties: kept } : {}),
    ...(isTls ? tls : {}),
  };
}

/** PUBACK, which is the same in both versions where nothing went wrong (MQTT 3.1.1, 3.4; MQTT 5, 3.4.2.1). */
function acknowledger(client: MqttClient, packetId: number | undefined): () => void {
  const { stream } = client;
  return () => {
    if (packetId === undefined || stream.destroyed) return;
    stream.write(Buffer.from([0x40, 0x02, packetId >> 8, packetId & 0xff]));
  };
}

async function subscribe(client: MqttClient, broker: Broker, filters: string[], ears: Ears): Promise<void> {
  try {
    const given = broker.ended.map((topic) => topic.replaceAll(/\{(system|sensor)\}/g, '+'));
    const unwanted = [...new Set(given)].filter((filter) => !filters.includes(filter));
    if (unwanted.length > 0) await client.unsubscribeAsync(unwanted);
    for (const filter of filters) {
      const granted = await client.subscribeAsync(filter, { qos: 1 });
      if (granted.some(({ qos }) => qos >= REFUSED_FROM)) ears.troubled(`The broker does not let us hear ${filter}.`);
    }
  } catch (error) {
    // That a connection ended is told by its end.
    if (client.connected) ears.troubled(`Not everything could be subscribed to: ${whyOf(error, true).said}`);
  }
}

/** Asks nodes to be born again, where that was allowed; each not too often. */
function askerOf(client: MqttClient, { asksRebirth }: Broker): (group: string, node: string) => void {
  const asked = new Map<string, number>();
  return (group, node) => {
    const atMs = now().getTime();
    const topic = commandTopic(group, node);
    if (!asksRebirth || atMs - (asked.get(topic) ?? 0) < ASK_AGAIN_MS) return;
    asked.set(topic, atMs);
    client.publish(topic, Buffer.from(encodeRebirth(atMs)), { qos: 0 });
  };
}
