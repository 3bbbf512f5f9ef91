import { setTimeout as wait } from 'node:timers/promises';
import { type LoadSite, PROBES, USUAL_C, WARM_C } from './load-site';

/** ms from one body to the next, while each is answered in time. */
const EVERY_MS = 100;
/** ms of readings one body holds at most: what was held up is sent together. */
const MOST_MS = 5000;
/** ms after a body that was not answered. */
const AGAIN_MS = 200;
const PATIENCE_MS = 10_000;
/** Each second one probe more becomes warm, for so long. */
const WARM_MS = 2000;
const SECOND_MS = 1000;

/** What a gateway was answered. */
export interface Sent {
  /** Readings answered as stored, by sensor and instant in ms. */
  answered: Map<string, number>;
  /** Times a probe became warm of which the first warm reading was answered: sensor and instant of that reading. */
  crossings: { sensor: string; atMs: number }[];
  /** Bodies that were sent again, since no answer came or one that asked to. */
  again: number;
  /** ms each body took to be answered, of those answered at once. */
  tookMs: number[];
}

/** A gateway that sends all the time. */
export interface Gateway extends Sent {
  /** Sends what is still to be sent, and ends. */
  stop: () => Promise<void>;
}

/**
 * Sends readings at a steady rate as a gateway does: bodies one after another, each again until it is answered, so that none is
 * left out and none comes before one taken earlier.
 *
 * @param rate   readings a second
 */
export function sendSteadily(address: string, site: LoadSite, rate: number): Gateway {
  const sent: Sent = { answered: new Map(), crossings: [], again: 0, tookMs: [] };
  const began = Date.now();
  const stepMs = (SECOND_MS * PROBES) / rate;
  let isOver = false;
  const sending = (async () => {
    for (let fromMs = began; !isOver; ) {
      await wait(Math.max(0, fromMs + EVERY_MS - Date.now()));
      const steps = Math.floor(Math.min(Date.now() - fromMs, MOST_MS) / stepMs);
      await deliver(address, site, bodyOf(site, began, fromMs, { steps, stepMs }), sent);
      fromMs += steps * stepMs;
    }
  })();
  return {
    ...sent,
    get again() {
      return sent.again;
    },
    stop: async () => {
      isOver = true;
      await sending;
    },
  };
}

interface Steps {
  steps: number;
  stepMs: number;
}

interface Line {
  sensor: string;
  atMs: number;
  value: number;
  record: { n: string; t: number; v: number };
}

/** The readings of each probe in one stretch. */
function bodyOf({ probes }: LoadSite, began: number, fromMs: number, { steps, stepMs }: Steps): Line[] {
  return probes.flatMap(({ id, name }, probe) =>
    Array.from({ length: steps }, (_, i) => {
      const atMs = fromMs + i * stepMs;
      const value = isWarm(probe, atMs - began) ? WARM_C : USUAL_C;
      return { sensor: id, atMs, value, record: { n: name, t: atMs / SECOND_MS, v: value } };
    }),
  );
}

/** Probe 0 is warm in the second and third second, probe 1 in the third and fourth, and so on, round and round. */
function isWarm(probe: number, sinceMs: number): boolean {
  const inRound = (sinceMs - (probe + 1) * SECOND_MS) % (PROBES * SECOND_MS);
  return inRound >= 0 && inRound < WARM_MS;
}

const wasWarm = new Map<string, boolean>();

async function deliver(address: string, { token }: LoadSite, lines: Line[], sent: Sent): Promise<void> {
  const body = JSON.stringify(lines.map(({ record }) => record));
  for (let isFirst = true; ; isFirst = false) {
    const began = performance.now();
    const outcomes = await asked(address, token, body);
    if (outcomes) {
      if (isFirst) sent.tookMs.push(performance.now() - began);
      note(lines, outcomes, sent);
      return;
    }
    sent.again += 1;
    await wait(AGAIN_MS);
  }
}

/** What became of each record; null when it has to be sent again. */
async function asked(address: string, token: string, body: string): Promise<string[] | null> {
  try {
    const response = await fetch(`${address}/api/readings`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/senml+json' },
      body,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (response.status >= 500 || response.status === 429) return null;
    if (response.status !== 200) throw new Error(`answered ${response.status}: ${await response.text()}`);
    const { records } = (await response.json()) as { records: { result: string }[] };
    return records.map(({ result }) => result);
  } catch (error) {
    if (error instanceof Error && error.message.startsWith('answered')) throw error;
    return null;
  }
}

function note(lines: Line[], outcomes: string[], sent: Sent): void {
  for (const [i, { sensor, atMs, value }] of lines.entries()) {
    if (!['stored', 'repeat'].includes(outcomes[i] ?? '')) throw new Error(`a reading was answered ${outcomes[i]}`);
    sent.answered.set(`${sensor} ${atMs}`, value);
    const isNow = value === WARM_C;
    if (isNow && wasWarm.get(sensor) !== true) sent.crossings.push({ sensor, atMs });
    wasWarm.set(sensor, isNow);
  }
}
