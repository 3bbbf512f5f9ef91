import 'server-only';
import type { ReadRecord } from '#core/readings/arrived';
import { topicTemplate, type TopicTemplate } from '#core/readings/topics';
import { ok, refused } from '#core/result';
import type { Broker, TopicRow } from '#data/brokers/brokers';
import { parseMessage } from '#shape/readings/parse-message';
import { SparkplugNodes } from './sparkplug/nodes';

/** A message as it came. */
export interface Message {
  topic: string;
  payload: Uint8Array;
  /** Whether the broker kept it from before: it says when it was kept in no way. */
  isRetained: boolean;
  /** Whether it may have waited at the broker while nobody was there. */
  mayHaveWaited: boolean;
  /** When it came, ms since 1970; of two messages of a connection never the same. */
  atMs: number;
}

/** What a message says. */
export interface Read {
  records: ReadRecord[];
  /** Values that were not taken: the broker had kept them, and nobody can say of when they are. */
  retained: number;
  /** Names of which nothing more comes; null: none. */
  gone: string[] | null;
  /** Node of Sparkplug that should be born again, if it may be asked. */
  wantsBirth: { group: string; node: string } | null;
}

/** Bytes of a payload that are read. */
const MOST_BYTES = 1_000_000;
const NOTHING: Read = { records: [], retained: 0, gone: null, wantsBirth: null };

/** Reads the messages of one connection to a broker, which is told apart by what is subscribed to there. */
export class MessageReader {
  readonly nodes = new SparkplugNodes();
  private readonly topics: readonly { row: TopicRow; template: TopicTemplate }[];

  constructor({ topics }: Pick<Broker, 'topics'>) {
    this.topics = topics.flatMap((row) => {
      const template = topicTemplate(row.topic);
      return template.ok ? [{ row, template: template.value }] : [];
    });
  }

  /** Topic filters that are wanted, each once. */
  filters(): string[] {
    return [...new Set(this.topics.map(({ template }) => template.filter))];
  }

  /** What a message says; the first subscription that it is of says how it is read. */
  read(message: Message): Read {
    for (const { row, template } of this.topics) {
      const name = template.nameOf(message.topic);
      if (name !== null) return this.readAs(row, name, message);
    }
    return NOTHING;
  }

  private readAs({ payload, ...form }: TopicRow, name: string, message: Message): Read {
    const { isRetained, mayHaveWaited, atMs } = message;
    if (message.payload.byteLength > MOST_BYTES) return faulty(`has more than ${MOST_BYTES / 1e6} MB`, name);
    // Births are never retained: one that is tells of a node as it once was.
    if (payload === 'sparkplug') return isRetained ? { ...NOTHING, retained: 1 } : this.nodes.read(message);
    const text = textOf(message.payload);
    if (text === null) return faulty('is not UTF-8', name);
    const read = parseMessage({ payload, ...form }, name, text, isRetained ? Number.NaN : atMs);
    if (!read.ok) return faulty(read.reason, name);
    if (isRetained) return onlyWithTime(read.value);
    return { ...NOTHING, records: mayHaveWaited ? asWaited(read.value, atMs) : read.value };
  }
}

/** Of what was kept, only what says itself of when it is; it tells nothing of now, and calls nobody. */
function onlyWithTime(records: readonly ReadRecord[]): Read {
  const timed = records.filter((record) => !record.ok || !Number.isNaN(record.value.atMs));
  const past = timed.map((record) => (record.ok ? ok({ ...record.value, isOfPast: true }) : record));
  return { ...NOTHING, records: past, retained: records.length - timed.length };
}

/** Of what waited, what has no time of its own stands at the moment it came, and says so. */
function asWaited(records: readonly ReadRecord[], atMs: number): ReadRecord[] {
  return records.map((record) =>
    record.ok && record.value.atMs === atMs ? ok({ ...record.value, mayHaveWaited: true }) : record,
  );
}

function faulty(why: string, name: string): Read {
  return { ...NOTHING, records: [refused({ field: 'payload', why, name })] };
}

function textOf(payload: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(payload);
  } catch {
    return null;
  }
}
