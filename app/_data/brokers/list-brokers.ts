import 'server-only';
import { database } from '../client';
import { asTopic, type TopicRow } from './brokers';

/** A broker as it is listed: how the connection stands and what came. */
export interface BrokerEntry {
  sourceId: string;
  address: string;
  username: string | null;
  hasPassword: boolean;
  authority: string | null;
  asksRebirth: boolean;
  topics: TopicRow[];
  state: {
    /** 4 for MQTT 3.1.1, 5 for MQTT 5; null while it is not connected. */
    version: number | null;
    connectedAt: Date | null;
    heldUntil: Date | null;
    messageAt: Date | null;
    failedAt: Date | null;
    failedWhy: string | null;
    messages: number;
    stored: number;
    refused: number;
    retained: number;
  };
  nodes: { name: string; phase: string; since: Date; gaps: number; heldBack: number }[];
}

/** The living brokers of a site, the newest first. */
export async function listBrokers(siteId: string): Promise<BrokerEntry[]> {
  const rows = await database().readingBroker.findMany({
    where: { siteId, source: { endedAt: null } },
    include: {
      topics: { where: { endedAt: null }, orderBy: { id: 'asc' } },
      state: true,
      nodes: { orderBy: { name: 'asc' } },
    },
    orderBy: { sourceId: 'desc' },
  });
  return rows.map(({ topics, state, nodes, passwordSealed, siteId: _, ...row }) => ({
    ...row,
    hasPassword: passwordSealed !== null,
    topics: topics.map(asTopic),
    state: {
      version: state?.version ?? null,
      connectedAt: state?.connectedAt ?? null,
      heldUntil: state?.heldUntil ?? null,
      messageAt: state?.messageAt ?? null,
      failedAt: state?.failedAt ?? null,
      failedWhy: state?.failedWhy ?? null,
      messages: Number(state?.messages ?? 0),
      stored: Number(state?.stored ?? 0),
      refused: Number(state?.refused ?? 0),
      retained: Number(state?.retained ?? 0),
    },
    nodes: nodes.map(({ name, phase, since, gaps, heldBack }) => ({
      name,
      phase,
      since,
      gaps,
      heldBack: Number(heldBack),
    })),
  }));
}
