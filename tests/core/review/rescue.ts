import { noUpset } from '#core/faults/upset';
import type { HarmClass } from '#core/review/result';
import type { Trial } from '#core/review/trial';
import { buildMachine } from '#core/simulate/build-machine';
import { STRIDE, TEMPERATURE } from '#core/simulate/plant';
import { run } from '#core/simulate/run';

const DAY = 86_400;
const SAMPLE_S = 300;

/**
 * Whether a class of harm stays away when everything is put right t seconds after the onset, the plain way: the mended system
 * is run on for three whole days from the water of that moment, with the last day's temperatures sampled every five minutes
 * and every limit that is being exceeded counted on from when that began. Only for courses that lose no water.
 */
function rescued(trial: Trial, cls: HarmClass, t: number): boolean {
  const { blueprint, record, machine } = trial;
  const { nodes } = machine.plant;
  const was = blueprint.snapshot;
  if (!was) throw new Error('a fault begins at a moment of normal life');
  const dayLow = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
  const dayHigh = new Float64Array(nodes).fill(Number.NEGATIVE_INFINITY);
  for (let k = 0; k < nodes; k++) {
    if (t < DAY) {
      dayLow[k] = was.dayLow[k] ?? 0;
      dayHigh[k] = was.dayHigh[k] ?? 0;
    }
    for (let past = Math.max(0, t - DAY); past <= t; past += SAMPLE_S) {
      const value = record.knots.stateAt(past)[STRIDE * k + TEMPERATURE] ?? 0;
      dayLow[k] = Math.min(dayLow[k] ?? value, value);
      dayHigh[k] = Math.max(dayHigh[k] ?? value, value);
    }
  }
  const on = machine.devices.map(
    (_, device) => record.switches.findLast((s) => s.device === device && s.t <= t)?.on ?? was.on[device] ?? false,
  );
  const mended = buildMachine({
    ...blueprint,
    upset: noUpset(),
    state: 'normal',
    snapshot: { x: record.knots.stateAt(t), layout: machine.plant.layout, on, dayLow, dayHigh },
  });
  const after = run(mended, {
    untilS: 3 * DAY,
    clockS: (trial.hour * 3600 + t) % DAY,
    stopAt: null,
    settle: false,
    exposures: record.exposures
      .filter((e) => e.fromS <= t && t < e.toS)
      .map((e) => ({ limit: e.limit, sinceS: e.fromS - t })),
  });
  return !after.harms.some((h) => h.class === cls);
}

/** Last of so many evenly spaced moments before the harm at which putting right still helps, and the first at which it does not. */
export function scanned(trial: Trial, cls: HarmClass, harmS: number, moments: number): { good: number; bad: number } {
  let bad = harmS;
  for (let i = moments - 1; i >= 0; i--) {
    const t = (harmS * i) / moments;
    if (rescued(trial, cls, t)) return { good: t, bad };
    bad = t;
  }
  return { good: 0, bad };
}
