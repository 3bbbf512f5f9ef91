import type { ResolvedSystem } from '../equipment/resolved';
import type { Equipment, EquipmentType, StateName, System } from '../facility/system';
import { noUpset, type Upset } from '../faults/upset';
import type { Snapshot } from './build';
import { type Follower, FOLLOWERS } from './layout';

/**
 * What is dissolved and has to be followed in a run: what matters to the system anyway and can change in it, and what an upset brings in. Where
 * nothing is wrong (any more), what the water it begins with holds.
 */
export function carriedIn(
  resolved: ResolvedSystem,
  system: System,
  state: StateName,
  upset: Upset,
  snapshot: Snapshot | null,
): ReadonlySet<Follower> {
  if (snapshot && isAtRest(upset, ALL))
    return new Set(FOLLOWERS.filter((name) => snapshot.layout.followers[name] >= 0));
  const carried = new Set(resolved.chemistry.carried);
  const stays =
    snapshot &&
    state === 'normal' &&
    !carried.has('carbon') &&
    leavesNitrogen(system, upset) &&
    isFar(snapshot, resolved.chemistry.ammoniaNear);
  if (stays) carried.delete('ammonia');
  const brought = [upset.newWater, ...upset.brings.values()].some((water) => (water?.oxidantMgL ?? 0) > 0);
  if (brought || upset.mainsOxidantPasses !== null || upset.hoses.size > 0) carried.add('oxidant');
  if (upset.feedDumpedG > 0) carried.add('ammonia');
  return carried;
}

/** Whether ammonia in health stands so low that warmer or colder water alone, or slower bacteria, take it to no limit. */
function isFar({ x, layout, dayLow }: Snapshot, near: number): boolean {
  const from = layout.followers.ammonia;
  const nodes = dayLow.length;
  return from < 0 || x.subarray(from, from + nodes).every((concentration) => concentration < near);
}

type Part = keyof Upset;
const REST = noUpset();
const ALL = Object.keys(REST) as Part[];

/** What can be wrong without any of it reaching bacteria, feed or water, as long as it is about equipment of the types below. */
const APART: ReadonlySet<Part> = new Set<Part>([
  'health',
  'weakened',
  'setPointShift',
  'probes',
  'deadCircuits',
  'roomShiftC',
  'mutedAlarms',
  'nobodyAnswers',
  'deadMonitors',
  'batteriesFail',
]);
const AFFECTING = ALL.filter((part) => !APART.has(part));

const BESIDE: ReadonlySet<EquipmentType> = new Set<EquipmentType>([
  'heater',
  'chiller',
  'circulation-pump',
  'air-blower',
  'skimmer',
  'light',
  'uv',
  'ozone',
]);

function isAtRest(upset: Upset, parts: readonly Part[]): boolean {
  return parts.every((part) => {
    const value = upset[part];
    return value instanceof Map || value instanceof Set ? value.size === 0 : value === REST[part];
  });
}

/** Whether what is wrong leaves feed, bacteria and what flows past them as they are in health, so that ammonia stands where it stood. */
function leavesNitrogen(system: System, upset: Upset): boolean {
  return (
    isAtRest(upset, AFFECTING) &&
    system.equipment.every((e) => (BESIDE.has(e.type) ? true : !isTouched(e, upset) && !isSwitched(e)))
  );
}

function isTouched({ key, circuit, plan }: Equipment, upset: Upset): boolean {
  const { regulation } = plan;
  const read = regulation.kind === 'level' ? [regulation.sensor] : [];
  return (
    upset.health.has(key) ||
    upset.weakened.has(key) ||
    (circuit !== undefined && upset.deadCircuits.has(circuit)) ||
    read.some((sensor) => upset.probes.has(sensor))
  );
}

/** Whether heat or a reading could switch it: then it may follow what is wrong elsewhere. */
function isSwitched({ plan }: Equipment): boolean {
  return plan.cutOuts.length > 0 || plan.interlocks.some(({ when }) => when.kind === 'sensor');
}
