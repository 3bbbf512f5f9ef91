import 'server-only';
import type { MessageType } from '#core/alarms/message-types';

/** What somebody is told, by whichever way. */
export interface Message {
  subject: string;
  /** All of it, in plain lines. */
  text: string;
  /** One sentence that can be read out. */
  short: string;
  /** The page it leads to. Opening it changes nothing. */
  url: string;
  /** Of two messages about the same, the later replaces the earlier: id of the alarm, of whoever went in alone, or of the test. */
  about: string;
  /** What machines are told of it. */
  data: Record<string, unknown>;
  type: MessageType;
}

/** Somebody to be told: the id tells a repeat from something new, on every way. */
export interface Recipient {
  /** Id of the call. */
  id: string;
  siteId: string;
  accountId: string;
  /** Null: they have none, or their account has ended. */
  email: string | null;
  madeAt: Date;
}

/** How an attempt went: somebody took the message onward, nobody did, or there is no way at all. */
export interface Sent {
  result: 'taken' | 'failed' | 'no-way';
  detail?: string;
}

/** Characters that are kept of what a service said. */
const SAID = 200;

/** What went wrong, in few words. */
export function failed(error: unknown, otherwise: string): Sent {
  return { result: 'failed', detail: error instanceof Error ? error.message.slice(0, SAID) : otherwise };
}
