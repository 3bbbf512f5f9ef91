'use client';

import { liveQuery } from 'dexie';
import { useCallback, useEffect, useState } from 'react';
import { clock, setWalker, walker } from './device';
import { type Ended, sendWaiting } from './send';
import { countOthers, type Kept, keepPack, readAll } from './store';
import { countUnsent } from './view';
import { fetchPack, type Unanswered } from './wire';

/** How this telephone and Holdfast are to one another. */
export interface Line {
  state: 'asking' | 'reached' | Unanswered;
  /** Why not, in a sentence. */
  said: string | null;
  /** When it was last tried, ms since 1970. */
  atMs: number | null;
}

/** ms between two attempts while something waits. */
const AGAIN_MS = 30_000;

/**
 * What is kept on this telephone for whoever walks here, and its line to Holdfast: fetched anew and sent whenever there is a
 * signal, that is when the page opens or comes back to sight, when the network says it is there, and every half minute while
 * something waits.
 */
export function useKept(site: string) {
  const [account, setAccount] = useState<string | null>(null);
  const [kept, setKept] = useState<Kept | null>(null);
  const [others, setOthers] = useState(0);
  const [line, setLine] = useState<Line>({ state: 'asking', said: null, atMs: null });

  const meet = useCallback(async () => {
    const ended = await exchange(site);
    setAccount(walker());
    setLine({
      ...(ended.why === 'done' ? { state: 'reached', said: null } : { state: ended.why, said: ended.said }),
      atMs: clock(),
    });
  }, [site]);

  useEffect(() => {
    setAccount(walker());
    void meet();
    const seen = () => document.visibilityState === 'visible' && void meet();
    const again = () => void meet();
    window.addEventListener('online', again);
    document.addEventListener('visibilitychange', seen);
    return () => {
      window.removeEventListener('online', again);
      document.removeEventListener('visibilitychange', seen);
    };
  }, [meet]);

  useEffect(() => {
    const watched = liveQuery(async () => ({
      kept: account === null ? null : await readAll({ account, site }),
      others: await countOthers(account),
    })).subscribe({
      next: (found) => {
        setKept(found.kept);
        setOthers(found.others);
      },
      error: () => setLine({ state: 'refused', said: 'This browser keeps nothing: walk online.', atMs: clock() }),
    });
    return () => watched.unsubscribe();
  }, [account, site]);

  const unsent = kept ? countUnsent(kept) : null;
  const waits = unsent !== null && unsent.entries + unsent.photos > 0;
  useAgain(waits, meet);

  return { kept, others, line, meet, account, unsent };
}

/** Tries again from time to time for as long as something waits. */
function useAgain(waits: boolean, meet: () => Promise<void>): void {
  useEffect(() => {
    if (!waits) return;
    const timer = setInterval(() => void meet(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [waits, meet]);
}

/** Sends what waits and fetches what is new. */
async function exchange(site: string): Promise<Ended> {
  const known = walker();
  const sent: Ended = known === null ? { why: 'done' } : await sendWaiting({ account: known, site });
  const pack = await fetchPack(site);
  if (!pack.ok) {
    // Whoever was here has signed out elsewhere, or their session has ended: nothing of theirs is shown, nothing is lost.
    if (pack.why === 'not-signed-in') setWalker(null);
    return pack;
  }
  setWalker(pack.value.account.id);
  await keepPack(pack.value, clock());
  // Somebody else has signed in: what they have waiting is sent now, and not what was sent in vain.
  return pack.value.account.id === known ? sent : await sendWaiting({ account: pack.value.account.id, site });
}
