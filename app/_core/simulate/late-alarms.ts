import { courseOf } from './course-of';
import type { PowerPhase } from './device';
import { isLive } from './device';
import type { AlarmWatch, FollowedCourse } from './machine';
import type { World } from './world';

/** s between two looks at a course that is followed afterwards; where it crosses a limit is found between them. */
const LOOK_S = 300;
/** s to which the moment of crossing is found. */
const PASSING_S = 0.01;
const HOUR = 3600;

type Starts = Extract<FollowedCourse, { kind: 'starts' }>;
type Followed = Extract<FollowedCourse, { kind: 'rate' | 'difference' }>;

/**
 * Raises the alarms that hang on how something went rather than on how it stands: on a rate, on how far two probes are
 * apart, on a probe that stands still, on how often something started. None of them changes what the water does, so they are
 * read off the course of a run that is over, with the same laws by which readings are judged.
 */
export function raiseLate(world: World): void {
  for (const alarm of world.machine.alarms) {
    const { followed } = alarm;
    if (!followed || world.record.alarms.has(alarm.key)) continue;
    const atS = followed.kind === 'starts' ? startedTooOften(alarm, followed) : heldFrom(world, alarm, followed);
    if (atS !== null && atS <= world.t) world.record.alarms.set(alarm.key, atS);
  }
}

/** First time from which on everything its message needs has been live; null: never. */
function heardFrom(path: readonly PowerPhase[][], fromS: number): number | null {
  const turns = path.flatMap((phases) => phases.map((phase) => phase.fromS)).filter((t) => t > fromS);
  return [fromS, ...turns.sort((a, b) => a - b)].find((t) => isLive(path, t)) ?? null;
}

/** More starts within an hour, and so for as long as the delay: each counts for an hour. */
function startedTooOften(alarm: AlarmWatch, { most, seen }: Starts): number | null {
  let since = 0;
  let untilS = Number.NEGATIVE_INFINITY;
  for (let i = most; i < seen.length; i++) {
    const [t, endS] = [seen[i] as number, (seen[i - most] as number) + HOUR];
    if (endS <= t) continue;
    if (t > untilS) since = t;
    untilS = endS;
    if (since + alarm.delayS < untilS) return heardFrom(alarm.path, since + alarm.delayS);
  }
  return null;
}

/**
 * First time at which it has been beyond a limit for the delay and its message can travel; null: never. Where nothing is heard
 * it stands as it was.
 */
function heldFrom(world: World, alarm: AlarmWatch, followed: Exclude<FollowedCourse, Starts>): number | null {
  const { knots } = world.record;
  if (followed.of.some(({ kind }) => kind === 'lost') || knots.length === 0) return null;
  if (followed.kind === 'still') {
    const stuck = followed.of.every(({ kind }) => kind === 'constant');
    return stuck ? heardFrom(alarm.path, alarm.delayS) : null;
  }
  const lookAt = looking(world, followed);
  let since: number | null = null;
  let wasHeard = true;
  for (const t of looksOf(world)) {
    const isHeard = isLive(alarm.heard, t);
    if (isHeard) {
      const { past, passedS } = lookAt(t);
      if (past <= 0) since = null;
      else since ??= wasHeard ? passedS : t;
    }
    wasHeard = isHeard;
    if (since !== null && t - since >= alarm.delayS) {
      const heard = heardFrom(alarm.path, since + alarm.delayS);
      if (heard !== null && heard <= t) return heard;
    }
  }
  return null;
}

/** Looks at a course, in order of time: how far it is past a limit, and when between this look and the last it passed it, s. */
function looking(world: World, followed: Followed): (t: number) => { past: number; passedS: number } {
  const valueAt = courseOf(world, world.stepper.clockS, followed.of);
  const meanS = followed.kind === 'rate' ? followed.meanS : null;
  let { mean, ...before } = { past: 0, ...startOf(world, followed, valueAt(0)) };
  const meanAt = (t: number, raw: number) => (meanS === null ? 0 : meanAfter(mean, before, { t, raw }, meanS));
  const pastAt = (t: number, raw: number) => {
    const by = meanS === null ? raw : ((raw - meanAt(t, raw)) / meanS) * HOUR;
    return Math.max(by - followed.above, followed.below - by);
  };
  return (t) => {
    const raw = valueAt(t);
    const past = pastAt(t, raw);
    const isPassed = past > 0 && before.past < 0;
    const passedS = isPassed ? passing((s) => pastAt(s, valueAt(s)), before.t, t) : t;
    mean = meanAt(t, raw);
    before = { t, raw, past };
    return { past, passedS };
  };
}

/** Time constants over which a running mean has forgotten where it began, and s between two looks at what was before. */
const FORGOTTEN = 5;
const BEFORE_S = 60;

/** Where the running mean stands at the beginning, by what was before; where nothing is known of that, all stood still. */
function startOf({ machine }: World, followed: Followed, raw: number): { t: number; raw: number; mean: number } {
  const { before } = machine;
  if (followed.kind !== 'rate' || !before) return { t: 0, raw, mean: raw };
  const { meanS, was } = followed;
  // That course began at a midnight.
  const valueAt = courseOf({ record: before, machine }, 0, [was]);
  const looks = Math.ceil((FORGOTTEN * meanS) / BEFORE_S);
  const ago = (k: number) => ({ t: -k * BEFORE_S, raw: valueAt(Math.max(0, before.atS - k * BEFORE_S)) });
  let last = ago(looks);
  let mean = last.raw;
  for (let k = looks - 1; k >= 0; k--) {
    const next = ago(k);
    mean = meanAfter(mean, last, next, meanS);
    last = next;
  }
  return { ...last, mean };
}

/** When a value rises through 0 between two times at which it lies below and above it; where it does so more than once, one of them. */
function passing(valueAt: (t: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (high - low > PASSING_S) {
    const middle = (low + high) / 2;
    if (valueAt(middle) > 0) high = middle;
    else low = middle;
  }
  return high;
}

/** The running mean after a piece of the way on which the value went straight: as where readings are judged. */
function meanAfter(
  mean: number,
  from: { t: number; raw: number },
  to: { t: number; raw: number },
  meanS: number,
): number {
  const passed = to.t - from.t;
  if (passed <= 0) return mean;
  const lag = ((to.raw - from.raw) / passed) * meanS;
  return to.raw - lag + (mean - from.raw + lag) * Math.exp(-passed / meanS);
}

/** Times at which a course is looked at: every knot, and at least every few minutes between them. */
function* looksOf({ record: { knots }, t: endS }: World): Generator<number> {
  for (let i = 0; i < knots.length; i++) {
    const from = knots.time(i);
    const to = i + 1 < knots.length ? knots.time(i + 1) : endS;
    yield from;
    const pieces = Math.ceil((to - from) / LOOK_S);
    for (let k = 1; k < pieces; k++) yield from + ((to - from) * k) / pieces;
  }
  yield endS;
}
