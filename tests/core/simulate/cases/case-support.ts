import type { Facility } from '#core/facility/facility';
import type { Figure } from '#core/facility/figure';
import type { StateName } from '#core/facility/system';
import { FAULTS } from '#core/faults/catalogue';
import { freeCarbonDioxide, phOfNode } from '#core/simulate/laws-of-state';
import { stillAir } from '#core/simulate/air';
import type { Follower } from '#core/simulate/layout';
import { read, type Signal } from '#core/simulate/signal';
import { type Ask, type Course, courseOf, onlySystem } from '../course';

/** Litres in a US gallon. */
export const GALLON = 3.785;

/** °C */
export function fahrenheit(f: number): number {
  return (f - 32) / 1.8;
}

/** A figure of which only a range is known. */
export function between(low: number, high: number): Figure {
  return { value: (low + high) / 2, low, high, origin: 'entered' };
}

/** What becomes of a site's only system when a failure mode of the catalogue befalls a thing of it (the first, when none is named). */
export function befallen(site: Facility, fault: string, ask: Omit<Ask, 'fault'>, thing?: string): Course {
  const system = onlySystem(site);
  const mode = FAULTS.find(({ id }) => id === fault);
  const struck = mode?.things(site, system).find(({ key }) => thing === undefined || key === thing);
  if (!mode || !struck) throw new Error(`${fault} finds nothing to befall`);
  const state: StateName | undefined = mode.states === 'running' ? ask.state : (ask.state ?? mode.states[0]);
  return courseOf(site, { ...ask, state, fault: (upset) => mode.befall(upset, struck, site, system) });
}

function nodeOf(course: Course, tank: string): number {
  return course.machine.nodes.findIndex(({ key }) => key === tank);
}

function signalAt(course: Course, signal: Signal, t: number): number {
  return read(signal, course.record.knots.stateAt(t), stillAir());
}

/** What is dissolved in a tank, in the unit of the state: g/m³, or mol/m³ for alkalinity and carbon. */
export function dissolved(course: Course, tank: string, what: Follower, t = course.record.endS): number {
  const from = course.machine.plant.layout.followers[what];
  if (from < 0) throw new Error(`${what} is not followed`);
  return course.record.knots.stateAt(t)[from + nodeOf(course, tank)] as number;
}

/** pH of a tank, NBS. */
export function phOf(course: Course, tank: string, t = course.record.endS): number {
  return signalAt(course, phOfNode(course.machine.plant, nodeOf(course, tank), 'nbs'), t);
}

/** mg/L of free carbon dioxide. */
export function carbonDioxideOf(course: Course, tank: string, t = course.record.endS): number {
  return signalAt(course, freeCarbonDioxide(course.machine.plant, nodeOf(course, tank)), t);
}
