import 'server-only';
import { isIP } from 'node:net';
import mqtt, { type IClientOptions, type MqttClient } from 'mqtt';
import type { Broker } from '#data/brokers/brokers';
import { now } from '../clock';
import { Intake, type Life } from './intake';
import { MessageReader } from './read-message';
import { askerOf } from './sparkplug/ask-birth';
import { subscribe } from './subscribe';
import type { Where } from './where';
import { type Why, whyOf } from './why';

/** Versions of MQTT by the number that stands in CONNECT: 3.1.1 and 5. */
export type Version = 4 | 5;

/** s between two signs of life on a connection on which nothing else is said. */
const KEEPALIVE_S = 60;
const CONNECT_WITHIN_MS = 10_000;
const FAREWELL_MS = 1000;
/** ms of a break after which it matters when a value was taken that waited. Common practice, no source. */
const SHORT_BREAK_MS = 60_000;
/** ms within which a broker hands on what waited. Common practice, no source. */
const HANDED_ON_MS = 10_000;
const NO_ANSWER: Why = { said: 'The machine does not answer.', mayBeVersion: false };
/** s for which the broker keeps what is for us after we went away (MQTT 5; 3.1.1 leaves it to the broker). */
const KEPT_FOR_S = 7 * 86_400;
/** Messages that may be on their way unacknowledged (MQTT 5). */
const ON_THEIR_WAY = 1000;

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
function clientIdOf(sourceId: string): string {
  return `holdfast${sourceId.replaceAll('-', '').slice(-15)}`;
}

/**
 * Connects to a broker once, and subscribes. Each message is acknowledged once it is stored and not before: what is
 * unacknowledged when the connection or the process ends, the broker sends again. `goneSinceMs` is when the connection before
 * ended, 0 when nobody can say.
 */
export function connectTo(
  broker: Broker,
  where: Where,
  { version, password, goneSinceMs }: { version: Version; password: string | null; goneSinceMs: number },
  ears: Ears,
): Connection {
  const client = mqtt.connect(optionsFor(broker, where, version, password));
  const reader = new MessageReader(broker);
  const life: Life = { sinceMs: now().getTime(), mayRepeat: false, waitedUntilMs: 0 };
  const intake = new Intake(broker, reader, life, askerOf(client, broker));
  let wasTaken = false;
  const last = lastFault(client);
  handOn(client, intake);
  // Told before anything that came with it is handled.
  client.on('packetreceive', (packet) => {
    if (packet.cmd !== 'connack' || !packet.sessionPresent) return;
    life.mayRepeat = true;
    const atMs = now().getTime();
    if (atMs - goneSinceMs > SHORT_BREAK_MS) life.waitedUntilMs = atMs + HANDED_ON_MS;
  });
  client.on('connect', () => {
    wasTaken = true;
    ears.taken(version);
    void subscribe(client, broker, reader.filters(), ears.troubled);
  });
  const reached = wasReached(client);
  const over = new Promise<Why & { wasTaken: boolean }>((resolve) => {
    client.once('close', () => {
      client.end(true);
      const why = reached() || last() !== undefined ? whyOf(last(), wasTaken) : NO_ANSWER;
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

/** Hands messages on to what takes them in, which says when the next may come. */
function handOn(client: MqttClient, intake: Intake): void {
  client.handleMessage = ({ topic, payload, qos, dup, retain, messageId }, done) => {
    // A fault keeps the client from acknowledging by itself; that is done once it is stored.
    const next = () => (qos === 1 ? done(new Error('it is acknowledged once it is stored')) : done());
    const asked = qos === 1 && messageId !== undefined ? { packetId: messageId } : {};
    const acknowledge = acknowledger(client, asked.packetId);
    const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
    intake.take({ topic, payload: bytes, isRetained: retain, isAgain: dup, acknowledge, ...asked }, next);
  };
}

/** @returns what went wrong last; a word of the broker when it ended the connection with one */
function lastFault(client: MqttClient): () => unknown {
  let last: unknown;
  client.on('error', (error) => {
    last = error;
  });
  client.on('disconnect', ({ reasonCode }) => {
    last = Object.assign(new Error('the broker ended it'), { code: reasonCode });
  });
  return () => last;
}

/** @returns whether the machine answered at all */
function wasReached({ stream }: MqttClient): () => boolean {
  let isReached = false;
  for (const event of ['connect', 'secureConnect'])
    stream.once(event, () => {
      isReached = true;
    });
  return () => isReached;
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
