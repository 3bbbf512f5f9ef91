import { courseOf } from './course-of';
import type { PowerPhase } from './device';
import { phaseAt } from './device';
import type { AlarmWatch, FollowedCourse } from './machine';
import type { World } from './world';

/** s between two looks at a course that is followed afterwards; where it crosses a limit is found between them. */
const LOOK_S = 300;
const HOUR = 3600;

/**
 * Raises the alarms that hang on how something went rather than on how it stands: on a rate, on how far two probes are
 * apart, on a probe that stands still, on how often something started. None of them changes what the water does, so they are
 * read off the course of a run that is over, with the same laws by which readings are judged.
 */
export function raiseLate(world: World): void {
  for (const alarm of world.machine.alarms) {
    const { followed } = alarm;
    if (!followed || world.record.alarms.has(alarm.key)) continue;
    const atS =
      followed.kind === 'starts' ? startedTooOften(world, alarm, followed.most) : heldFrom(world, alarm, followed);
    if (atS !== null && atS <= world.t) world.record.alarms.set(alarm.key, atS);
  }
}

/** First time from which on everything its message needs has been live; null: never. */
function heardFrom(path: readonly PowerPhase[][], fromS: number): number | null {
  const turns = path.flatMap((phases) => phases.map((phase) => phase.fromS)).filter((t) => t > fromS);
  const isLive = (t: number) => path.every((phases) => phaseAt(phases, t).live);
  return [fromS, ...turns.sort((a, b) => a - b)].find(isLive) ?? null;
}

function startedTooOften({ record, machine }: World, alarm: AlarmWatch, most: number): number | null {
  const starts = record.switches.filter((one) => one.device === alarm.device && one.on).map(({ t }) => t);
  const first = starts.find((t, i) => i >= most && t - (starts[i - most] as number) < HOUR);
  if (first === undefined || machine.devices[alarm.device]?.health === 'dead') return null;
  return heardFrom(alarm.path, first + alarm.delayS);
}

/** First time at which it has been beyond a limit for the delay and its message can travel; null: never. */
function heldFrom(
  world: World,
  alarm: AlarmWatch,
  followed: Exclude<FollowedCourse, { kind: 'starts' }>,
): number | null {
  const { knots } = world.record;
  if (followed.of.some(({ kind }) => kind === 'lost') || knots.length === 0) return null;
  if (followed.kind === 'still') {
    const stuck = followed.of.every(({ kind }) => kind === 'constant');
    return stuck ? heardFrom(alarm.path, alarm.delayS) : null;
  }
  const valueAt = courseOf(world, world.stepper.clockS, followed.of);
  let mean: number | null = null;
  let before = { t: 0, raw: valueAt(0), by: 0 };
  let since: number | null = null;
  for (const t of looksOf(world)) {
    const raw = valueAt(t);
    let by = raw;
    if (followed.kind === 'rate') {
      mean = meanAfter(mean ?? before.raw, before, { t, raw }, followed.meanS);
      by = ((raw - mean) / followed.meanS) * HOUR;
    }
    const past = Math.max(by - followed.above, followed.below - by);
    const pastBefore = Math.max(before.by - followed.above, followed.below - before.by);
    if (past <= 0) since = null;
    else since ??= pastBefore < 0 ? before.t + ((t - before.t) * pastBefore) / (pastBefore - past) : t;
    if (since !== null && t - since >= alarm.delayS) {
      const heard = heardFrom(alarm.path, since + alarm.delayS);
      if (heard !== null && heard <= t) return heard;
    }
    before = { t, raw, by };
  }
  return null;
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
