import 'server-only';
import { SET_BACK_MS } from '#core/time/set-back';
import { findSitesToJudge } from '#data/alarms/turn';
import { listen } from '#data/listen';
import { ARRIVAL_CHANNEL } from '#data/readings/arrivals';
import { judgeSite } from '../alarms/judge-site';
import { wakeLostCalls } from '../alarms/make-call';
import { now } from '../clock';
import { logError } from '../log';

/** ms between two looks at the clock: what is due is found within one. */
const TICK_MS = 1000;
/** ms after which a site is looked at though nothing called for it: that somebody listens is noted with it. */
const LOOK_MS = 30_000;
/** ms a site is left alone after judging it broke. */
const REST_MS = 5000;
/** ticks from one search for lost calls to the next. */
const CALLS_EVERY = 4;
/** Sites judged at once: a turn mostly waits for the database, a dozen questions one after the other. */
const AT_ONCE = 8;

const UUID = /^[0-9a-f-]{36}$/;

/** Whoever judges. */
export interface Judging {
  /** Lets what is under way end, and judges no more. */
  stop: () => Promise<void>;
}

/**
 * Judges the alarms of every site from now on: at once when readings arrive, and each second what is due by the clock. It is
 * no job of the job library: a job of a worker that was killed would stay locked for hours. Several workers may judge; each
 * turn of a site is had by one of them, and what one leaves undone the next second's look of any finds.
 */
export function judgeAlarms(): Judging {
  const waiting = new Set<string>();
  const underWay = new Map<string, Promise<void>>();
  const resting = new Map<string, number>();
  let isOver = false;
  let ticks = 0;

  const next = (): void => {
    for (const site of waiting) {
      if (isOver || underWay.size >= AT_ONCE) return;
      if (underWay.has(site) || (resting.get(site) ?? 0) > performance.now()) continue;
      waiting.delete(site);
      const turn = judge(site).then((outcome) => {
        underWay.delete(site);
        resting.delete(site);
        if (outcome === 'more') waiting.add(site);
        if (outcome === 'broke') resting.set(site, performance.now() + REST_MS);
        next();
      });
      underWay.set(site, turn);
    }
  };
  const look = async (): Promise<void> => {
    const at = now();
    const [lookedBefore, setBackAfter] = [at.getTime() - LOOK_MS, at.getTime() + SET_BACK_MS];
    for (const site of await findSitesToJudge(at, new Date(lookedBefore), new Date(setBackAfter))) waiting.add(site);
    next();
    ticks += 1;
    if (ticks % CALLS_EVERY === 0) await wakeLostCalls(at);
  };

  const ticking = repeat(look);
  const listening = listen(ARRIVAL_CHANNEL, {
    heard: (site) => {
      if (UUID.test(site)) waiting.add(site);
      next();
    },
    begun: ticking.now,
  });
  return {
    stop: async () => {
      isOver = true;
      await Promise.all([ticking.stop(), listening.stop(), ...underWay.values()]);
    },
  };
}

/** Judges a site once. @returns whether more is waiting than one turn takes, or it broke; what arrives meanwhile is heard of */
async function judge(site: string): Promise<'done' | 'more' | 'broke'> {
  try {
    const { isMore } = await judgeSite(site, now());
    return isMore ? 'more' : 'done';
  } catch (error) {
    logError('alarms were not judged', error);
    return 'broke';
  }
}

/** Does something each second, one at a time. */
function repeat(work: () => Promise<void>): { now: () => void; stop: () => Promise<void> } {
  let doing: Promise<void> | null = null;
  const go = (): void => {
    doing ??= work()
      .catch((error: unknown) => logError('what is due was not looked for', error))
      .finally(() => {
        doing = null;
      });
  };
  const timer = setInterval(go, TICK_MS);
  return {
    now: go,
    stop: async () => {
      clearInterval(timer);
      await doing;
    },
  };
}
