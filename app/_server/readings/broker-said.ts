import 'server-only';
import type { Payload } from '#core/readings/topics';
import type { BrokerEntry } from '#data/brokers/list-brokers';

/** A broker as it is shown. Instants are UTC, ISO. */
export interface BrokerSaid {
  address: string;
  username: string | null;
  hasPassword: boolean;
  hasAuthority: boolean;
  asksRebirth: boolean;
  isEncrypted: boolean;
  topics: {
    id: string;
    topic: string;
    payload: Payload;
    field: string | null;
    timeField: string | null;
    unit: string | null;
  }[];
  /** Since when it is connected, and by which version of MQTT; null while it is not. */
  connected: { since: string; version: '3.1.1' | '5' } | null;
  /** Whether a worker has it in hand at all. */
  isHeld: boolean;
  messageAt: string | null;
  failed: { at: string; why: string } | null;
  counts: { messages: number; stored: number; refused: number; retained: number };
  nodes: { name: string; phase: string; since: string; gaps: number; heldBack: number }[];
}

/** What is said of a broker at an instant: a worker that says nothing any more is not connected either. */
export function brokerSaid(entry: BrokerEntry | undefined, at: Date): BrokerSaid | null {
  if (!entry) return null;
  const { state, nodes, topics, authority, address, username, hasPassword, asksRebirth } = entry;
  const isHeld = state.heldUntil !== null && state.heldUntil > at;
  const { connectedAt, version, messages, stored, refused, retained } = state;
  return {
    address,
    username,
    hasPassword,
    asksRebirth,
    hasAuthority: authority !== null,
    isEncrypted: address.startsWith('mqtts:'),
    topics,
    isHeld,
    connected:
      isHeld && connectedAt ? { since: connectedAt.toISOString(), version: version === 5 ? '5' : '3.1.1' } : null,
    messageAt: state.messageAt?.toISOString() ?? null,
    failed: state.failedAt && { at: state.failedAt.toISOString(), why: state.failedWhy ?? '' },
    counts: { messages, stored, refused, retained },
    nodes: nodes.map(({ since, ...node }) => ({ ...node, since: since.toISOString() })),
  };
}
