import type { ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import { stateMinOf } from '../equipment/defaults';
import { MORE, take, taker, type Taker } from '../equipment/take';
import type { Facility } from '../facility/facility';
import type { StateName, System } from '../facility/system';
import type { Upset } from '../faults/upset';
import { respirationFactor } from '../water/respiration';
import { roomAir, stillAir } from './air';
import type { Build, Snapshot } from './build';
import { buildAlarms } from './build-alarms';
import { bacteriaOf, hosesOf } from './build-brought';
import { carriedIn } from './build-carried';
import { buildDevice } from './build-device';
import { buildLimits, buildSigns, type ProfileOf } from './build-limits';
import { buildPlant, downTo, FOOT, nodeTanks, reservoirTanks, runningState, siphonRate } from './build-plant';
import { buildProbes } from './build-probes';
import type { Places } from './build-signals';
import type { Credit } from '../plans/credit';
import { buildSupply } from './build-supply';
import type { Machine, NodeRegime, StateSpan } from './machine';
import { emptyMode, STRIDE } from './plant';
import { drawnFrom } from './drawn';
import { addMatched } from './pour-back';
import { carryOver, sameLayout } from './layout';
import type { LaggingProbe } from './probes';
import { linear, read } from './signal';
import { type Watch, watch } from './watch';

/** What a machine is built from. */
export interface Blueprint {
  facility: Facility;
  system: System;
  resolved: ResolvedSystem;
  upset: Upset;
  /** Which safeguards are counted on. */
  credited: Credit;
  state: StateName;
  profileOf: ProfileOf;
  /** The moment of normal life it begins at; null: running levels, set temperature, air-saturated. */
  snapshot: Snapshot | null;
  /** Nobody asks what is raised or shown: no alarm and no sign is followed, the water goes its way all the same. */
  unwatched?: boolean;
}

/** Put a machine together. Building again from the same blueprint gives an equal, fresh machine. */
export function buildMachine(blueprint: Blueprint): Machine {
  const build = prepare(blueprint);
  const { plant, resolved, system } = build;
  const devices = resolved.devices.map((device, i) => buildDevice(build, device, i));
  const nodes = build.tanks.map((tank) => regimeOf(build, tank.tank.key));
  regimes(build, nodes);
  const dry = dryWatch(build);
  const empty = emptyWatches(build);
  const { limits, dayChanges } = buildLimits(build, blueprint.profileOf);
  const alarms = blueprint.unwatched ? [] : buildAlarms(build);
  const signs = blueprint.unwatched ? [] : buildSigns(build, blueprint.profileOf);
  const probes = buildProbes(build);
  const start = startOf(build, probes);
  const span = spanOf(build, start);
  return {
    plant,
    mode: emptyMode(plant.nodes, plant.reservoirs),
    room: roomAir(
      resolved.room.temperatureC,
      resolved.room.humidityPct,
      resolved.chemistry.meals,
      build.upset.roomShiftC,
    ),
    nodes,
    devices,
    watches: build.watches,
    limits,
    dayChanges,
    alarms,
    signs,
    span,
    dry,
    empty,
    refilled: !topOffUpset(build) && build.upset.emptyReservoirs.size === 0,
    mains: mainsOf(build),
    bacteria: bacteriaOf(build),
    hoses: hosesOf(build),
    dumped: dumpedOf(build),
    putBack: build.upset.newWater,
    clockOffS: build.upset.clockOffS,
    probes,
    stillGas: Float64Array.from(build.tanks, (t) => t.stillGas),
    fallShare: resolved.fallShare,
    stocked: build.tanks.map((t) => system.stock.some((s) => s.tank === t.tank.key)),
    initial: initialState(build, start, span),
    before: beforeOf(build),
  };
}

function prepare(blueprint: Blueprint): Build {
  const { facility, resolved, upset, credited } = blueprint;
  const flow = returnFlowOf(resolved);
  const tanks = nodeTanks(resolved);
  const reservoirs = reservoirTanks(resolved);
  const carried = carriedIn(resolved, blueprint.system, blueprint.state, upset, blueprint.snapshot);
  const places: Places = {
    node: (key) => tanks.findIndex((t) => t.tank.key === key),
    reservoir: (key) => reservoirs.findIndex((t) => t.tank.key === key),
  };
  return {
    ...blueprint,
    supply: buildSupply(facility, upset, credited, siteTaker(resolved)),
    plant: buildPlant(resolved, flow, upset, carried, [...resolved.lags.keys()]),
    places,
    tanks,
    watches: [],
  };
}

function siteTaker({ side, only }: ResolvedSystem): Taker {
  return taker(side, only);
}

function regimeOf(build: Build, key: string): NodeRegime {
  const tank = build.tanks.find((t) => t.tank.key === key);
  const fed = (tank?.share ?? 0) > 0 && build.plant.hub >= 0;
  const broken = tank !== undefined && tank.siphonBreak < tank.outlet && build.credited(tank.tank.siphonSafeguard);
  return {
    key,
    overflow: fed && !build.upset.blockedOverflows.has(key),
    siphon: fed,
    siphonSafeguard: broken ? (tank?.tank.siphonSafeguard ?? null) : null,
  };
}

/**
 * Part of its water below which a node counts as bare (nothing that stands in it is covered: nothing heats or evaporates there any
 * more), and above which as wet again: less than the foot that no outlet or pump reaches. Common practice, no source.
 */
const BARE = 0.015;
const WET = 0.0195;

/** Levels at which a node begins to overflow, to siphon back, to spill, and below which there is no water to speak of. */
function regimes(build: Build, nodes: NodeRegime[]): void {
  const slack = 1e-9;
  for (const [k, node] of nodes.entries()) {
    const add = (role: Watch['role'], at: number) =>
      build.watches.push(watch(role, k, linear(STRIDE * k), 1, at, at - slack));
    if (node.overflow) add('overflow', build.plant.restVolume[k] as number);
    if (node.siphon) {
      // A siphon-break that is not counted on lets the siphon run down to the outlet.
      const tank = build.tanks[k];
      const relied = tank?.tank.siphonBreakMm === undefined || build.credited(tank.tank.siphonSafeguard);
      if (tank && !relied) siphonToOutlet(build, k, tank);
      add('siphon', build.plant.siphonVolume[k] as number);
    }
    const stand = build.plant.standVolume[k] as number;
    if (stand < Number.POSITIVE_INFINITY) add('standpipe', stand);
    add('rim', build.plant.rimVolume[k] as number);
    const whole = build.plant.runVolume[k] as number;
    build.watches.push(watch('bare', k, linear(STRIDE * k), -1, BARE * whole, WET * whole));
  }
}

function siphonToOutlet(build: Build, k: number, tank: ResolvedTank): void {
  build.plant.siphonVolume[k] = downTo(tank, tank.outlet);
  build.plant.siphonPerS[k] = siphonRate(tank, returnFlowOf(build.resolved), tank.outlet);
}

/** The return with every pump running, m³/s. */
function returnFlowOf(resolved: ResolvedSystem): number {
  return resolved.devices.filter((d) => d.equipment.type === 'return-pump').reduce((sum, d) => sum + d.flow, 0);
}

function dryWatch(build: Build): Watch | null {
  const { hub } = build.plant;
  if (hub < 0) return null;
  const tank = build.tanks[hub];
  const volume = tank?.volume ?? 0;
  const at = Math.max(FOOT * volume, volume - (tank?.pumpDry ?? 0) * (tank?.surface ?? 0));
  const w = watch('dry', hub, linear(STRIDE * hub), -1, at, at + 1e-9);
  build.watches.push(w);
  return w;
}

function emptyWatches(build: Build): Watch[] {
  return Array.from({ length: build.plant.reservoirs }, (_, r) => {
    const w = watch('empty', r, linear(build.plant.layout.reservoirs + r), -1, 0, 1e-9, true);
    build.watches.push(w);
    return w;
  });
}

function spanOf(build: Build, start: Float64Array): StateSpan | null {
  const { state, system, upset } = build;
  if (state === 'normal') return null;
  const described = system.states.find((s) => s.name === state);
  const path = `systems/${system.key}/states/${state}/lastsMin`;
  const minutes = take(
    siteTaker(build.resolved),
    path,
    `length of ${state}`,
    described?.lastsMin,
    MORE,
    stateMinOf(state),
  );
  const relied = described?.endSafeguard !== undefined && build.credited(described.endSafeguard);
  const ends = !upset.stateNeverEnds || relied;
  return {
    endsS: ends ? minutes * 60 : Number.POSITIVE_INFINITY,
    safeguard: upset.stateNeverEnds && relied ? (described?.endSafeguard ?? null) : null,
    normalThen: system.equipment.map(() => null),
    drawn: drawnFrom(build.plant, start, (described?.drawnL?.value ?? 0) / 1000),
  };
}

/** What was before, where the moment it begins at is laid out as this machine is. */
function beforeOf({ snapshot, plant }: Build): Machine['before'] {
  return snapshot && sameLayout(snapshot.layout, plant.layout) ? (snapshot.before ?? null) : null;
}

function topOffUpset({ system, upset }: Build): boolean {
  return system.equipment.some((e) => {
    if (e.type !== 'top-off') return false;
    const { regulation } = e.plan;
    const misled = regulation.kind === 'level' && upset.probes.has(regulation.sensor);
    return upset.health.has(e.key) || upset.siphoning.has(e.key) || misled;
  });
}

/** Water and probes before anything is drawn or added. */
function startOf({ plant, resolved, snapshot }: Build, probes: readonly LaggingProbe[]): Float64Array {
  if (snapshot && sameLayout(snapshot.layout, plant.layout)) return snapshot.x;
  const x = runningState(plant, resolved);
  const air = { ...stillAir(), temperature: resolved.room.temperatureC[0] ?? resolved.temperature };
  if (snapshot) carryOver(snapshot.layout, snapshot.x, plant.layout, plant.nodes, x);
  for (const { key, at, signal } of probes) {
    if (!snapshot?.layout.lagging.includes(key)) x[at] = read(signal, x, air);
  }
  return x;
}

/** What of the mains' disinfectant reaches the water, and how much of it usually does not. */
function mainsOf({ resolved, upset }: Build): Machine['mains'] {
  const left = resolved.devices.reduce((part, d) => part * (1 - d.removes), 1);
  return { oxidant: resolved.chemistry.mainsOxidant, removed: 1 - left, passes: upset.mainsOxidantPasses ?? 0 };
}

/** s in which feed that fell in is broken down and given off. Common practice, no source: "by the next day". */
const SPOILT_S = 86_400;

/** Feed that fell in at once, where feed usually goes. */
function dumpedOf({ resolved, upset, tanks }: Build): Machine['dumped'] {
  const feed = upset.feedDumpedG;
  if (!(feed > 0)) return null;
  const { excretion, nitrogenPerFeed, feedOxygen } = resolved.chemistry;
  const whole = [...excretion.values()].reduce((sum, n) => sum + n, 0);
  const share = (t: ResolvedTank, k: number) =>
    whole > 0 ? (excretion.get(t.tank.key) ?? 0) / whole : k === 0 ? 1 : 0;
  const perS = (each: number) => Float64Array.from(tanks, (t, k) => (share(t, k) * feed * each) / SPOILT_S);
  const breath = respirationFactor(resolved.temperature);
  return { oxygen: perS(feedOxygen / breath), nitrogen: perS(nitrogenPerFeed), untilS: SPOILT_S };
}

function initialState({ plant, upset, places }: Build, start: Float64Array, span: StateSpan | null): Float64Array {
  const x = Float64Array.from(start);
  for (const key of upset.emptyReservoirs) {
    const r = places.reservoir(key);
    if (r >= 0) x[plant.layout.reservoirs + r] = 0;
  }
  if (span) for (let k = 0; k < plant.nodes; k++) addMatched(x, k, -(span.drawn[k] as number));
  if (upset.sumpRaised !== 0 && plant.hub >= 0)
    addMatched(x, plant.hub, upset.sumpRaised * (plant.surface[plant.hub] as number));
  return x;
}
