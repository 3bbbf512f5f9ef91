import type { Quality } from '#core/readings/reading';
import { wallClock } from '#core/time/zone';
import type { Figures, RollUp } from '#data/readings/roll-up';

const HOUR = 3_600_000;
const SECOND = 1000;

/** A reading as it stands. */
export interface Standing {
  atMs: number;
  value: number;
  quality: Quality;
  byHand: boolean;
  /** Whether it came late. */
  isLate: boolean;
}

/** Limits, and since when. */
export interface LimitsSince {
  sinceMs: number;
  above: number | null;
  below: number | null;
}

interface Second {
  outside: boolean;
  quality: Quality;
}

/**
 * Hours and days worked out from all readings at once, without SQL and second by second, where the implementation reckons with
 * stretches: what holds in each second of the span is looked up by itself. Instants are whole seconds.
 *
 * @param zone   of the site for days; null for hours of UTC
 */
export function fromScratch(all: readonly Standing[], limits: readonly LimitsSince[], zone: string | null): RollUp[] {
  const begin = beginOf(zone);
  const rolled: RollUp[] = [];
  for (const byHand of [false, true]) {
    const own = all.filter((one) => one.byHand === byHand).sort((a, b) => a.atMs - b.atMs);
    const seconds = new Map<number, Second[]>();
    for (const [i, one] of own.entries()) {
      const endMs = Math.min(own[i + 1]?.atMs ?? Infinity, one.atMs + HOUR);
      for (let atMs = one.atMs; atMs < endMs && !byHand && one.quality !== 'bad'; atMs += SECOND) {
        const key = begin(atMs);
        const known = seconds.get(key) ?? [];
        seconds.set(key, known);
        known.push({ quality: one.quality, outside: isOutside(one.value, atMs, limits) });
      }
    }
    const begins = new Set([...own.map(({ atMs }) => begin(atMs)), ...seconds.keys()]);
    for (const fromMs of begins) {
      const within = own.filter(({ atMs }) => begin(atMs) === fromMs);
      const held = seconds.get(fromMs) ?? [];
      rolled.push({
        fromMs,
        toMs: endOf(begin, fromMs),
        byHand,
        good: figures(within, held, 'good'),
        suspect: figures(within, held, 'suspect'),
        badCount: within.filter(({ quality }) => quality === 'bad').length,
        lateCount: within.filter(({ isLate }) => isLate).length,
      });
    }
  }
  return rolled.sort((a, b) => a.fromMs - b.fromMs || Number(a.byHand) - Number(b.byHand));
}

/** The beginning of what an instant lies in: of days found by asking the clocks of the place minute by minute. */
function beginOf(zone: string | null): (atMs: number) => number {
  if (zone === null) return (atMs) => Math.floor(atMs / HOUR) * HOUR;
  const known = new Map<number, number>();
  return (atMs) => {
    const hour = Math.floor(atMs / HOUR) * HOUR;
    let first = known.get(hour);
    if (first === undefined) {
      // Days begin at whole hours of UTC in the zones that are tested.
      const { date } = wallClock(zone, hour);
      first = hour;
      while (wallClock(zone, first - HOUR).date === date) first -= HOUR;
      known.set(hour, first);
    }
    return first;
  };
}

function endOf(begin: (atMs: number) => number, fromMs: number): number {
  let at = fromMs + HOUR;
  while (begin(at) === fromMs) at += HOUR;
  return at;
}

function isOutside(value: number, atMs: number, limits: readonly LimitsSince[]): boolean {
  const now = limits.findLast(({ sinceMs }) => sinceMs <= atMs);
  if (!now) return false;
  return (now.above !== null && value > now.above) || (now.below !== null && value < now.below);
}

function figures(within: readonly Standing[], held: readonly Second[], quality: Quality): Figures {
  const values = within.filter((one) => one.quality === quality).map(({ value }) => value);
  const seconds = held.filter((one) => one.quality === quality);
  return {
    count: values.length,
    sum: values.reduce((sum, value) => sum + value, 0),
    low: values.length > 0 ? Math.min(...values) : null,
    high: values.length > 0 ? Math.max(...values) : null,
    heldS: seconds.length,
    outsideS: seconds.filter(({ outside }) => outside).length,
  };
}
