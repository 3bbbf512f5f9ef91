import 'server-only';
import pg from 'pg';
import { pool } from './pool';

/** ms before a lost connection is opened again at first, and at most. */
const FIRST_PAUSE_MS = 200;
const LONGEST_PAUSE_MS = 5000;
/** ms between two questions that only find out whether the connection is still there, and what the answer may take. */
const GLANCE_MS = 15_000;
const PATIENCE_MS = 5000;

/** Somebody who listens. */
export interface Listening {
  /** Stops, and closes the connection. */
  stop: () => Promise<void>;
}

/** What a listener does. */
export interface Ear {
  /** Called with what was said on the channel. */
  heard: (said: string) => void;
  /** Called when listening begins, and again after each break: something may have been said that nobody heard. */
  begun: () => void;
}

/**
 * Listens to a channel of the database on a connection of its own, which is opened again whenever it breaks. What is said
 * while it is broken is lost, so whoever listens has to look for themselves each time `begun` is called.
 *
 * @param channel   its name, a plain word
 * @param ear       what to do
 */
export function listen(channel: string, ear: Ear): Listening {
  let end: () => Promise<void> = async () => undefined;
  let comingBack: NodeJS.Timeout | undefined;
  let failures = 0;
  let isOver = false;
  const open = (): void => {
    end = connect(channel, {
      heard: ear.heard,
      begun: () => {
        failures = 0;
        ear.begun();
      },
      lost: () => {
        if (isOver) return;
        comingBack = setTimeout(open, Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** failures));
        failures = Math.min(failures + 1, 10);
      },
    });
  };
  open();
  return {
    stop: async () => {
      isOver = true;
      clearTimeout(comingBack);
      await end();
    },
  };
}

/** One connection, from its opening until it is lost, which is said once. @returns ends it */
function connect(channel: string, { heard, begun, lost }: Ear & { lost: () => void }): () => Promise<void> {
  const client = new pg.Client({ ...pool().options, keepAlive: true });
  let glancing: NodeJS.Timeout | undefined;
  let isLost = false;
  const lose = () => {
    if (isLost) return;
    isLost = true;
    clearTimeout(glancing);
    client.end().catch(() => undefined);
    lost();
  };
  // A connection whose other end is gone without a word looks like one on which nothing is said.
  const glance = () => {
    const late = setTimeout(lose, PATIENCE_MS);
    const asked = client.query('SELECT 1').finally(() => clearTimeout(late));
    asked.then(() => {
      if (!isLost) glancing = setTimeout(glance, GLANCE_MS);
    }, lose);
  };
  client.on('error', lose);
  client.on('end', lose);
  client.on('notification', ({ payload }) => heard(payload ?? ''));
  const opened = client.connect().then(() => client.query(`LISTEN ${channel}`));
  opened.then(() => {
    if (isLost) return;
    glancing = setTimeout(glance, GLANCE_MS);
    begun();
  }, lose);
  return async () => {
    lose();
    await client.end().catch(() => undefined);
  };
}
