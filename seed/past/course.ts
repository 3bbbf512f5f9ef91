import { resolveSystem } from '#core/equipment/resolve';
import type { ResolvedSystem } from '#core/equipment/resolved';
import type { Facility } from '#core/facility/facility';
import type { StateName, System } from '#core/facility/system';
import { noUpset, type Upset } from '#core/faults/upset';
import { type Credit, creditOf } from '#core/plans/credit';
import { contextOf } from '#core/review/context';
import type { Snapshot } from '#core/simulate/build';
import { type Blueprint, buildMachine } from '#core/simulate/build-machine';
import type { Machine } from '#core/simulate/machine';
import { nominal } from '#core/simulate/nominal';
import { STRIDE, TEMPERATURE } from '#core/simulate/plant';
import { run } from '#core/simulate/run';
import type { Record as Run } from '#core/simulate/world';
import { perturbed } from './perturbed';
import { randomOf } from './random';
import type { LocalDay } from './span';
import { fillUp, REFILLED_EVERY, refillReservoirs, topUpByHand } from './by-hand';
import { roomOn, weather } from './weather';

/** Something that changes how a system runs from a moment on, until the next of these. */
export interface Turn {
  atMs: number;
  state: StateName;
  /** The state stays until the next turn: nothing ends it, not even a day's end. */
  holds?: boolean;
  /** The water that is missing by then is put back, matched, before anything is switched on again. */
  filled?: boolean;
  /** What is wrong from then on; nothing when left out. */
  befall?: (upset: Upset) => void;
  /** Safeguards that do not do what they should. */
  dead?: readonly string[];
}

/** One stretch of the course of a system. */
export interface Piece {
  fromMs: number;
  toMs: number;
  state: StateName;
  machine: Machine;
  run: Run;
  /** What the devices did, from when on, s after it began; in order. */
  doings: Doing[];
}

/** What the devices of a system do from a moment on, in the order of its equipment. */
export interface Doing {
  atS: number;
  /** Draws power. */
  drawing: boolean[];
  /** L/h that the return brings to each node. */
  returnLPerH: number[];
}

/** The course of one system through the past. */
export interface Course {
  system: System;
  /** As it really was: not as it is described. */
  resolved: ResolvedSystem;
  pieces: Piece[];
}

/** What readings can show; finer than any probe, coarser than a review needs. */
const TOLERANCE = { relative: 1e-4, absolute: 1e-4 };

/**
 * Runs a system through some days as it might really be.
 *
 * @param days    in order, without a gap
 * @param turns   in order of time; before the first of them it runs normally
 * @returns       null when a figure is missing that the model cannot do without
 */
export function courseOf(
  facility: Facility,
  system: System,
  days: readonly LocalDay[],
  turns: readonly Turn[],
): Course | null {
  const described = resolveSystem(facility, system, 'nominal');
  if (described.missing.length > 0) return null;
  const resolved = perturbed(described, randomOf(facility.site.key, system.key, 'perturbed'));
  const airs = weather(days.length + 1, randomOf(facility.site.key, 'weather'));
  const { profileOf } = contextOf(facility, system, days[0]?.date ?? '');
  const credit = creditOf(facility, system, 'claimed', days.at(-1)?.date ?? '');
  const pieces: Piece[] = [];
  const roomOf = (i: number) => roomOn(described.room, airs[i] ?? 0, airs[i + 1] ?? 0);
  const usual = { facility, system, upset: noUpset(), credited: credit, state: 'normal' as const, profileOf };
  // It has found its rhythm long before the first day that is told of.
  let snapshot = nominal({ ...usual, resolved: { ...resolved, room: roomOf(0) }, snapshot: null }).at(0);
  for (const [i, day] of days.entries()) {
    const room = roomOf(i);
    for (const { turn, fromMs, toMs } of stretches(day, turns)) {
      const upset = noUpset();
      upset.stateNeverEnds = turn?.holds === true;
      turn?.befall?.(upset);
      const credited: Credit = (key) => !(key !== undefined && turn?.dead?.includes(key)) && credit(key);
      if (turn?.filled && turn.atMs === fromMs) fillUp(snapshot.x, pieces.at(-1)?.machine);
      const state = turn && (turn.holds || turn.atMs === fromMs) ? turn.state : 'normal';
      const blueprint = {
        facility,
        system,
        resolved: { ...resolved, room },
        upset,
        credited,
        state,
        profileOf,
        snapshot,
      };
      const piece = runPiece(blueprint, { fromMs, toMs, midnightMs: day.fromMs });
      pieces.push(piece);
      snapshot = endOf(piece);
    }
    refillReservoirs(snapshot.x, pieces[0]?.machine);
    if (i % REFILLED_EVERY === 0) topUpByHand(snapshot, pieces.at(-1)?.machine);
  }
  return { system, resolved, pieces };
}

/** The parts of a day between its turns. */
function stretches(day: LocalDay, turns: readonly Turn[]): { turn?: Turn; fromMs: number; toMs: number }[] {
  const before = turns.findLast(({ atMs }) => atMs <= day.fromMs);
  const within = turns.filter(({ atMs }) => atMs > day.fromMs && atMs < day.toMs);
  const starts = [{ turn: before, fromMs: day.fromMs }, ...within.map((turn) => ({ turn, fromMs: turn.atMs }))];
  return starts.map(({ turn, fromMs }, i) => ({
    ...(turn && { turn }),
    fromMs,
    toMs: starts[i + 1]?.fromMs ?? day.toMs,
  }));
}

function runPiece(blueprint: Blueprint, span: { fromMs: number; toMs: number; midnightMs: number }): Piece {
  const { fromMs, toMs, midnightMs } = span;
  const machine = buildMachine(blueprint);
  const doings: Doing[] = [];
  const record = run(machine, {
    untilS: (toMs - fromMs) / 1000,
    clockS: (fromMs - midnightMs) / 1000,
    stopAt: null,
    settle: false,
    tolerance: TOLERANCE,
    halt: (world) => {
      note(doings, machine, world.t);
      return false;
    },
  });
  return { fromMs, toMs, state: blueprint.state, machine, run: record, doings };
}

/** L/h of a m³/s. */
const L_PER_H = 3.6e6;

/** Notes what the devices do when it is other than before. */
function note(doings: Doing[], { devices, mode }: Machine, atS: number): void {
  const last = doings.at(-1);
  const same =
    last &&
    devices.every(({ drawing }, i) => drawing === last.drawing[i]) &&
    last.returnLPerH.every((flow, k) => flow === (mode.returnFlow[k] ?? 0) * L_PER_H);
  if (same) return;
  doings.push({
    atS,
    drawing: devices.map(({ drawing }) => drawing),
    returnLPerH: [...mode.returnFlow].map((flow) => flow * L_PER_H),
  });
}

function endOf({ run: record, machine, fromMs, toMs }: Piece): Snapshot {
  const x = record.knots.stateAt((toMs - fromMs) / 1000);
  const temperatures = machine.nodes.map((_, k) => x[STRIDE * k + TEMPERATURE] ?? 0);
  return {
    x,
    layout: machine.plant.layout,
    on: machine.devices.map((device) => device.on),
    dayLow: Float64Array.from(temperatures),
    dayHigh: Float64Array.from(temperatures),
  };
}
