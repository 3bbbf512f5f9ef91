import 'server-only';
import type { What } from '#data/news';

/** ms during which changes are gathered after one was told, so that a storm of them is a few lines. */
const GATHER_MS = 250;

/** Whoever gathers changes. */
export interface Gatherer {
  add: (what: readonly What[]) => void;
  /** Tells nothing more. */
  stop: () => void;
}

/**
 * Tells the first change at once, and those that follow together. Readings come all the time: they hold nothing else back.
 *
 * @param tell   told what has changed, each word once
 */
export function gather(tell: (what: readonly What[]) => void): Gatherer {
  const waiting = new Set<What>();
  let timer: NodeJS.Timeout | undefined;
  let isHeld = false;
  const flush = () => {
    clearTimeout(timer);
    timer = undefined;
    if (waiting.size === 0) return;
    const told = [...waiting];
    waiting.clear();
    isHeld = told.some(isMore);
    timer = setTimeout(flush, GATHER_MS);
    tell(told);
  };
  return {
    add: (what) => {
      for (const one of what) waiting.add(one);
      if (timer === undefined || (!isHeld && what.some(isMore))) flush();
    },
    stop: () => clearTimeout(timer),
  };
}

function isMore(what: What): boolean {
  return what !== 'readings';
}
