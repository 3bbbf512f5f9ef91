import { noUpset } from '../faults/upset';
import type { Snapshot } from '../simulate/build';
import { buildMachine } from '../simulate/build-machine';
import type { Machine } from '../simulate/machine';
import { STRIDE, TEMPERATURE, VOLUME } from '../simulate/plant';
import { addMatched } from '../simulate/pour-back';
import { run } from '../simulate/run';
import { COARSE } from '../simulate/stepper';
import type { Exposure, World } from '../simulate/world';
import { HOUR } from '../time/week';
import { recovered } from './recovered';
import type { HarmClass } from './result';
import type { Trial } from './trial';

const DAY = 86_400;
/** How finely the last chance is found: to half a minute; finer where harm is near, coarser where it is far. */
const FINE_S = 30;
const NEAR_SHARE = 0.1;
const FAR_SHARE = 0.002;
/** How long the water is followed after it was put right, s: longer only while a limit is still exceeded that could do harm yet. */
const AFTERMATH = 2 * DAY;

/** Moments passed over, in steps of the fineness, while going back from the harm: nearly always it lies close by. */
const BACK = [4, 20];

/**
 * Latest moment, s after the onset, at which putting everything right still avoids every harm of a class: found by running
 * the mended system on from that moment, not read off the moment of harm. The moments tried lie on one grid back from the
 * harm.
 * @returns 0 when not even the first moment avoids it; null when the course leads to no such harm
 */
export function lastChance(trial: Trial, cls: HarmClass): number | null {
  const harmed = trial.record.harms.filter((h) => h.class === cls).map((h) => h.atS);
  if (harmed.length === 0) return null;
  const harm = Math.min(...harmed);
  const fine = Math.max(Math.min(FINE_S, NEAR_SHARE * harm), FAR_SHARE * harm);
  const momentAt = (k: number) => Math.max(0, harm - fine * (1 + 2 * k));
  const first = Math.ceil((harm - fine) / (2 * fine));
  const k = firstThat((one) => avoids(trial, cls, momentAt(one)), first);
  return k === null ? 0 : momentAt(k);
}

/**
 * The least number from 0 to `most` that something holds of, if it holds of all above it as well.
 * @returns null when it does not even hold of `most`
 */
function firstThat(holds: (k: number) => boolean, most: number): number | null {
  if (holds(0)) return 0;
  let [no, yes] = [0, Number.POSITIVE_INFINITY];
  const ask = (k: number): void => {
    if (k <= no || k >= yes) return;
    if (holds(k)) yes = k;
    else no = k;
  };
  for (const k of [...BACK, most]) ask(Math.min(k, most));
  if (yes > most) return null;
  while (yes - no > 1) ask(Math.floor((yes + no) / 2));
  return yes;
}

/** Whether the harm stays away when everything is put right at time t of the course. */
export function avoids(trial: Trial, cls: HarmClass, t: number): boolean {
  const machine = buildMachine({
    ...trial.blueprint,
    upset: noUpset(),
    state: 'normal',
    snapshot: mendedAt(trial, t),
    unwatched: true,
  });
  // The class that is asked for ends the run; a graver one does not excuse it.
  const record = run(machine, {
    untilS: AFTERMATH + longestOf(machine, cls),
    clockS: (trial.hour * HOUR + t) % DAY,
    stopAt: cls,
    settle: false,
    // It is asked at moments half a minute apart, or a tenth of the way to the harm.
    tolerance: COARSE,
    exposures: exposuresAt(trial, t),
    halt: (world) =>
      (world.t >= AFTERMATH && !isBeyond(world, cls)) ||
      (world.t >= HOUR && recovered(world, trial.blueprint.snapshot)),
  });
  return !record.harms.some((h) => h.class === cls);
}

/** Longest exposure that the limits of a class bear, s. */
function longestOf({ limits, dayChanges }: Machine, cls: HarmClass): number {
  const days = cls === 'animals' ? dayChanges : [];
  return Math.max(0, ...limits.filter((one) => one.class === cls).map(({ forS }) => forS), ...days.map((d) => d.forS));
}

/** Whether any limit of a class is exceeded now. */
function isBeyond({ machine, exposures, beyondDay }: World, cls: HarmClass): boolean {
  const limited = exposures.some(({ limit }) => machine.limits[limit]?.class === cls);
  return limited || (cls === 'animals' && beyondDay.some((since) => since !== null));
}

/** The moment at which somebody puts everything right. */
function mendedAt(trial: Trial, t: number): Snapshot {
  const moment = momentOf(trial, t);
  giveBack(moment.x, trial.machine);
  return moment;
}

/** The water at time t of a course, s, as the start of another. */
export function momentOf(trial: Trial, t: number): Snapshot {
  const { record, machine, blueprint } = trial;
  const { plant } = machine;
  const x = record.knots.stateAt(t);
  // The last 24 hours reach back into normal life only on the first day.
  const normal = t < DAY ? blueprint.snapshot : null;
  const dayLow = Float64Array.from(normal?.dayLow ?? new Array<number>(plant.nodes).fill(Number.POSITIVE_INFINITY));
  const dayHigh = Float64Array.from(normal?.dayHigh ?? new Array<number>(plant.nodes).fill(Number.NEGATIVE_INFINITY));
  const { knots } = record;
  for (let i = knots.before(t - DAY); i < knots.length && knots.time(i) <= t; i++) {
    for (let k = 0; k < plant.nodes; k++) {
      const temperature = knots.value(i, STRIDE * k + TEMPERATURE);
      dayLow[k] = Math.min(dayLow[k] ?? temperature, temperature);
      dayHigh[k] = Math.max(dayHigh[k] ?? temperature, temperature);
    }
  }
  const on = machine.devices.map((_, device) => {
    let last = blueprint.snapshot?.on[device] ?? false;
    for (const s of record.switches) if (s.device === device && s.t <= t) last = s.on;
    return last;
  });
  return { x, layout: plant.layout, on, dayLow, dayHigh };
}

/**
 * Whoever puts it right also gives back the water that is missing, matched: into the sump, or where there is none into each
 * tank. Nobody starts a return pump over a dry sump. What was diluted stays diluted.
 */
function giveBack(x: Float64Array, { plant }: Machine): void {
  const missing = (k: number) => (plant.runVolume[k] as number) - (x[STRIDE * k + VOLUME] as number);
  const nodes = Array.from({ length: plant.nodes }, (_, k) => k);
  if (plant.hub < 0) {
    for (const k of nodes) if (missing(k) > 0) addMatched(x, k, missing(k));
    return;
  }
  const whole = nodes.reduce((sum, k) => sum + missing(k), 0);
  if (whole > 0) addMatched(x, plant.hub, whole);
}

function exposuresAt(trial: Trial, t: number): Exposure[] {
  const open = trial.record.exposures.filter((e) => e.fromS <= t && t < e.toS);
  return open.map((e) => ({ limit: e.limit, sinceS: e.fromS - t }));
}
