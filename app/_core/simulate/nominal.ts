import { buildMachine, type Blueprint } from './build-machine';
import type { Snapshot } from './build';
import type { Harm } from '../review/result';
import type { Machine } from './machine';
import { STRIDE, TEMPERATURE } from './plant';
import { harmOf } from './react';
import { run } from './run';
import { emptyRecord, type Record } from './world';

const DAY = 86_400;
const HOUR = 3600;

/** Longest time given to a system to come to its own rhythm, s. */
const WARM_UP = 10 * DAY;

/** A system as its plan runs it with nothing wrong. */
export interface Nominal {
  /** One day of its own rhythm, from midnight: what is harmed, raised or shown in it is so every day. */
  record: Record;
  /** Moment of the last normal day at a local hour. */
  at: (hour: number) => Snapshot;
  /** Some plan switches its equipment without rest, so that there is no normal day. */
  restless: boolean;
  /** Starts of each device in that day. */
  startsPerDay: number[];
  dayLow: Float64Array;
  dayHigh: Float64Array;
  /** Safeguards without which it would have come to another rhythm, or might have. */
  acted: ReadonlySet<string>;
}

/**
 * Run a healthy system from its running levels until each day is like the one before, and keep the last day.
 * @param blueprint without upset, in the normal state; its snapshot is ignored
 */
export function nominal(blueprint: Blueprint): Nominal {
  const machine = buildMachine({ ...blueprint, snapshot: null });
  const warmUp = run(machine, { untilS: WARM_UP, clockS: 0, stopAt: null, settle: true, atLeastS: 2 * DAY });
  // A run may end at half a day; the last whole day, from midnight, is what is kept.
  const from = Math.max(0, Math.floor(warmUp.endS / DAY) * DAY - DAY);
  const { dayLow, dayHigh } = range(warmUp, from, machine.plant.nodes);
  const at = (hour: number): Snapshot => {
    const t = Math.min(warmUp.endS, from + (hour % 24) * HOUR);
    return {
      x: warmUp.knots.stateAt(t),
      layout: machine.plant.layout,
      on: machine.devices.map((_, i) => onAt(warmUp, i, t)),
      dayLow,
      dayHigh,
      before: { knots: warmUp.knots, atS: t },
    };
  };
  // What happens while a system finds its rhythm is of no account, so the day is run once more from its beginning.
  const settled = buildMachine({ ...blueprint, snapshot: at(0) });
  const record = run(settled, { untilS: DAY, clockS: 0, stopAt: null, settle: false });
  // On a bad side it would only tell that the side is a bad one: the animals are alive.
  if (blueprint.resolved.side === 'nominal') record.harms.push(...standingHarms(settled, record));
  const startsPerDay = machine.devices.map((_, i) => record.switches.filter((s) => s.device === i && s.on).length);
  const restless = warmUp.why === 'restless' || record.why === 'restless';
  const acted = new Set([...warmUp.acted, ...record.acted]);
  return { record, at, restless, startsPerDay, dayLow, dayHigh, acted };
}

/** A limit that is exceeded from one midnight to the next is so every day, and in the end does harm however many days it bears. */
function standingHarms({ limits }: Machine, { exposures }: Record): Harm[] {
  return exposures.flatMap(({ limit, fromS, toS }) => {
    const one = limits[limit];
    return one && one.forS > DAY && fromS <= 0 && toS >= DAY ? [harmOf(one, one.forS)] : [];
  });
}

/** In place of a normal day where figures are missing: nothing was run, and there is no moment to begin from. */
export function notRun(devices: number): Nominal {
  return {
    record: emptyRecord(0),
    at: () => {
      throw new Error('a system with missing figures was run');
    },
    restless: false,
    startsPerDay: new Array<number>(devices).fill(0),
    dayLow: new Float64Array(0),
    dayHigh: new Float64Array(0),
    acted: new Set(),
  };
}

function onAt(record: Record, device: number, t: number): boolean {
  let on = false;
  for (const s of record.switches) if (s.device === device && s.t <= t) on = s.on;
  return on;
}

function range(record: Record, from: number, nodes: number): { dayLow: Float64Array; dayHigh: Float64Array } {
  const dayLow = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
  const dayHigh = new Float64Array(nodes).fill(Number.NEGATIVE_INFINITY);
  const { knots } = record;
  for (let i = knots.before(from); i < knots.length; i++) {
    for (let k = 0; k < nodes; k++) {
      const t = knots.value(i, STRIDE * k + TEMPERATURE);
      dayLow[k] = Math.min(dayLow[k] as number, t);
      dayHigh[k] = Math.max(dayHigh[k] as number, t);
    }
  }
  return { dayLow, dayHigh };
}
