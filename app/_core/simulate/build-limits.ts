import type { Limit, Stock, ToleranceProfile } from '../facility/stock';
import type { Build } from './build';
import { floorSignal, levelSignal } from './build-signals';
import type { DayChange, LimitWatch, SignWatch } from './machine';
import { OXYGEN, STRIDE, TEMPERATURE } from './plant';
import { dissolved, freeAmmonia, freeCarbonDioxide, phOfNode } from './laws-of-state';
import { linear, salinity, type Signal } from './signal';
import { watch } from './watch';

/** Litres on the floor that count as harm to the house; less is a puddle. Common practice, no source. */
const PUDDLE_L = 1;
/** Millimetres by which a level must be off for somebody on a round to see it. Common practice, no source. */
const SEEN_MM = 20;

/** Finds the tolerance profile of a stock group. */
export type ProfileOf = (stock: Stock) => ToleranceProfile;

interface Group {
  node: number;
  tank: string;
  profile: ToleranceProfile;
  groups: string[];
}

function groupsOf(build: Build, profileOf: ProfileOf): Group[] {
  const found = new Map<string, Group>();
  for (const stock of build.system.stock) {
    const profile = profileOf(stock);
    const node = build.places.node(stock.tank);
    if (node < 0) continue;
    const id = `${stock.tank}/${profile.key}`;
    const group = found.get(id) ?? { node, tank: stock.tank, profile, groups: [] };
    group.groups.push(stock.group);
    found.set(id, group);
  }
  return [...found.values()];
}

/** Limits of tolerance of every group, the floor's, and the changes within a day; their watches go onto the build. */
export function buildLimits(build: Build, profileOf: ProfileOf): { limits: LimitWatch[]; dayChanges: DayChange[] } {
  const limits: LimitWatch[] = [];
  // One signal for all limits on one quantity of one tank, so that its law is asked once.
  const signals = new Map<string, Signal>();
  const dayChanges: DayChange[] = [];
  for (const group of groupsOf(build, profileOf)) {
    for (const limit of group.profile.limits) {
      if (limit.quantity === 'rise-24h' || limit.quantity === 'fall-24h')
        dayChanges.push(dayChange(build, group, limit));
      else addLimit(build, limits, group, limit, signals);
    }
  }
  const floor = watch('floor', limits.length, floorSignal(build.plant), 1, PUDDLE_L, PUDDLE_L / 2, true);
  build.watches.push(floor);
  limits.push({
    class: 'floor',
    what: 'water-on-floor',
    direction: 'above',
    tank: '',
    node: -1,
    limit: PUDDLE_L,
    forS: 0,
    groups: [],
    watch: floor,
  });
  return { limits, dayChanges };
}

function dayChange(build: Build, group: Group, limit: Limit): DayChange {
  const sign = limit.quantity === 'rise-24h' ? 1 : -1;
  const { snapshot } = build;
  const now = snapshot ? (snapshot.x[STRIDE * group.node + TEMPERATURE] as number) : 0;
  const before = snapshot
    ? sign > 0
      ? now - (snapshot.dayLow[group.node] as number)
      : (snapshot.dayHigh[group.node] as number) - now
    : 0;
  return {
    tank: group.tank,
    node: group.node,
    sign,
    limit: limit.above ?? limit.below ?? Number.POSITIVE_INFINITY,
    forS: limit.forMin * 60,
    before: Math.max(0, before),
    groups: group.groups,
  };
}

function addLimit(build: Build, limits: LimitWatch[], group: Group, limit: Limit, signals: Map<string, Signal>): void {
  const id = `${limit.quantity} ${group.node}`;
  const signal = signals.get(id) ?? limitSignal(build, group.node, limit);
  signals.set(id, signal);
  for (const direction of ['above', 'below'] as const) {
    const at = limit[direction];
    if (at === undefined) continue;
    const sign = direction === 'above' ? 1 : -1;
    const w = watch('limit', limits.length, signal, sign, at, at - sign * 1e-6);
    // What is not followed in this run keeps its place among the limits, and nobody looks at it.
    if (w.signal.kind !== 'lost') build.watches.push(w);
    limits.push({
      class: 'animals',
      what: limit.quantity,
      direction,
      tank: group.tank,
      node: group.node,
      limit: at,
      forS: limit.forMin * 60,
      groups: group.groups,
      watch: w,
    });
  }
}

function limitSignal(build: Build, node: number, limit: Limit): Signal {
  switch (limit.quantity) {
    case 'temperature':
    case 'rise-24h':
    case 'fall-24h':
      return linear(STRIDE * node + TEMPERATURE);
    case 'salinity':
      return salinity(node, build.plant.density);
    case 'oxygen':
      return linear(STRIDE * node + OXYGEN);
    case 'level':
      return linear(STRIDE * node, 1 / (build.plant.runVolume[node] as number));
    case 'ammonia':
      return freeAmmonia(build.plant, node);
    case 'carbon-dioxide':
      return freeCarbonDioxide(build.plant, node);
    case 'ph':
      return phOfNode(build.plant, node, 'nbs');
    case 'oxidant':
      return dissolved(build.plant, node, 'oxidant');
  }
}

/** What somebody on a round would see of the water: each aspect leaving its usual band. */
export function buildSigns(build: Build, profileOf: ProfileOf): SignWatch[] {
  const signs: SignWatch[] = [];
  const add = (aspect: SignWatch['aspect'], signal: Signal, sign: 1 | -1, at: number) => {
    const w = watch('sign', signs.length, signal, sign, at, at - sign * 1e-6, true);
    build.watches.push(w);
    signs.push({ aspect, watch: w });
  };
  for (const group of groupsOf(build, profileOf)) {
    const { usual } = group.profile;
    const at = STRIDE * group.node;
    add('temperature', linear(at + TEMPERATURE), 1, usual.temperatureC[1]);
    add('temperature', linear(at + TEMPERATURE), -1, usual.temperatureC[0]);
    add('salinity', salinity(group.node, build.plant.density), 1, usual.salinity[1]);
    add('salinity', salinity(group.node, build.plant.density), -1, usual.salinity[0]);
    add('oxygen', linear(at + OXYGEN), -1, usual.oxygenMgL);
  }
  for (let k = 0; k < build.plant.nodes; k++) {
    add('level', levelSignal(build.plant, k), 1, SEEN_MM);
    add('level', levelSignal(build.plant, k), -1, -SEEN_MM);
  }
  return signs;
}
