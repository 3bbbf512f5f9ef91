import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';
import { ok, type Result, refused } from '#core/result';
import type { Broker } from '#data/brokers/brokers';
import { noteConnected, noteFailed } from '#data/brokers/hold';
import { now } from '../clock';
import { logError, logInfo } from '../log';
import { unseal } from '../machine/seal';
import { type Connection, connectTo, type Version } from './connection';
import { whereIs } from './where';
import { whyOf } from './why';

/** ms between two attempts, at first and at most. */
const FIRST_PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 60_000;
/** ms a connection must have lived for the next attempt to be a first one. */
const LONG_LIFE_MS = 60_000;

/** What a password is sealed for. */
export const BROKER_PASSWORD = 'broker password';

/** Whoever stays connected. */
export interface Staying {
  /** Stores what came, and ends the connection. */
  stop: () => Promise<void>;
}

/**
 * Connects to a broker and stays so until it is stopped: after a break it comes back, each time a little later. MQTT 5 is tried
 * first; a broker that does not speak it is met with 3.1.1 from then on.
 */
export function stayConnected(broker: Broker): Staying {
  const end = new AbortController();
  let connection: Connection | null = null;
  const staying = (async () => {
    let version: Version = 5;
    let failures = 0;
    let goneSinceMs = 0;
    while (!end.signal.aborted) {
      const begunMs = now().getTime();
      const attempt = await begin(broker, version, goneSinceMs);
      if (attempt.ok) {
        connection = attempt.value;
        if (end.signal.aborted) await connection.stop();
        const { said, mayBeVersion, wasTaken } = await connection.over;
        connection = null;
        if (wasTaken) goneSinceMs = now().getTime();
        if (end.signal.aborted) break;
        // Not told yet: that the broker knows only the older version is no failure.
        if (mayBeVersion && version === 5) {
          version = 4;
          continue;
        }
        if (mayBeVersion && !wasTaken) version = 5;
        await tell(broker, said);
      } else await tell(broker, attempt.reason);
      failures = now().getTime() - begunMs > LONG_LIFE_MS ? 0 : failures + 1;
      const pauseMs = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.max(0, failures - 1));
      await wait(pauseMs, undefined, { signal: end.signal }).catch(() => undefined);
    }
  })().catch((error: unknown) => logError('a broker is left alone', error, { source: broker.sourceId }));
  return {
    stop: async () => {
      end.abort();
      await connection?.stop();
      await staying;
    },
  };
}

async function begin(broker: Broker, version: Version, goneSinceMs: number): Promise<Result<Connection, string>> {
  const password = passwordOf(broker);
  if (!password.ok) return password;
  try {
    const where = await whereIs(broker.address);
    if (!where.ok) return where;
    return ok(connectTo(broker, where.value, { version, password: password.value, goneSinceMs }, earsOf(broker)));
  } catch (error) {
    return refused(whyOf(error, false).said);
  }
}

function passwordOf({ passwordSealed }: Broker): Result<string | null, string> {
  if (passwordSealed === null) return ok(null);
  const opened = unseal(passwordSealed, BROKER_PASSWORD);
  return opened.ok ? opened : refused('The password cannot be read on this machine: type it again.');
}

function earsOf(broker: Broker) {
  const note = (what: Promise<void>) => {
    what.catch((error: unknown) => logError('the state of a broker was not noted', error));
  };
  return {
    taken: (version: Version) => {
      logInfo('connected to a broker', { source: broker.sourceId, version });
      note(noteConnected(broker, version, now()));
    },
    troubled: (said: string) => note(noteFailed(broker, said, now(), true)),
  };
}

async function tell(broker: Broker, said: string): Promise<void> {
  logInfo('no connection to a broker', { source: broker.sourceId, why: said });
  await noteFailed(broker, said, now(), false).catch((error: unknown) =>
    logError('the state of a broker was not noted', error),
  );
}
