import 'server-only';
import { z } from 'zod';
import type { Transaction } from './transaction';

/** Channel of the database on which a change is made known. */
export const NEWS_CHANNEL = 'holdfast_news';

/** What can have changed at a site that somebody may be looking at. */
export const NEWS = ['alarms', 'readings', 'rounds', 'incidents', 'states', 'sources'] as const;
export type What = (typeof NEWS)[number];

const shape = z.object({ site: z.uuid(), what: z.enum(NEWS) });

/**
 * Makes known that something of a site has changed, to every page that shows it. Said inside the transaction it is heard
 * when that is kept, and not at all when it is not; said twice in one it is heard once.
 *
 * @param what   what has changed; it is told without its content, which every page asks for with its own rights
 */
export async function news(tx: Pick<Transaction, '$executeRaw'>, siteId: string, what: What): Promise<void> {
  await tx.$executeRaw`SELECT pg_notify(${NEWS_CHANNEL}, ${saidOf(siteId, what)})`;
}

/** What is said on the channel, for a statement that does something else besides. */
export function saidOf(siteId: string, what: What): string {
  return JSON.stringify({ site: siteId, what });
}

/** What was heard on the channel; null for something that is none of ours. */
export function readNews(heard: string): { site: string; what: What } | null {
  try {
    return shape.parse(JSON.parse(heard));
  } catch {
    return null;
  }
}
