import { setTimeout as wait } from 'node:timers/promises';
import type { LoadSite } from './load-site';

/** ms after a stream that broke off, as a browser waits. */
const AGAIN_MS = 1000;

/** Pages that are open all the time. */
export interface LivePages {
  /** Instants, ms, at which each page was told that something about alarms has changed. */
  told: number[][];
  stop: () => void;
}

/** Opens pages that hear of changes at the site, and opens them again when they break off. */
export function openPages(address: string, site: LoadSite, count: number): LivePages {
  const over = new AbortController();
  const told = Array.from({ length: count }, (): number[] => []);
  for (const page of told) void hear(address, site, page, over.signal);
  return { told, stop: () => over.abort() };
}

async function hear(address: string, { key, cookie }: LoadSite, told: number[], signal: AbortSignal): Promise<void> {
  const text = new TextDecoder();
  while (!signal.aborted) {
    try {
      const response = await fetch(`${address}/api/live/${key}`, { headers: { cookie }, signal });
      if (response.status !== 200) throw new Error(`a live page was answered ${response.status}`);
      for await (const piece of response.body ?? []) {
        const at = Date.now();
        if (/^data:.*\balarms\b/m.test(text.decode(piece))) told.push(at);
      }
    } catch {
      await wait(AGAIN_MS, undefined, { signal }).catch(() => undefined);
    }
  }
}
