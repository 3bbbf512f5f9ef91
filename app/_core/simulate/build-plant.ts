import type { ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import { density } from '../water/density';
import { heatCapacity } from '../water/heat-capacity';
import { oxygenSaturation } from '../water/oxygen-saturation';
import { salinityVapourFactor } from '../water/salinity-vapour-factor';
import type { Upset } from '../faults/upset';
import { buildChemistry, firstFollowers } from './build-chemistry';
import { type Follower, layoutOf } from './layout';
import { type Plant, STRIDE } from './plant';

/** Level that a tank's own overflow needs to be told from its crest, m: below it water is taken as at rest. */
const THIN = 1e-3;

/** Part of the water that no outlet, siphon or pump reaches, however deep it is said to lie: the foot of the tank. */
export const FOOT = 0.02;

/** m³ left in a tank when the level has fallen by a depth, m. */
export function downTo(tank: ResolvedTank, depth: number): number {
  return Math.max(FOOT * tank.volume, tank.volume - depth * tank.surface);
}

/** The tanks that are nodes (reservoirs are only volumes), sump last. */
export function nodeTanks(resolved: ResolvedSystem): ResolvedTank[] {
  const nodes = resolved.tanks.filter((t) => t.tank.role !== 'reservoir');
  return [...nodes.filter((t) => t.tank.role !== 'sump'), ...nodes.filter((t) => t.tank.role === 'sump')];
}

/** The reservoirs, in the order of the description. */
export function reservoirTanks(resolved: ResolvedSystem): ResolvedTank[] {
  return resolved.tanks.filter((t) => t.tank.role === 'reservoir');
}

/** What of an upset a plant itself is made of. */
export type PlantUpset = Pick<Upset, 'openWaste' | 'leaks' | 'blockedOverflows'>;

/**
 * The constants of a run.
 * @param flow the whole return with every pump running, m³/s
 * @param carried what is dissolved and matters
 * @param lagging keys of the probes that lag
 */
export function buildPlant(
  resolved: ResolvedSystem,
  flow: number,
  upset: PlantUpset,
  carried: ReadonlySet<Follower>,
  lagging: readonly string[],
): Plant {
  const tanks = nodeTanks(resolved);
  const of = (value: (t: ResolvedTank) => number) => Float64Array.from(tanks, value);
  const hub = tanks.findIndex((t) => t.tank.role === 'sump');
  const rho = density(resolved.temperature, resolved.salinity);
  const reservoirs = reservoirTanks(resolved).length;
  const crest = (t: ResolvedTank) => downTo(t, Math.max(THIN, t.drainDown));
  const layout = layoutOf(STRIDE * tanks.length, tanks.length, reservoirs, carried, lagging);
  const leakOf = (t: ResolvedTank) => upset.leaks.get(t.tank.key);
  return {
    nodes: tanks.length,
    hub,
    reservoirs,
    layout,
    size: layout.size,
    chemistry: buildChemistry(resolved, tanks, carried),
    density: rho,
    heatCapacity: rho * heatCapacity(resolved.temperature, resolved.salinity),
    pressureAtm: resolved.pressureAtm,
    vapourFactor: salinityVapourFactor(resolved.salinity),
    lossWPerK: of((t) => t.loss),
    evaporationWPerPa: of((t) => t.evaporation),
    respiration: respiration(resolved, tanks, hub),
    restVolume: of(crest),
    siphonVolume: of((t) => downTo(t, siphonDepth(t))),
    // The layer above the crest drains at the rate that carries the full return at the running level.
    gravityPerS: of((t) => (flow * t.share) / (t.volume - crest(t))),
    siphonPerS: of((t) => siphonRate(t, flow, siphonDepth(t))),
    standVolume: of((t) => standOf(t, hub >= 0 && t.share > 0, upset)),
    leak: of((t) => leakOf(t)?.flow ?? 0),
    leakVolume: of((t) => downTo(t, Math.max(THIN, leakOf(t)?.depth ?? 0))),
    rimVolume: of((t) => t.volume + t.rim * t.surface),
    wasteVolume: of((t) => downTo(t, wasteDepth(resolved, t, upset.openWaste))),
    runVolume: of((t) => t.volume),
    surface: of((t) => t.surface),
  };
}

/** m that the deepest open waste of a tank reaches. */
function siphonDepth(tank: ResolvedTank): number {
  return Math.min(tank.outlet, tank.siphonBreak);
}

/**
 * How fast water siphons back through a stopped return: at the running level about as fast as the pump delivered it.
 * Common practice, no source; what counts is how much, not how fast.
 * @param flow the whole return, m³/s
 * @param depth m from the running level to where the siphon breaks
 * @returns 1/s
 */
export function siphonRate(tank: ResolvedTank, flow: number, depth: number): number {
  return (flow * tank.share) / Math.max(1e-9, tank.volume - downTo(tank, Math.max(THIN, depth)));
}

/** m³ at which a tank's standpipe takes water; where nothing else empties the tank, what blocks its overflow blocks that. */
function standOf(tank: ResolvedTank, overflows: boolean, { blockedOverflows }: PlantUpset): number {
  if (!overflows && blockedOverflows.has(tank.tank.key)) return Number.POSITIVE_INFINITY;
  return tank.volume + tank.stand * tank.surface;
}

function wasteDepth(resolved: ResolvedSystem, tank: ResolvedTank, open: ReadonlySet<string>): number {
  const here = resolved.devices.filter((d) => d.equipment.tank === tank.tank.key && open.has(d.equipment.key));
  const depths = here.map((d) => d.wasteTo);
  return Math.max(0.01, ...depths);
}

/** Animals breathe where they are; bacteria in the sump where there is one, else beside the animals. */
function respiration(resolved: ResolvedSystem, tanks: ResolvedTank[], hub: number): Float64Array {
  const own = Float64Array.from(tanks, (t) => resolved.respiration.get(t.tank.key) ?? 0);
  const bacteria = Float64Array.from(own, (use) => use * resolved.bacteriaShare);
  if (hub < 0) return own.map((use, k) => use + (bacteria[k] as number));
  own[hub] = (own[hub] as number) + bacteria.reduce((sum, use) => sum + use, 0);
  return own;
}

/**
 * State at the running levels and the temperature the system is kept at, saturated with oxygen.
 * The gravity return needs its layer of water, so a fed tank stands at its running level exactly when the return flows. What the lagging
 * probes show is left at 0, for whoever has their signals.
 */
export function runningState(plant: Plant, resolved: ResolvedSystem): Float64Array {
  const x = new Float64Array(plant.size);
  const oxygen = 0.95 * oxygenSaturation(resolved.temperature, resolved.salinity, resolved.pressureAtm);
  for (const [k, tank] of nodeTanks(resolved).entries()) {
    x.set(
      [tank.volume, resolved.temperature, (resolved.salinity / 1000) * plant.density * tank.volume, oxygen],
      STRIDE * k,
    );
  }
  for (const [r, tank] of reservoirTanks(resolved).entries()) x[plant.layout.reservoirs + r] = tank.volume;
  firstFollowers(plant, resolved, x);
  return x;
}
