import 'server-only';
import { listen } from '#data/listen';
import { findSitesToSettle } from '#data/readings/reading-turn';
import { TOUCHED_CHANNEL } from '#data/readings/touched';
import { now } from '../clock';
import { logError } from '../log';
import { rollUpDue } from '../readings/roll-up-due';
import { settleSite } from '../readings/settle-site';

/** ms from what was stored until it is settled: what belongs together comes within. */
const PAUSE_MS = 250;
/**
 * ms from one settling of a site to the next: a site that is sent to all the time is settled for many bodies at once. Derived
 * series come so much later at most, and no alarm that is held to a sensor waits for it.
 */
const APART_MS = 3000;
/** ms between two looks for what nobody was heard of. */
const LOOK_MS = 5000;
/** ms between two looks for hours and days that are over, and how long one goes on with them. */
const ROLL_MS = 5000;
const ROLL_FOR_MS = 2500;
/** ms a site is left alone after settling it broke. */
const REST_MS = 5000;

const UUID = /^[0-9a-f-]{36}$/;

/** Whoever settles. */
export interface Settling {
  /** Lets what is under way end, and settles no more. */
  stop: () => Promise<void>;
}

/**
 * Settles what follows from readings from now on: derived series soon after their inputs were stored, hours and days when they
 * are over. Like the judging of alarms it is no job of the job library, and several workers may do it: a site is had by one
 * of them at a time, and what one leaves undone the next look of any finds.
 */
export function settleReadings(): Settling {
  const waiting = new Set<string>();
  const resting = new Map<string, number>();
  const settle = async (): Promise<void> => {
    for (const site of [...waiting]) {
      if ((resting.get(site) ?? 0) > performance.now()) continue;
      waiting.delete(site);
      try {
        const outcome = await settleSite(site, now());
        if (outcome === 'more') waiting.add(site);
        resting.set(site, outcome === 'more' ? 0 : performance.now() + APART_MS);
      } catch (error) {
        logError('readings were not settled', error);
        resting.set(site, performance.now() + REST_MS);
        waiting.add(site);
      }
    }
  };
  const settling = inTurn(PAUSE_MS, settle);
  const looking = inTurn(LOOK_MS, async () => {
    for (const site of await findSitesToSettle()) waiting.add(site);
  });
  const rolling = inTurn(ROLL_MS, rollForAWhile);
  const listening = listen(TOUCHED_CHANNEL, {
    heard: (site) => {
      if (UUID.test(site)) waiting.add(site);
    },
    begun: looking.now,
  });
  return {
    stop: async () => {
      await Promise.all([settling.stop(), looking.stop(), rolling.stop(), listening.stop()]);
    },
  };
}

async function rollForAWhile(): Promise<void> {
  const until = performance.now() + ROLL_FOR_MS;
  while ((await rollUpDue(now())).isMore && performance.now() < until);
}

/** Does something again and again, one at a time. */
function inTurn(everyMs: number, work: () => Promise<void>): { now: () => void; stop: () => Promise<void> } {
  let doing: Promise<void> | null = null;
  const go = (): void => {
    doing ??= work()
      .catch((error: unknown) => logError('readings were not looked after', error))
      .finally(() => {
        doing = null;
      });
  };
  const timer = setInterval(go, everyMs);
  return {
    now: go,
    stop: async () => {
      clearInterval(timer);
      await doing;
    },
  };
}
