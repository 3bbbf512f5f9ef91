import type { HarmClass } from '../review/result';
import { dayWatch } from './day-change';
import { driftOf, nothingLeftToHappen } from './drift';
import type { Machine } from './machine';
import { keepKnot, type March, march, marchTo, restart } from './march';
import { regimeWatches, type RegimeWatches } from './mode';
import { hasTurned, keptMode } from './mode-kept';
import { POUR_S, pourBack } from './pour-back';
import { beginExposure } from './react';
import { leftRange } from './outside';
import { limitRun } from './regulate';
import { settle } from './settle';
import { raiseLate } from './late-alarms';
import { makeStepper, ratesAt, TOLERANCE, type Tolerance } from './stepper';
import { fireDue, nextTimer } from './timers';
import { look, pastRows, renew, watchTable } from './watch-table';
import { emptyRecord, type Exposure, type Record, type World } from './world';

const HOUR = 3600;
const DAY = 86_400;

/** How a run is made. Times in seconds from its beginning. */
export interface RunOptions {
  untilS: number;
  /** Local time of day at time 0, s. */
  clockS: number;
  /** Class of harm after which nothing more needs to be known; null runs on. */
  stopAt: HarmClass | 'any' | null;
  /** Stop early when the drift from day to day leads nowhere within `untilS`. */
  settle: boolean;
  /** Not before this long, s. */
  atLeastS?: number;
  /** Limits already exceeded when it begins (since ≤ 0). */
  exposures?: Exposure[];
  tolerance?: Tolerance;
  /** The integration itself; a test puts a reference integrator here and leaves all else as it is. */
  marchTo?: typeof marchTo;
  /** Asked after each event and each hour at the latest; true ends the run. */
  halt?: (world: World) => boolean;
}

/**
 * Run a machine from its initial state until a harm, a horizon, or until nothing more can happen.
 * @returns what happened, with the state at every accepted step
 * @throws when a plan contradicts itself or switches without end, or when the state leaves the range of numbers
 */
export function run(machine: Machine, options: RunOptions): Record {
  const world = begin(machine, options);
  const regimes = regimeWatches(machine);
  const m = march(world, options.tolerance ?? TOLERANCE, driftOf(world, options.settle), dayWatch(world));
  calm(world, regimes);
  const kept = keptMode(machine.mode);
  const alive = moving();
  while (!finished(m, options)) {
    alive(world.t);
    enterHour(world);
    const changed = (options.marchTo ?? marchTo)(m, nextStop(m, options));
    const fired = changed === null && fireDue(world.timers, world.t + 1e-6);
    if (!changed && !fired && !overdue(world)) continue;
    calm(world, regimes);
    // What only tells of the water leaves its course as it was: the step goes on as long as before.
    if (hasTurned(kept, machine.mode)) restart(m, changed);
  }
  closeExposures(world);
  world.record.endS = world.t;
  raiseLate(world);
  world.record.outside = leftRange(machine, world.record);
  return world.record;
}

function closeExposures(world: World): void {
  const { record, machine, t } = world;
  for (const { limit, sinceS } of world.exposures) record.exposures.push({ limit, fromS: sinceS, toS: t });
  for (const [i, sinceS] of world.beyondDay.entries()) {
    if (sinceS !== null) record.exposures.push({ limit: machine.limits.length + i, fromS: sinceS, toS: t });
  }
}

function begin(machine: Machine, options: RunOptions): World {
  const stepper = makeStepper(machine.plant, machine.mode, machine.room, options.clockS, machine.probes);
  const world: World = {
    machine,
    table: watchTable(machine.watches),
    stepper,
    t: 0,
    hour: hourAt(options.clockS),
    x: Float64Array.from(machine.initial),
    timers: [],
    exposures: [],
    beyondDay: machine.dayChanges.map(() => null),
    pending: machine.alarms.map(() => null),
    record: emptyRecord(machine.plant.size),
  };
  ratesAt(stepper, 0, world.hour, world.x, stepper.f);
  addTurningPoints(world);
  for (const device of machine.devices) if (device.on) limitRun(world, device);
  for (const { limit, sinceS } of options.exposures ?? []) {
    const watched = machine.limits[limit];
    if (!watched) world.beyondDay[limit - machine.limits.length] = sinceS;
    if (!watched) continue;
    watched.watch.active = true;
    renew(world.table, watched.watch);
    beginExposure(world, limit, watched, sinceS);
  }
  return world;
}

/** Rounds within one second of a run after which it counts as stuck: events a tenth of a millisecond apart. */
const STUCK = 10_000;

/** Watches over a run's progress, so that a plan nobody thought of ends in words and not in a review without end. */
function moving(): (t: number) => void {
  let since = 0;
  let rounds = 0;
  return (t) => {
    rounds = t > since + 1 ? 0 : rounds + 1;
    if (rounds === 0) since = t;
    if (rounds > STUCK) throw new Error('a plan contradicts itself: it switches without end at one instant');
  };
}

/** Hour of the day whose straight piece of room air begins at or holds this time. */
function hourAt(clockS: number): number {
  return Math.floor(Math.round((clockS % DAY) * 1e6) / 1e6 / HOUR) % 24;
}

/** Bring what is discrete to rest, and the rates up to date with it. */
function calm(world: World, regimes: RegimeWatches): void {
  settle(world, regimes);
  ratesAt(world.stepper, world.t, world.hour, world.x, world.stepper.f);
  look(world.table, world.x, world.stepper.air);
  keepKnot(world);
}

/** The straight piece of room air may have changed at this instant, and with it the rates. */
function enterHour(world: World): void {
  const hour = hourAt(world.stepper.clockS + world.t);
  if (hour === world.hour) return;
  world.hour = hour;
  if (world.machine.room.steady) return;
  ratesAt(world.stepper, world.t, hour, world.x, world.stepper.f);
  // Slopes kept from the hour before hold no longer.
  world.table.gauges.slopeFrom.fill(Number.NaN);
}

/** Whether anything is past its threshold at the end of a way; the gauges have been looked at there. */
function overdue(world: World): boolean {
  return pastRows(world.table).length > 0;
}

function addTurningPoints(world: World): void {
  const { machine } = world;
  const supplies = [
    ...machine.devices.map((d) => d.phases),
    ...machine.alarms.flatMap((a) => (a.silent ? [...a.path, a.silent] : a.path)),
  ];
  const times = new Set(supplies.flatMap((phases) => phases.map((phase) => phase.fromS)).filter((t) => t > 0));
  for (const atS of times) world.timers.push({ atS, live: () => true, fire: () => undefined, turning: true });
  if (machine.refilled && machine.plant.reservoirs > 0) refillDaily(world, DAY);
  const { dumped } = machine;
  if (dumped) world.timers.push({ atS: dumped.untilS, live: () => true, fire: () => endDump(machine), turning: true });
  const { span } = machine;
  if (!span || span.endsS === Number.POSITIVE_INFINITY) return;
  world.timers.push({ atS: span.endsS, live: () => true, fire: () => endState(world), turning: true });
}

/** Filling the reservoirs is daily work that a fault elsewhere does not stop. */
function refillDaily(world: World, atS: number): void {
  const fire = () => {
    const { plant, initial, empty } = world.machine;
    for (let r = 0; r < plant.reservoirs; r++) {
      world.x[plant.layout.reservoirs + r] = initial[plant.layout.reservoirs + r] as number;
      const w = empty[r];
      if (!w) continue;
      w.active = false;
      renew(world.table, w);
    }
    refillDaily(world, atS + DAY);
  };
  world.timers.push({ atS, live: () => true, fire, turning: false });
}

function endDump(machine: Machine): void {
  machine.dumped = null;
}

function endState(world: World): void {
  const { span, devices } = world.machine;
  if (!span) return;
  for (const [i, device] of devices.entries()) device.stateThen = span.normalThen[i] ?? null;
  if (span.safeguard) world.record.acted.add(span.safeguard);
  world.record.events.push({ t: world.t, what: 'the operating state ends' });
  if (span.drawn.some((volume) => volume > 0)) {
    world.timers.push({
      atS: world.t + POUR_S,
      live: () => true,
      fire: () => pourBack(world, span.drawn),
      turning: true,
    });
  }
}

/** Switchings after which a run is given up: no plan of a real system comes near it in ten days. */
const RESTLESS = 20_000;

function finished(m: March, options: RunOptions): boolean {
  const { world } = m;
  const { record } = world;
  const { stopAt } = options;
  if (stopAt !== null && record.harms.some((h) => stopAt === 'any' || h.class === stopAt)) {
    record.why = 'harm';
    return true;
  }
  if (world.t >= options.untilS) return true;
  if (record.switches.length > RESTLESS) {
    record.why = 'restless';
    return true;
  }
  const over =
    options.halt?.(world) ||
    (options.settle && nothingLeftToHappen(m.drift, world, options.untilS) && world.t >= (options.atLeastS ?? 0));
  if (over) record.why = 'settled';
  return over === true;
}

/** Next instant that must be landed on: a timer, an hour of the room, the end of a window of the drift, the end. */
function nextStop({ world, drift }: March, options: RunOptions): number {
  const { windowS } = drift;
  const window = (Math.floor(world.t / windowS + 1e-9) + 1) * windowS;
  const stop = Math.min(options.untilS, nextTimer(world.timers), window);
  if (world.machine.room.steady && !options.halt) return stop;
  const clock = options.clockS + world.t;
  return Math.min(stop, (Math.floor(clock / HOUR + 1e-9) + 1) * HOUR - options.clockS);
}
