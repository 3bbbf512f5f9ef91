/**
 * The first of four questions: is it true? An alarm goes from normal to pending to active to clearing, by the clock of the
 * readings and, where none comes, by the clock on the wall.
 */
import { isLate } from '../readings/late';
import type { Quality } from '../readings/reading';
import { type Around, type Condition, type Limits, NOTHING_AROUND, type Silence } from './condition';
import { passOutstayed } from './outstayed';
import { isOlder } from './set-back';
import { sideOf } from './side';
import { holdStill } from './still';
import { type Made, type Memory, workOut } from './worked';

/** Where an alarm stands between two readings. Times in ms since 1970. */
export interface Watch {
  phase: 'normal' | 'pending' | 'active' | 'clearing';
  /** Since when it is in this phase. */
  sinceMs: number;
  /** When the phase ends by itself if nothing else comes; null: never. */
  dueMs: number | null;
  /** The newest reading it was held to; null: none yet. */
  lastMs: number | null;
  lastValue: number | null;
  /** What it has to remember beside; absent: nothing. */
  memory?: Memory;
}

/** A reading as an alarm sees it. */
export interface Seen {
  /** `system/key` of its sensor; the one the alarm is held to when left out. */
  sensor?: string;
  /** When it was taken; never after it came. */
  atMs: number;
  /** When it came. */
  cameMs: number;
  value: number;
  quality: Quality;
  isByHand: boolean;
}

/** What became of an alarm. */
export interface Turn {
  kind: 'raised' | 'returned';
  /** Since when what it watches held; when it had been back for long enough. */
  atMs: number;
  /** The reading that did it; null for silence. */
  value: number | null;
  /** Raised by a reading that came late, and by none since that did not: it may be over by now. */
  isLate?: boolean;
}

/** An alarm after something came, and what became of it by that. */
export interface Step {
  watch: Watch;
  turn: Turn | null;
}

/** An alarm that is begun: nothing is held against it. @param nowMs ms since 1970 */
export function beginWatch(condition: Condition, nowMs: number): Watch {
  const dueMs = condition.kind === 'silence' ? nowMs + condition.delayS * 1000 : null;
  return { phase: 'normal', sinceMs: nowMs, dueMs, lastMs: null, lastValue: null };
}

/**
 * Holds an alarm to a reading.
 *
 * It fires beyond the limit and not at it, and the dead band never shifts that; it clears once it is back inside by the dead
 * band and has stayed there for the off-delay. A suspect reading, and one by hand of a sensor that reports by itself, may
 * begin what calls and end nothing; a bad one does neither. A reading older than the newest one held to it changes nothing:
 * what is known by now is newer, and an older one must not undo it. One that came late may begin what calls, is said to have,
 * and ends nothing: nobody knows what has been since.
 */
export function hold(condition: Condition, watch: Watch, seen: Seen, around = NOTHING_AROUND): Step[] {
  switch (condition.kind) {
    case 'limits':
      return holdLimits(condition, watch, seen, around);
    case 'silence':
      return [holdSilence(condition, watch, seen)];
    case 'still':
      return [holdStill(condition, watch, seen)];
    case 'outstayed':
      return [{ watch, turn: null }];
  }
}

/**
 * Lets the clock on the wall pass: what was pending when readings stopped coming is raised when its delay is over, and
 * silence is when nothing came for as long. Nothing ever clears by time alone.
 *
 * @param nowMs   ms since 1970
 */
export function pass(condition: Condition, watch: Watch, nowMs: number, around = NOTHING_AROUND): Step {
  if (condition.kind === 'outstayed') return passOutstayed(condition, watch, around.spells, nowMs);
  if (watch.dueMs === null || watch.dueMs > nowMs) return { watch, turn: null };
  // Silent again before it counted as back: that is the same silence.
  if (watch.phase === 'clearing') return stillActive(watch, watch.dueMs);
  // Since the last word, or since when there might have been a first.
  const listeningMs = Math.max(watch.sinceMs, watch.dueMs - condition.delayS * 1000);
  const atMs = condition.kind === 'silence' ? (watch.lastMs ?? listeningMs) : watch.sinceMs;
  const value = condition.kind === 'silence' ? null : watch.lastValue;
  return {
    watch: { ...watch, phase: 'active', sinceMs: watch.dueMs, dueMs: null },
    turn: { kind: 'raised', atMs, value },
  };
}

function holdLimits(condition: Limits, before: Watch, seen: Seen, around: Around): Step[] {
  const same = [{ watch: before, turn: null }];
  if (seen.quality === 'bad') return same;
  const isOld = isLate(seen.atMs, seen.cameMs);
  const isSound = seen.quality === 'good' && !(seen.isByHand && condition.isCarried);
  const { value, side, memory } = made(condition, before, seen, isSound, around);
  const isSilent = value === null || (side !== 'beyond' && (!isSound || isOld));
  if (isSilent) return memory === before.memory ? same : [{ watch: { ...before, memory }, turn: null }];
  // Of two sensors, one may report later and what it tells be as old as what the other told.
  const atMs = condition.of ? Math.max(seen.atMs, before.lastMs ?? seen.atMs) : seen.atMs;
  // Whatever was due before this reading was taken came about before it.
  const passed = pass(condition, before, atMs - 1);
  const watch = { ...passed.watch, lastMs: atMs, lastValue: value, ...(memory ? { memory } : {}) };
  const steps = passed.turn === null ? [] : [passed];
  switch (watch.phase) {
    case 'normal':
    case 'pending':
      return [...steps, side === 'beyond' ? pending(condition, watch, { atMs, value, isOld }) : calm(watch, atMs)];
    case 'active':
    case 'clearing':
      return [...steps, side === 'clear' ? clearing(condition, watch, { atMs, value }) : stillActive(watch, atMs)];
  }
}

/** What a reading makes of the value that is compared; nothing when a newer one was held to it already. */
function made(condition: Limits, before: Watch, seen: Seen, isWord: boolean, around: Around): Loosely<Made> {
  const { of } = condition;
  if (of) {
    const heard = { ...seen, sensor: seen.sensor ?? condition.sensor, isWord };
    return workOut(condition, of, before.memory ?? {}, heard, around);
  }
  const { memory } = before;
  return isOlder(before.lastMs, seen)
    ? { value: null, side: 'between', memory }
    : { value: seen.value, side: sideOf(condition, seen.value), memory };
}

type Loosely<T extends { memory: unknown }> = Omit<T, 'memory'> & { memory: T['memory'] | undefined };

function pending(
  condition: Limits,
  watch: Watch,
  { atMs, value, isOld }: { atMs: number; value: number; isOld: boolean },
): Step {
  // Since an instant that lies ahead only where the clock was set back: it would wait for that to come again.
  const sinceMs = watch.phase === 'pending' ? Math.min(watch.sinceMs, atMs) : atMs;
  const dueMs = sinceMs + condition.delayS * 1000;
  if (dueMs > atMs) return { watch: { ...watch, phase: 'pending', sinceMs, dueMs }, turn: null };
  const raised: Watch = { ...watch, phase: 'active', sinceMs: atMs, dueMs: null };
  return { watch: raised, turn: { kind: 'raised', atMs: sinceMs, value, ...(isOld ? { isLate: true } : {}) } };
}

function calm(watch: Watch, atMs: number): Step {
  const sinceMs = watch.phase === 'pending' ? atMs : watch.sinceMs;
  return { watch: { ...watch, phase: 'normal', sinceMs, dueMs: null }, turn: null };
}

function clearing(condition: Condition, watch: Watch, { atMs, value }: { atMs: number; value: number | null }): Step {
  const sinceMs = watch.phase === 'clearing' ? watch.sinceMs : atMs;
  if (atMs < sinceMs + condition.offDelayS * 1000)
    return { watch: { ...watch, phase: 'clearing', sinceMs, dueMs: null }, turn: null };
  return {
    watch: { ...watch, phase: 'normal', sinceMs: atMs, dueMs: null },
    turn: { kind: 'returned', atMs, value },
  };
}

function stillActive(watch: Watch, atMs: number): Step {
  const sinceMs = watch.phase === 'clearing' ? atMs : watch.sinceMs;
  return { watch: { ...watch, phase: 'active', sinceMs, dueMs: null }, turn: null };
}

/**
 * Silence goes by when readings came, and by the host's own clock: a gateway that sends late ones is there all the same. Of a
 * sensor late ones are no word: what the water is like just now, they do not tell.
 */
function holdSilence(condition: Silence, before: Watch, { atMs, cameMs, value, quality, isByHand }: Seen): Step {
  const isTelling = quality !== 'bad' && !isLate(atMs, cameMs);
  const isWord = (isTelling || condition.anyWord) && !(isByHand && condition.isCarried);
  if (!isWord || isOlder(before.lastMs, { atMs: cameMs, cameMs })) return { watch: before, turn: null };
  const watch = { ...before, lastMs: cameMs, lastValue: value };
  const dueMs = cameMs + condition.delayS * 1000;
  if (watch.phase === 'normal') return { watch: { ...watch, dueMs }, turn: null };
  // A suspect reading keeps a sensor from being silent, and does not end a silence that was called.
  if (quality === 'suspect' && !condition.anyWord) return { watch: before, turn: null };
  const { watch: after, turn } = clearing(condition, watch, { atMs: cameMs, value: null });
  return { watch: { ...after, dueMs }, turn };
}

/**
 * Makes a silence due at once, because it was said that nothing more comes: a gateway whose broker saw it go need not be waited
 * for. What was heard after that says otherwise, and where one of the sensors is not gone the silence is waited for as ever.
 *
 * @param gone     sensors from which nothing more comes
 * @param cameMs   when that was said, ms since 1970
 */
export function bereave(condition: Condition, watch: Watch, gone: ReadonlySet<string>, cameMs: number): Watch {
  if (condition.kind !== 'silence' || watch.phase !== 'normal' || watch.dueMs === null) return watch;
  if (watch.dueMs <= cameMs || (watch.lastMs !== null && watch.lastMs > cameMs)) return watch;
  return condition.sensors.every((sensor) => gone.has(sensor)) ? { ...watch, dueMs: cameMs } : watch;
}

/**
 * Begins the count of a silence anew, after a time in which nobody listened: what was not heard then says nothing.
 *
 * @param nowMs   ms since 1970
 */
export function excuse(condition: Condition, watch: Watch, nowMs: number): Watch {
  if (condition.kind !== 'silence' || watch.dueMs === null) return watch;
  return { ...watch, dueMs: Math.max(watch.dueMs, nowMs + condition.delayS * 1000) };
}
