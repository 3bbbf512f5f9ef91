import 'server-only';
import { createHash } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { BrokerKey } from '#data/brokers/hold';
import { now } from '../clock';
import { logError } from '../log';
import type { MessageReader, Read } from './read-message';
import { storeBatch } from './store-batch';

/** A message as the client hands it on. */
export interface Delivered {
  topic: string;
  payload: Uint8Array;
  isRetained: boolean;
  /** Whether the broker sent it before. */
  isAgain: boolean;
  /** Absent where nobody waits for an acknowledgement. */
  packetId?: number;
  /** Tells the broker that it is stored. */
  acknowledge: () => void;
}

/** A message that waits to be stored. */
export interface Waiting extends Omit<Delivered, 'topic' | 'payload'> {
  read: Read;
  /** SHA-256 of topic and payload, in hex. */
  digest: string;
}

/** What is known of the connection. */
export interface Life {
  /** When it began, ms since 1970. */
  sinceMs: number;
  /**
   * Whether what comes may have come on an earlier connection: what was not acknowledged there is sent first. A broker has to
   * mark it (MQTT 3.1.1, 3.3.1.1), and not every one does.
   */
  mayRepeat: boolean;
  /** Until when what comes may have waited at the broker, ms since 1970; 0 when nothing can have. */
  waitedUntilMs: number;
}

/** Messages that are stored at once, and that may wait before the broker is made to. */
const BATCH = 500;
const MOST_WAITING = 2000;
/** ms between two tries to store, at first and at most. */
const FIRST_PAUSE_MS = 500;
const LONGEST_PAUSE_MS = 15_000;

/** Takes the messages of one connection in, in their order, and acknowledges each once it is stored. */
export class Intake {
  private waiting: Waiting[] = [];
  private held: (() => void) | null = null;
  private storing: Promise<void> | null = null;
  private lastMs = 0;
  private isOver = false;

  constructor(
    private readonly broker: BrokerKey,
    private readonly reader: MessageReader,
    private readonly life: Life,
    /** Asks a node to be born again, where that is allowed. */
    private readonly askBirth: (group: string, node: string) => void,
  ) {}

  /** Takes a message. @param next   called when the next one may come: what waits is bounded */
  take({ topic, payload, ...delivered }: Delivered, next: () => void): void {
    this.lastMs = Math.max(now().getTime(), this.lastMs + 1);
    const { isRetained } = delivered;
    const mayHaveWaited = this.lastMs < this.life.waitedUntilMs;
    const read = this.reader.read({ topic, payload, isRetained, mayHaveWaited, atMs: this.lastMs });
    const digest = createHash('sha256').update(topic).update('\0').update(payload).digest('hex');
    this.waiting.push({ ...delivered, read, digest });
    if (read.wantsBirth) this.askBirth(read.wantsBirth.group, read.wantsBirth.node);
    if (this.waiting.length < MOST_WAITING) next();
    else this.held = next;
    this.storing ??= this.store().finally(() => {
      this.storing = null;
    });
  }

  /** Stores what is under way and takes nothing more; what still waits is sent again by the broker. */
  async stop(): Promise<void> {
    this.isOver = true;
    await this.storing;
  }

  private async store(): Promise<void> {
    // What came with the same packet from the network is stored together.
    await wait(0);
    let pauseMs = FIRST_PAUSE_MS;
    while (this.waiting.length > 0 && !this.isOver) {
      const batch = this.waiting.slice(0, this.batchLength());
      try {
        await storeBatch(this.broker, this.reader, batch, this.life);
        this.waiting.splice(0, batch.length);
        for (const { acknowledge } of batch) acknowledge();
        pauseMs = FIRST_PAUSE_MS;
        this.release();
      } catch (error) {
        logError('messages of a broker were not stored', error, { source: this.broker.sourceId });
        await wait(pauseMs);
        pauseMs = Math.min(LONGEST_PAUSE_MS, pauseMs * 2);
      }
    }
  }

  /** A batch ends where something is gone, so that what comes after is known to come after. */
  private batchLength(): number {
    const at = this.waiting.findIndex(({ read }) => read.gone !== null);
    return Math.min(BATCH, at < 0 ? this.waiting.length : at + 1);
  }

  private release(): void {
    const next = this.held;
    if (!next || this.waiting.length >= MOST_WAITING / 2) return;
    this.held = null;
    next();
  }
}
