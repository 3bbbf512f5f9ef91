import 'server-only';
import { listen, type Listening } from '#data/listen';
import { NEWS, NEWS_CHANNEL, readNews, type What } from '#data/news';

/** Told what has changed at a site. */
export type Hearer = (what: readonly What[]) => void;

/** One for the whole process: the web server may load this file once a bundle. */
interface Hub {
  hearers: Map<string, Set<Hearer>>;
  /** Ends every stream, when the process is asked to end. */
  enders: Set<() => void>;
  /** Whether it was: a browser that comes back meanwhile, over a connection it still has, is sent away. */
  isEnding: boolean;
  listening: Listening | null;
}

const kept: typeof globalThis & { holdfastHub?: Hub } = globalThis;

function hub(): Hub {
  kept.holdfastHub ??= begin();
  return kept.holdfastHub;
}

function begin(): Hub {
  const begun: Hub = { hearers: new Map(), enders: new Set(), isEnding: false, listening: null };
  // A server waits for every answer that is under way before it ends, and a stream never ends by itself.
  for (const signal of ['SIGTERM', 'SIGINT'] as const)
    process.once(signal, () => {
      begun.isEnding = true;
      for (const end of begun.enders) end();
      void closeHub();
    });
  return begun;
}

function hear(said: string): void {
  const told = readNews(said);
  if (!told) return;
  for (const hearer of hub().hearers.get(told.site) ?? []) hearer([told.what]);
}

/** After a break nobody knows what was missed, so everything counts as changed. */
function hearAll(): void {
  for (const hearers of hub().hearers.values()) for (const hearer of hearers) hearer(NEWS);
}

/**
 * Hears of changes at a site, as long as it wants. All who hear in one process share one connection to the database.
 *
 * @param siteId   the site
 * @param hearer   told what has changed; everything, when listening begins or was broken
 * @param end      called when the process is about to end
 * @returns        stops hearing
 */
export function hearNews(siteId: string, hearer: Hearer, end: () => void): () => void {
  const { hearers, enders, isEnding } = hub();
  if (isEnding) {
    queueMicrotask(end);
    return () => undefined;
  }
  const here = hearers.get(siteId) ?? new Set();
  hearers.set(siteId, here.add(hearer));
  enders.add(end);
  hub().listening ??= listen(NEWS_CHANNEL, { heard: hear, begun: hearAll });
  return () => {
    here.delete(hearer);
    enders.delete(end);
    if (here.size === 0 && hearers.get(siteId) === here) hearers.delete(siteId);
    if (hearers.size === 0) void closeHub();
  };
}

/** Stops listening; whoever hears next begins again. */
async function closeHub(): Promise<void> {
  const { listening } = hub();
  hub().listening = null;
  await listening?.stop();
}
