import type { Facility } from '../facility/facility';
import type { EquipmentType, StateName, System } from '../facility/system';
import { noUpset } from '../faults/upset';
import { buildMachine } from '../simulate/build-machine';
import { OXYGEN, STRIDE } from '../simulate/plant';
import { run } from '../simulate/run';
import type { Record } from '../simulate/world';
import { airStoppedIn, isOffIn } from '../states/stops-air';
import { HOUR } from '../time/week';
import { type Context, contextOf, HORIZON, type View } from './context';
import { reasonNot } from './reason-not';

/** What oxygen comes to while a state keeps something still that brings it in. */
export interface OxygenWithout {
  /** Names of what stands still and brings oxygen in while it runs. */
  stopped: string[];
  /** Whether no plan says so, and it was taken from what is usual. */
  isAssumed: boolean;
  /** h until animals are past a limit of oxygen at nominal figures; null: not within seven days. */
  hours: number | null;
  /** The same with every figure at its bad end; null: not within seven days. */
  badHours: number | null;
  /** Local hour of the day at which it began, the worse of those tried. */
  fromHour: number;
  /** Tank that is first past its limit, by name; else the one with the least oxygen. */
  tank: string | null;
  /** Least oxygen of any tank with animals until then, mg/L. */
  leastMgL: number | null;
  /** Whether the plausible range of the figures changes the answer. */
  unsure: boolean;
  /** Why nothing could be worked out; null when it could. */
  why: string | null;
}

/** What is off for most medicines, where no plan says anything. Common practice, no source. */
const OFF_FOR_MEDICINE: ReadonlySet<EquipmentType> = new Set(['skimmer', 'ozone', 'uv']);
/** Local hours at which it is begun: before the night, and in the morning. */
const FROM_HOURS = [20, 8] as const;

/**
 * How long animals have oxygen when a state keeps still what brings it in: the state by itself, as the plans are written, at the
 * stock that is entered, with nobody coming. Where no plan speaks of a treatment, what is off for most medicines counts as off.
 *
 * @param on   ISO date the tests are judged on
 * @returns    null where the state stops nothing that brings oxygen in
 */
export function oxygenWithout(
  facility: Facility,
  system: System,
  state: Exclude<StateName, 'normal'>,
  on: string,
): OxygenWithout | null {
  const isPlanned = system.equipment.some((piece) => isOffIn(piece, state));
  const isAssumed = !isPlanned && state === 'treatment';
  const seen = isAssumed ? withAssumed(system, state) : system;
  const stopped = airStoppedIn(seen, state);
  if (stopped.length === 0) return null;
  const site = { ...facility, systems: facility.systems.map((one) => (one.key === seen.key ? seen : one)) };
  const context = contextOf(site, seen, on);
  const names = { stopped: stopped.map(({ name }) => name), isAssumed };
  const why = reasonNot(context.view('nominal'));
  if (why !== null)
    return {
      ...names,
      hours: null,
      badHours: null,
      fromHour: FROM_HOURS[0],
      tank: null,
      leastMgL: null,
      unsure: true,
      why,
    };
  const nominal = worst(context, context.view('nominal'), state);
  const bad = reasonNot(context.view('warm')) === null ? worst(context, context.view('warm'), state) : null;
  const badHours = bad === null ? null : bad.hours;
  const unsure = bad === null || (nominal.hours === null) !== (badHours === null);
  return { ...names, ...nominal, badHours, unsure, why: null };
}

function withAssumed(system: System, state: Exclude<StateName, 'normal'>): System {
  const equipment = system.equipment.map((piece) =>
    OFF_FOR_MEDICINE.has(piece.type)
      ? {
          ...piece,
          plan: { ...piece.plan, states: [...piece.plan.states, { state, then: 'off', by: 'person' } as const] },
        }
      : piece,
  );
  const states = system.states.some(({ name }) => name === state)
    ? system.states
    : [...system.states, { name: state, endsBy: 'person' as const }];
  return { ...system, equipment, states };
}

type Course = Pick<OxygenWithout, 'hours' | 'fromHour' | 'tank' | 'leastMgL'>;

function worst(context: Context, view: View, state: StateName): Course {
  const courses = FROM_HOURS.map((hour) => courseFrom(context, view, state, hour));
  return courses.reduce((a, b) => {
    const [first, second] = [a.hours ?? Infinity, b.hours ?? Infinity];
    if (first !== second) return first < second ? a : b;
    return (a.leastMgL ?? Infinity) <= (b.leastMgL ?? Infinity) ? a : b;
  });
}

function courseFrom(context: Context, view: View, state: StateName, fromHour: number): Course {
  const upset = noUpset();
  upset.stateAlone = true;
  const { resolved, profileOf } = view;
  const credited = context.credit.claimed;
  const snapshot = view.nominal.at(fromHour);
  const machine = buildMachine({
    ...context.simulated,
    resolved,
    upset,
    credited,
    state,
    profileOf,
    snapshot,
    unwatched: true,
  });
  const record = run(machine, { untilS: HORIZON, clockS: fromHour * HOUR, stopAt: null, settle: true });
  const harm = record.harms
    .filter(({ what, direction }) => what === 'oxygen' && direction === 'below')
    .sort((a, b) => a.atS - b.atS)[0];
  const nodes = machine.nodes.flatMap(({ key }, k) => (machine.stocked[k] ? [{ key, k }] : []));
  const least = leastOf(record, nodes, harm?.atS ?? record.endS);
  const key = harm?.tank ?? least?.key;
  const tank = context.system.tanks.find((one) => one.key === key)?.name ?? null;
  return { hours: harm ? harm.atS / HOUR : null, fromHour, tank, leastMgL: least?.value ?? null };
}

/** Points of a course at which oxygen is read. */
const POINTS = 400;

function leastOf(
  { knots }: Record,
  nodes: readonly { key: string; k: number }[],
  untilS: number,
): { key: string; value: number } | null {
  let least: { key: string; value: number } | null = null;
  for (const { key, k } of nodes)
    for (let i = 0; i <= POINTS; i++) {
      const t = (untilS * i) / POINTS;
      const value = knots.between(knots.before(t), STRIDE * k + OXYGEN, t);
      if (least === null || value < least.value) least = { key, value };
    }
  return least;
}
