import type { ResolvedDevice } from '../equipment/resolved';
import type { Equipment } from '../facility/system';
import { carbonAt } from '../water/carbonate-balance';
import { nbsAboveTotal } from '../water/ph-scales';
import { oxygenSaturation } from '../water/oxygen-saturation';
import type { Build } from './build';
import { constantsAt, isSalt } from './chemistry';
import type { Device, MakeUp } from './device';

const BRINGS: ReadonlySet<string> = new Set(['top-off', 'doser', 'supply']);

/** Whether something is wrong about a piece of equipment itself, or about what tells it to run. */
function amiss({ upset }: Build, { key, plan }: Equipment): boolean {
  const { regulation } = plan;
  const told =
    regulation.kind === 'level' ? [regulation.sensor] : regulation.kind === 'thermostat' ? regulation.sensors : [];
  const locks = plan.interlocks.flatMap(({ when }) => (when.kind === 'sensor' ? [when.sensor] : []));
  return (
    upset.health.has(key) ||
    upset.siphoning.has(key) ||
    [...told, ...locks].some((sensor) => upset.probes.has(sensor)) ||
    (regulation.kind === 'hours' && upset.clockOffS !== 0)
  );
}

/**
 * The water that a top-off, doser or supply brings.
 * @param left part of its effect that it still has, 0 to 1
 */
export function makeUpOf(build: Build, { equipment, flow, brings }: ResolvedDevice, left: number): MakeUp | null {
  if (!BRINGS.has(equipment.type)) return null;
  const { resolved, upset, plant, places } = build;
  const { source } = equipment;
  const reservoir = source === undefined || source === 'mains' ? -1 : places.reservoir(source);
  const wrong = upset.brings.get(equipment.key) ?? (reservoir < 0 ? null : upset.newWater);
  const salinity = wrong?.salinity ?? upset.reservoirSalinity.get(source ?? '') ?? brings.salinity;
  const supplied = equipment.type === 'supply';
  return {
    flow: flow * left,
    reservoir,
    mains: source === 'mains',
    amiss: amiss(build, equipment),
    siphons: upset.siphoning.has(equipment.key),
    salt: (salinity / 1000) * plant.density,
    oxygen: oxygenSaturation(resolved.room.temperatureC[0] ?? 20, supplied ? salinity : 0, resolved.pressureAtm),
    // A supply brings water like that of the system; what tops up brings none of either.
    alkalinity: supplied ? resolved.chemistry.alkalinity : brings.alkalinity,
    carbon: supplied ? carbonOf(build, salinity) : 0,
    temperature: wrong?.temperatureC ?? brings.temperature,
    oxidant: wrong?.oxidantMgL ?? 0,
  };
}

/** mol/m³ of inorganic carbon in water like the system's own. */
function carbonOf({ resolved, plant }: Build, salinity: number): number {
  const { temperature, chemistry } = resolved;
  const above = isSalt(plant.chemistry) ? nbsAboveTotal(temperature, salinity) : 0;
  return carbonAt(constantsAt(plant.chemistry, temperature, salinity), chemistry.alkalinity, chemistry.ph - above);
}

/** Untreated mains water that runs into tanks by hoses, with the nodes it runs into. */
export function hosesOf(build: Build): { node: number; water: MakeUp }[] {
  const { upset, places, resolved, facility } = build;
  const oxygen = oxygenSaturation(resolved.room.temperatureC[0] ?? 20, 0, resolved.pressureAtm);
  const temperature = facility.site.mains?.temperatureC?.value ?? null;
  return [...upset.hoses].flatMap(([tank, flow]) => {
    const node = places.node(tank);
    const water = { ...BARE_WATER, flow, oxygen, temperature, oxidant: resolved.chemistry.mainsOxidant };
    return node < 0 ? [] : [{ node, water }];
  });
}

const BARE_WATER = { reservoir: -1, mains: false, amiss: true, siphons: true, salt: 0, alkalinity: 0, carbon: 0 };

/** What a device does to what is dissolved. @param left as above */
export function chemistryOf(
  build: Build,
  resolved: ResolvedDevice,
  left: number,
): Pick<Device, 'nitrifying' | 'carbon' | 'oxidant' | 'removes'> {
  const { equipment, oxidant, carbon, removes } = resolved;
  return {
    nitrifying: nitrifyingOf(build, resolved, left),
    carbon: carbon * left,
    oxidant: equipment.type === 'ozone' ? { rate: oxidant * left, amiss: amiss(build, equipment) } : null,
    removes: removes * left,
  };
}

/** Bacteria of a filter: those it is said to have or, where of no filter that is known, an equal part of those the system needs. */
function nitrifyingOf(build: Build, { equipment, nitrifies }: ResolvedDevice, left: number): Device['nitrifying'] {
  if (equipment.type !== 'filter') return null;
  const { chemistry } = build.resolved;
  const filters = build.resolved.devices.filter((d) => d.equipment.type === 'filter');
  const known = filters.some((d) => d.nitrifies !== null);
  const rate = known ? (nitrifies ?? 0) : (chemistry.nitrifying * (1 - chemistry.surfacesShare)) / filters.length;
  const health = build.upset.health.get(equipment.key) ?? 'ok';
  const alive = health === 'ok' || health === 'stuck-on';
  const passive = equipment.flowLPerH === undefined && equipment.ratedW === undefined;
  return { rate: passive && !alive ? 0 : rate * left, passive };
}

/** Bacteria outside any equipment: on the tanks' own surfaces, and where there is no filter, in the sump or beside those. */
export function bacteriaOf(build: Build): { node: number; rate: number; needsReturn: boolean }[] {
  const { resolved, plant, tanks } = build;
  const { nitrifying, surfacesShare, excretion } = resolved.chemistry;
  const filters = resolved.devices.some((d) => d.equipment.type === 'filter');
  const rest = filters ? 0 : 1 - surfacesShare;
  const onWalls = surfacesShare + (plant.hub < 0 ? rest : 0);
  const whole = [...excretion.values()].reduce((sum, n) => sum + n, 0);
  const walls = tanks.map((t, node) => ({
    node,
    rate: whole > 0 ? (nitrifying * onWalls * (excretion.get(t.tank.key) ?? 0)) / whole : 0,
    needsReturn: false,
  }));
  const inSump = plant.hub < 0 ? [] : [{ node: plant.hub, rate: nitrifying * rest, needsReturn: true }];
  return [...walls, ...inSump].filter((b) => b.rate > 0);
}
