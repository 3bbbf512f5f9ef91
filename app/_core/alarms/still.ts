import { isLate } from '../readings/late';
import type { Still } from './condition';
import type { Seen, Step, Watch } from './is-true';
import { isOlder } from './set-back';

/**
 * Holds an alarm for a frozen sensor to a reading. Only a reading raises it: where none comes, silence is another alarm.
 * A good reading that moved begins the count anew and is what ends it; a suspect one that moved does neither, and one that
 * did not counts; so it is of one that came late. What people read by hand tells nothing of what the sensor does by itself.
 */
export function holdStill(condition: Still, before: Watch, { atMs, cameMs, value, quality, isByHand }: Seen): Step {
  const same = { watch: before, turn: null };
  if (quality === 'bad' || (isByHand && condition.isCarried)) return same;
  if (isOlder(before.lastMs, { atMs, cameMs })) return same;
  const anchor = before.memory?.anchor;
  const hasMoved = anchor === undefined || Math.abs(value - anchor[1]) > condition.within;
  const isOld = isLate(atMs, cameMs);
  if (hasMoved && (quality !== 'good' || isOld)) return same;
  const seen = { ...before, lastMs: atMs, lastValue: value };
  if (hasMoved) return moved(condition, { ...seen, memory: { anchor: [atMs, value] } }, atMs);
  if (before.phase === 'active') return { watch: seen, turn: null };
  const hasStood = atMs - anchor[0] >= condition.delayS * 1000;
  if (before.phase === 'clearing')
    return hasStood
      ? { watch: { ...seen, phase: 'active', sinceMs: atMs }, turn: null }
      : cleared(condition, seen, atMs);
  if (!hasStood) return { watch: { ...seen, phase: 'pending', sinceMs: anchor[0] }, turn: null };
  return {
    watch: { ...seen, phase: 'active', sinceMs: atMs },
    turn: { kind: 'raised', atMs: anchor[0], value, ...(isOld ? { isLate: true } : {}) },
  };
}

function moved(condition: Still, watch: Watch, atMs: number): Step {
  if (watch.phase === 'normal' || watch.phase === 'pending')
    return { watch: { ...watch, phase: 'normal', sinceMs: atMs }, turn: null };
  const sinceMs = watch.phase === 'clearing' ? watch.sinceMs : atMs;
  return cleared(condition, { ...watch, phase: 'clearing', sinceMs }, atMs);
}

/** Back for long enough, or still on the way there. */
function cleared(condition: Still, watch: Watch, atMs: number): Step {
  if (atMs < watch.sinceMs + condition.offDelayS * 1000) return { watch, turn: null };
  return {
    watch: { ...watch, phase: 'normal', sinceMs: atMs },
    turn: { kind: 'returned', atMs, value: watch.lastValue },
  };
}
