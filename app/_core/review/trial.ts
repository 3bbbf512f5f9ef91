import type { StateName } from '../facility/system';
import type { Fault } from '../faults/fault';
import { noUpset, type Upset } from '../faults/upset';
import type { Column } from '../plans/credit';
import { buildMachine, type Blueprint } from '../simulate/build-machine';
import type { Machine } from '../simulate/machine';
import { run } from '../simulate/run';
import { COARSE, TOLERANCE } from '../simulate/stepper';
import type { Record } from '../simulate/world';
import { HOUR } from '../time/week';
import { actsOnWater } from './acts-on-water';
import { type Context, HORIZON, type View } from './context';
import type { CaseThing } from './result';

/** A fault case to be tried: what befalls what, in which state. */
export interface Subject {
  fault: Fault;
  thing: CaseThing;
  state: StateName;
}

/** One course of a fault case when nobody comes. */
export interface Trial {
  /** Local hour of the day at which it begins. */
  hour: number;
  blueprint: Blueprint;
  /** The machine as it was at the end. */
  machine: Machine;
  record: Record;
}

/** The upset a subject means. */
export function upsetOf(context: Context, subject: Subject): Upset {
  const upset = noUpset();
  subject.fault.befall(upset, subject.thing, context.facility, context.system);
  return upset;
}

/**
 * Let a fault run its course from one hour of the day.
 * @param onlyWhether whether it is only asked if any harm comes: the first ends it, and nothing is raised or shown
 */
export function tryAt(
  context: Context,
  view: View,
  subject: Subject,
  column: Column,
  hour: number,
  onlyWhether = false,
): Trial {
  const blueprint: Blueprint = {
    ...context.simulated,
    resolved: view.resolved,
    upset: upsetOf(context, subject),
    credited: context.credit[column],
    state: subject.state,
    profileOf: view.profileOf,
    snapshot: view.nominal.at(hour),
    unwatched: onlyWhether,
  };
  const machine = buildMachine(blueprint);
  // The ends of plausible ranges are no nearer to the truth than this.
  const tolerance = view.side === 'nominal' ? TOLERANCE : COARSE;
  const stopAt = onlyWhether ? 'any' : 'animals';
  const record = run(machine, { untilS: HORIZON, clockS: hour * HOUR, stopAt, settle: true, tolerance });
  return { hour, blueprint, machine, record };
}

/** Whether anything of the water, or of what acts on it, is touched at all. */
export function touchesWater(context: Context, upset: Upset): boolean {
  const { equipment, tanks } = context.system;
  const circuits = new Set(equipment.map((e) => e.circuit));
  const read = new Set(
    equipment.flatMap(({ plan }) => [
      ...(plan.regulation.kind === 'thermostat' ? plan.regulation.sensors : []),
      ...(plan.regulation.kind === 'level' ? [plan.regulation.sensor] : []),
      ...plan.interlocks.flatMap((l) => (l.when.kind === 'sensor' ? [l.when.sensor] : [])),
    ]),
  );
  return (
    upset.utilityDown ||
    upset.stateNeverEnds ||
    upset.stateAlone ||
    upset.sumpRaised !== 0 ||
    equipment.some((e) => upset.health.has(e.key) || upset.openWaste.has(e.key)) ||
    [...upset.deadCircuits].some((key) => circuits.has(key)) ||
    [...upset.probes.keys()].some((key) => read.has(key)) ||
    tanks.some((tank) => upset.blockedOverflows.has(tank.key)) ||
    actsOnWater(context.system, upset)
  );
}
