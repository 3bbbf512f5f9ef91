import 'server-only';
import { randomUUID } from 'node:crypto';
import { type Broker, livingBrokers } from '#data/brokers/brokers';
import { holdBroker, letBrokerGo } from '#data/brokers/hold';
import { now } from '../clock';
import { logError } from '../log';
import { type Staying, stayConnected } from '../mqtt/stay-connected';

/** ms between two looks at what brokers there are. */
const LOOK_MS = 2000;
/** s after which a broker is another worker's when its own said nothing. */
const HOLD_S = 15;

/** A connection that this worker has. */
interface Held {
  broker: Broker;
  print: string;
  staying: Staying;
  /** When it was last said to be this worker's, ms since 1970. */
  saidMs: number;
}

/** Whoever keeps the connections. */
export interface Keeping {
  /** Ends them, so that another worker has them at once. */
  stop: () => Promise<void>;
}

/**
 * Keeps the connections to all brokers from now on, each held by one worker at a time: one that is killed loses them within
 * seconds, and what came meanwhile the broker has kept.
 */
export function keepBrokers(lookMs: number = LOOK_MS, holdS: number = HOLD_S): Keeping {
  const worker = randomUUID();
  const held = new Map<string, Held>();

  const letGo = async (id: string): Promise<void> => {
    const one = held.get(id);
    held.delete(id);
    await one?.staying.stop();
    if (one) await letBrokerGo(one.broker, worker).catch(() => undefined);
  };
  const take = async (broker: Broker): Promise<void> => {
    const print = JSON.stringify({ ...broker, passwordSealed: broker.passwordSealed?.join() ?? null });
    const before = held.get(broker.sourceId);
    const saidMs = now().getTime();
    const isOurs = await holdBroker(broker, worker, holdS);
    if (before && isOurs && before.print === print) before.saidMs = saidMs;
    else if (before) await letGo(broker.sourceId);
    else if (isOurs) held.set(broker.sourceId, { broker, print, saidMs, staying: stayConnected(broker) });
  };
  const look = async (): Promise<void> => {
    try {
      const brokers = await livingBrokers();
      const living = new Set(brokers.map(({ sourceId }) => sourceId));
      await Promise.all([...held.keys()].filter((id) => !living.has(id)).map(letGo));
      await Promise.all(brokers.map(take));
    } catch (error) {
      logError('brokers were not looked for', error);
      // Somebody else may have them by now, and nothing could be stored.
      const lateMs = now().getTime() - holdS * 1000;
      await Promise.all([...held].filter(([, { saidMs }]) => saidMs < lateMs).map(([id]) => letGo(id)));
    }
  };

  let looking: Promise<void> | null = null;
  const go = (): void => {
    looking ??= look().finally(() => {
      looking = null;
    });
  };
  go();
  const timer = setInterval(go, lookMs);
  return {
    stop: async () => {
      clearInterval(timer);
      await looking;
      await Promise.all([...held.keys()].map(letGo));
    },
  };
}
