import type { SensorQuantity } from '../facility/system';
import type { Judged } from './judge';
import type { Quality } from './reading';
import given from './manner.json';

/** How water of a quantity behaves, and its probes; in the facility file's unit. */
interface Manner {
  /** Change that is believed at once, and in an hour besides. */
  step: number;
  perHour: number;
  /** Hours after which exactly the same value is no longer believed: noise and resolution would have moved it. */
  frozenH: number;
  /** Difference of two probes in one tank that is believed. */
  apart: number;
  source: string;
}

/** Those of other quantities jump and stand still of themselves: a level when a pump stops, watts when something is switched. */
const MANNERS: Readonly<Partial<Record<SensorQuantity, Manner>>> = given;
const HOUR_MS = 3_600_000;
/** A pause after which a value that is the same says nothing of what was between. Common practice, no source. */
const PAUSE_MS = 6 * HOUR_MS;
/** ms that two probes' readings may be apart to be compared. Common practice, no source. */
const BESIDE_MS = 5 * 60_000;
/** ms a source's clock may be ahead and still be believed. Common practice, no source. */
const AHEAD_MS = 60_000;
/** How many times the accuracies of two probes together they may differ. Common practice, no source. */
const TIMES_ACCURACY = 3;

/** A reading as it stands before another of its sensor. */
export interface Standing {
  atMs: number;
  value: number;
  quality: Quality;
  /** Since when exactly this value has stood, ms since 1970. */
  sameSinceMs: number;
}

/** A reading of a device that is to be judged by what was before it and beside it. */
export interface Coming extends Judged {
  quantity: SensorQuantity;
  atMs: number;
  value: number;
}

/**
 * Judges a reading by the one before it of the same sensor: too fast, or frozen. The first reading after a jump is doubted and
 * the next is held to it, so that what has really changed is believed from then on. One that comes late is not judged so.
 *
 * @param before   the newest reading before it; null when there is none
 * @returns        what it is then, at least as doubtful as it was, and since when its value has stood
 */
export function judgeAfter(coming: Coming, before: Standing | null): Judged & { sameSinceMs: number } {
  const { atMs, value, quantity } = coming;
  const manner = MANNERS[quantity];
  const isAfter = before !== null && before.atMs < atMs;
  const isSame = isAfter && before.value === value && atMs - before.atMs <= PAUSE_MS;
  const sameSinceMs = isSame ? before.sameSinceMs : atMs;
  const doubt = (reason: Judged['reason']) => ({ quality: 'suspect' as const, reason, sameSinceMs });
  if (coming.quality === 'good' && manner && isAfter) {
    const hours = (atMs - before.atMs) / HOUR_MS;
    const isFast = Math.abs(value - before.value) > manner.step + manner.perHour * hours;
    if (before.quality !== 'bad' && isFast) return doubt('too-fast');
    if (atMs - sameSinceMs > manner.frozenH * HOUR_MS) return doubt('frozen');
  }
  const { quality, reason } = coming;
  return reason === undefined ? { quality: 'good', sameSinceMs } : { quality, reason, sameSinceMs };
}

/**
 * Judges a reading beside that of another probe of the same quantity in the same tank: where they are further apart than both
 * can be right, one of them is wrong, and nobody knows which.
 *
 * @param accuracies   of both, where they are known
 */
export function judgeBeside(
  coming: Coming,
  other: { atMs: number; value: number; quality: Quality } | null,
  accuracies: readonly (number | null)[],
): Judged {
  const manner = MANNERS[coming.quantity];
  const isJudged = coming.quality === 'good' && manner && other && other.quality !== 'bad';
  if (!isJudged || Math.abs(other.atMs - coming.atMs) > BESIDE_MS) return same(coming);
  const together = accuracies.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  const isApart = Math.abs(other.value - coming.value) > Math.max(manner.apart, TIMES_ACCURACY * together);
  return isApart ? { quality: 'suspect', reason: 'disagrees' } : same(coming);
}

/** Judges a reading by the clock: from further ahead than clocks differ. @param cameMs   when it came, ms since 1970 */
export function judgeClock(coming: Coming, cameMs: number): Judged {
  const isAhead = coming.quality === 'good' && coming.atMs > cameMs + AHEAD_MS;
  return isAhead ? { quality: 'suspect', reason: 'clock-ahead' } : same(coming);
}

function same({ quality, reason }: Judged): Judged {
  return reason === undefined ? { quality } : { quality, reason };
}
