import type { System } from '../facility/system';
import { type Begun, hasHandsIn } from './state-end';

/** What a piece of equipment drew lately: readings in order of time. */
export type Drawn = readonly { atMs: number; w: number }[];

/** A state that looks as if it had begun. */
export interface Inferred {
  state: Begun;
  /** Since when what it switches off has drawn nothing, ms since 1970. */
  sinceMs: number;
  /** The equipment that says so, by key. */
  equipment: string[];
}

/** W below which nothing runs: meters of sockets show a watt or two of nothing. Common practice, no source. */
const NOTHING_W = 2;
/** min that it must have drawn nothing: shorter is a filter being tapped. Common practice, no source. */
const STILL_MIN = 2;
/** Age of the newest reading, min, above which nothing is said. */
const FRESH_MIN = 5;
const MINUTE_MS = 60_000;

/**
 * States that look as if somebody had begun them without saying so: everything that runs all the time, that the state's plans
 * switch off and that has a meter draws nothing, having run before; whatever runs all the time and that the state leaves on still
 * draws, so that it is no power cut. A person says whether it is so. Of two states that would look the same, the
 * more usual one is told first. Pure: the same readings always say the same.
 *
 * @param drawn     what was drawn in the past hour or so, by key of the equipment
 * @param inForce   states the system is known to be in
 * @param atMs      the present
 */
export function inferStates(
  { equipment, states }: Pick<System, 'equipment' | 'states'>,
  drawn: ReadonlyMap<string, Drawn>,
  inForce: ReadonlySet<Begun>,
  atMs: number,
): Inferred[] {
  const steady = equipment.filter(({ key, plan }) => plan.regulation.kind === 'always' && drawn.has(key));
  const stopped = new Map(
    steady.flatMap(({ key }) => {
      const sinceMs = stillSince(drawn.get(key) ?? [], atMs);
      return sinceMs === null ? [] : [[key, sinceMs] as const];
    }),
  );
  // What a state in force switches off already says nothing of another one.
  const explained = new Set(
    equipment.filter(({ plan }) => plan.states.some((l) => l.then === 'off' && inForce.has(l.state))).map((e) => e.key),
  );
  const told: Inferred[] = [];
  for (const { name: state } of [...states].sort((a, b) => rank(a.name) - rank(b.name))) {
    if (inForce.has(state)) continue;
    const off = steady.filter((e) => e.plan.states.some((line) => line.state === state && line.then === 'off'));
    const left = steady.filter((e) => !off.includes(e));
    const isSo =
      off.length > 0 &&
      off.every(({ key }) => stopped.has(key) && !explained.has(key)) &&
      left.every(({ key }) => !stopped.has(key) || explained.has(key));
    if (!isSo) continue;
    const keys = off.map(({ key }) => key);
    told.push({ state, sinceMs: Math.max(...keys.map((key) => stopped.get(key) ?? 0)), equipment: keys });
  }
  return told.slice(0, 1);
}

/** Since when nothing is drawn, where it was before; null when it runs, or nobody can tell. */
function stillSince(readings: Drawn, atMs: number): number | null {
  const last = readings.at(-1);
  if (!last || last.w > NOTHING_W || atMs - last.atMs > FRESH_MIN * MINUTE_MS) return null;
  const ran = readings.findLastIndex(({ w }) => w > NOTHING_W);
  const first = readings[ran + 1];
  if (ran < 0 || !first || atMs - first.atMs < STILL_MIN * MINUTE_MS) return null;
  return first.atMs;
}

/** Feeding is by far the most usual; what has hands in the water is said as a rule by whoever has them there. */
function rank(state: Begun): number {
  if (state === 'feeding') return 0;
  return hasHandsIn(state) ? 2 : 1;
}
