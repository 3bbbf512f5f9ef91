import { HOUR } from '../time/week';
import { type Around, type Limits, sensorsOf, type Worked } from './condition';
import type { Seen } from './is-true';
import { meantAt, type Newest, settlesAfterS } from './meant';
import { isOlder } from './set-back';
import { type Side, sideOf, wattsSideOf } from './side';
import { lastTurnBefore } from './spells';

/** What an alarm has to remember of earlier readings, beside the newest one. */
export interface Memory {
  /** Newest usable reading by sensor, where it is held to several, or to how one moves. */
  newest?: Readonly<Record<string, Newest>>;
  /** What the running mean of a rate stands at, as of the newest reading. */
  mean?: number;
  /** When it was seen to start within the last hour, ms since 1970, oldest first. */
  starts?: readonly number[];
  /** Whether the equipment was seen to be meant on or off, and since when without a break, ms since 1970. */
  meant?: readonly [is: 'on' | 'off' | null, sinceMs: number];
  /** The reading from which it has not moved. */
  anchor?: Newest;
}

/** A reading with what is known of it. */
export interface Heard extends Seen {
  sensor: string;
  /** Whether it may silence: it is good, and not by hand of a sensor that reports by itself. */
  isWord: boolean;
}

/** What a reading makes of what an alarm is held to. */
export interface Made {
  /** The value that is compared; null when this reading tells nothing. */
  value: number | null;
  side: Side;
  memory: Memory;
}

/** ms that two readings may lie apart and be compared. Common practice, no source. */
const PAIR_MS = 15 * 60_000;
/** Starts remembered at most. */
const MOST_STARTS = 120;

/**
 * What is compared with the limits after a reading. What may not silence is compared and leaves no trace, so that nothing
 * is ever judged by it twice.
 */
export function workOut(condition: Limits, of: Worked, memory: Memory, heard: Heard, around: Around): Made {
  const before = memory.newest?.[heard.sensor];
  const isKnown = sensorsOf(condition).includes(heard.sensor);
  if (!isKnown || isOlder(before?.[0], heard)) return nothing(memory);
  const made = found(condition, of, memory, heard, around);
  return heard.isWord ? made : { ...made, memory };
}

function found(condition: Limits, of: Worked, memory: Memory, heard: Heard, around: Around): Made {
  const newest = { ...memory.newest, [heard.sensor]: [heard.atMs, heard.value] as const };
  const kept = { ...memory, newest };
  switch (of.kind) {
    case 'rate':
      return rate(condition, of.meanS, kept, memory);
    case 'difference':
      return difference(condition, of.other, kept);
    case 'starts':
      return starts(condition, of.runsAbove, kept, memory);
    case 'watts':
      return watts(condition, of, kept, { heard, around });
  }
}

function nothing(memory: Memory): Made {
  return { value: null, side: 'between', memory };
}

function compared(condition: Limits, value: number, memory: Memory): Made {
  return { value, side: sideOf(condition, value), memory };
}

/**
 * The running mean m follows the reading v by dm/dt = (v − m)/τ; between two readings v is taken to move in a straight line,
 * for which that has a solution in closed form. The rate is (v − m)/τ, which for a steady ramp becomes its slope.
 */
function rate(condition: Limits, meanS: number, kept: Memory, { newest, mean }: Memory): Made {
  const [nowMs, value] = kept.newest?.[condition.sensor] ?? [0, 0];
  const was = newest?.[condition.sensor];
  if (!was || mean === undefined) return nothing({ ...kept, mean: value });
  const passedS = (nowMs - was[0]) / 1000;
  if (passedS <= 0) return nothing({ ...kept, mean });
  const lag = ((value - was[1]) / passedS) * meanS;
  const stands = value - lag + (mean - was[1] + lag) * Math.exp(-passedS / meanS);
  return compared(condition, ((value - stands) / meanS) * HOUR, { ...kept, mean: stands });
}

function difference(condition: Limits, other: string, kept: Memory): Made {
  const [one, two] = [kept.newest?.[condition.sensor], kept.newest?.[other]];
  if (!(one && two) || Math.abs(one[0] - two[0]) > PAIR_MS) return nothing(kept);
  return compared(condition, Math.abs(one[1] - two[1]), kept);
}

function starts(condition: Limits, runsAbove: number, kept: Memory, before: Memory): Made {
  const [atMs, value] = kept.newest?.[condition.sensor] ?? [0, 0];
  const was = before.newest?.[condition.sensor];
  const isStart = was !== undefined && was[1] <= runsAbove && value > runsAbove;
  const all = [...(before.starts ?? []), ...(isStart ? [atMs] : [])];
  const recent = all.filter((start) => start > atMs - HOUR * 1000).slice(-MOST_STARTS);
  return compared(condition, recent.length, { ...kept, starts: recent });
}

function watts(
  condition: Limits,
  { meant }: Extract<Worked, { kind: 'watts' }>,
  kept: Memory,
  { heard: { atMs }, around }: { heard: Heard; around: Around },
): Made {
  const is = meantAt(meant, kept.newest ?? {}, atMs, around);
  const [was, since] = kept.meant ?? [undefined, atMs];
  const turnMs = meant.states.length === 0 ? -Infinity : lastTurnBefore(around.spells, meant.system, atMs);
  const sinceMs = Math.max(was === is ? since : atMs, turnMs);
  const memory: Memory = { ...kept, meant: [is, sinceMs] };
  const value = kept.newest?.[condition.sensor]?.[1];
  if (value === undefined) return nothing(memory);
  const isSettled = atMs - sinceMs >= settlesAfterS(meant) * 1000;
  return { value, side: wattsSideOf(condition, isSettled ? is : null, value), memory };
}
