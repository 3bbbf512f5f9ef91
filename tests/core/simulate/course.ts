import type { Facility } from '#core/facility/facility';
import type { LimitQuantity, Limit, ToleranceProfile } from '#core/facility/stock';
import type { StateName, System } from '#core/facility/system';
import { noUpset, type Upset } from '#core/faults/upset';
import { resolveSystem } from '#core/equipment/resolve';
import type { Side } from '#core/equipment/take';
import { defaultProfile } from '#core/facility/profiles';
import { type Column, creditOf } from '#core/plans/credit';
import type { Harm } from '#core/review/result';
import type { Snapshot } from '#core/simulate/build';
import { type Blueprint, buildMachine } from '#core/simulate/build-machine';
import type { Machine } from '#core/simulate/machine';
import { nominal } from '#core/simulate/nominal';
import { OXYGEN, SALT, STRIDE, TEMPERATURE, VOLUME } from '#core/simulate/plant';
import { run, type RunOptions } from '#core/simulate/run';
import type { Tolerance } from '#core/simulate/stepper';
import type { Record } from '#core/simulate/world';
import { REVIEWED_ON } from '../../_support/build-system';

/** Tight enough to compare a run with a closed form to a millionth. */
export const TIGHT: Tolerance = { relative: 1e-11, absolute: 1e-12 };

/** What a test wants to see happen. */
export interface Ask {
  hours: number;
  /** What is wrong. */
  fault?: (upset: Upset) => void;
  state?: StateName;
  /** Local hour at which it begins. */
  at?: number;
  column?: Column;
  side?: Side;
  /** Path of the one figure that takes its bad end on that side. */
  only?: string;
  /** From running levels instead of a moment of a normal day. */
  fresh?: boolean;
  /** A last hand on the machine before it runs. */
  adjust?: (machine: Machine) => void;
  options?: Partial<RunOptions>;
}

/** One course of events with what is needed to read it. */
export interface Course {
  machine: Machine;
  record: Record;
}

/** The only system of a site. */
export function onlySystem(site: Facility): System {
  const [system] = site.systems;
  if (!system) throw new Error('the site of a test has a system');
  return system;
}

/** Plan, figures and credit of a site's only system, with what is wrong. */
function blueprintOf(site: Facility, ask: Pick<Ask, 'fault' | 'state' | 'column' | 'side' | 'only'> = {}): Blueprint {
  const system = onlySystem(site);
  const upset = noUpset();
  ask.fault?.(upset);
  const profiles = new Map(site.profiles.map((p) => [p.key, p]));
  return {
    facility: site,
    system,
    resolved: resolveSystem(site, system, ask.side ?? 'nominal', ask.only ?? null),
    upset,
    credited: creditOf(site, system, ask.column ?? 'claimed', REVIEWED_ON),
    state: ask.state ?? 'normal',
    profileOf: (stock) => profiles.get(stock.profile ?? '') ?? defaultProfile(system.kind),
    snapshot: null,
  };
}

/** A moment of a system's normal day. */
function normalAt(site: Facility, hour: number, ask: Pick<Ask, 'side' | 'only'> = {}): Snapshot {
  return nominal(blueprintOf(site, ask)).at(hour);
}

/** Let it happen. */
export function courseOf(site: Facility, ask: Ask): Course {
  const hour = ask.at ?? 8;
  const blueprint = blueprintOf(site, ask);
  const machine = buildMachine({
    ...blueprint,
    snapshot: ask.fresh ? null : normalAt(site, hour, { side: ask.side, only: ask.only }),
  });
  ask.adjust?.(machine);
  const options: RunOptions = { untilS: ask.hours * 3600, clockS: hour * 3600, stopAt: null, settle: false };
  return { machine, record: run(machine, { ...options, ...ask.options }) };
}

function node(course: Course, tank: string): number {
  const k = course.machine.nodes.findIndex((n) => n.key === tank);
  if (k < 0) throw new Error(`no tank ${tank}`);
  return STRIDE * k;
}

/** Number of the state of a tank, at a time in seconds (absent: at the end). */
function number(course: Course, tank: string, offset: number, t = course.record.endS): number {
  const { knots } = course.record;
  return knots.between(knots.before(t), node(course, tank) + offset, t);
}

/** m³ */
export function volume(course: Course, tank: string, t?: number): number {
  return number(course, tank, VOLUME, t);
}

/** °C */
export function temperature(course: Course, tank: string, t?: number): number {
  return number(course, tank, TEMPERATURE, t);
}

/** g/m³ */
export function oxygen(course: Course, tank: string, t?: number): number {
  return number(course, tank, OXYGEN, t);
}

/** Practical salinity. */
export function salinity(course: Course, tank: string, t?: number): number {
  return (1000 * number(course, tank, SALT, t)) / (course.machine.plant.density * volume(course, tank, t));
}

/** mm from the running level. */
export function level(course: Course, tank: string, t?: number): number {
  const k = node(course, tank) / STRIDE;
  const { plant } = course.machine;
  return (1000 * (volume(course, tank, t) - (plant.runVolume[k] as number))) / (plant.surface[k] as number);
}

/** Litres on the floor. */
export function floor(course: Course, t = course.record.endS): number {
  const { knots } = course.record;
  return 1000 * knots.between(knots.before(t), course.machine.plant.layout.floor, t);
}

/** Litres left in the first reservoir. */
export function inReservoir(course: Course, t = course.record.endS): number {
  const { knots } = course.record;
  const { plant } = course.machine;
  return 1000 * knots.between(knots.before(t), plant.layout.reservoirs, t);
}

/** A device of the machine, as it stood at the end. */
export function device(course: Course, key: string): Machine['devices'][number] {
  const found = course.machine.devices.find((d) => d.key === key);
  if (!found) throw new Error(`no equipment ${key}`);
  return found;
}

/** The harm of a kind, if it came. */
export function harmOf(course: Course, what: Harm['what'], direction?: Harm['direction']): Harm | undefined {
  return course.record.harms.find((h) => h.what === what && (direction === undefined || h.direction === direction));
}

/** Seconds until a harm of a kind; Infinity when it never comes. */
export function timeTo(course: Course, what: Harm['what'], direction?: Harm['direction']): number {
  return harmOf(course, what, direction)?.atS ?? Number.POSITIVE_INFINITY;
}

/** A profile called `exact` with just these limits, harmful at once unless they say otherwise. */
export function profileWith(
  ...limits: (Omit<Limit, 'forMin'> & { quantity: LimitQuantity; forMin?: number })[]
): ToleranceProfile {
  return {
    key: 'exact',
    name: 'Exact',
    usual: { temperatureC: [0, 60], salinity: [0, 60], oxygenMgL: 0 },
    limits: limits.map((limit) => ({ forMin: 0, ...limit })),
    source: 'made up for a test',
    confidence: 'low',
  };
}
