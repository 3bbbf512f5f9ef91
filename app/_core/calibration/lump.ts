import type { ResolvedDevice, ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import { airAt, roomAir, stillAir } from '../simulate/air';
import { density } from '../water/density';
import { heatCapacity } from '../water/heat-capacity';
import { salinityVapourFactor } from '../water/salinity-vapour-factor';
import type { Lump } from './cooling-curve';
import type { Shift } from './held';
import type { Span } from './stretch';
import { meanWatts, type Watts } from './switched';

/** The clock on the wall of the site: s since local midnight. */
export type ClockS = (atMs: number) => number;

const HOUR_S = 3600;

/**
 * The tanks whose water mixes with that of a tank: all but reservoirs where a return runs between them, else the tank alone.
 *
 * @param key   of the tank that the probe sits in
 */
export function mixedWith({ tanks, devices }: ResolvedSystem, key: string): ResolvedTank[] {
  const isRound =
    tanks.some(({ tank }) => tank.role === 'sump') &&
    devices.some(({ equipment, flow }) => equipment.type === 'return-pump' && flow > 0);
  return tanks.filter(({ tank }) => (isRound ? tank.role !== 'reservoir' : tank.key === key));
}

/**
 * The water that a probe stands for, with its surroundings as described.
 *
 * @param tanks   those that mix
 * @param watts   what was read of the power of equipment, by key; what was not read runs as its plan says
 * @param span    when, for the power that was read
 * @param shift   by how much what is held is off
 */
export function lumpOf(
  resolved: ResolvedSystem,
  tanks: readonly ResolvedTank[],
  clockS: ClockS,
  watts: ReadonlyMap<string, readonly Watts[]>,
  span: Span,
  shift: Shift,
): Lump {
  const { salinity, temperature, room } = resolved;
  const sum = (of: (tank: ResolvedTank) => number) => tanks.reduce((total, tank) => total + of(tank), 0);
  const volume = sum((tank) => tank.volume) * shift.volume;
  const air = roomAir(
    room.temperatureC.map((t) => t + shift.roomC),
    room.humidityPct.map((pct) => Math.min(100, Math.max(0, pct + shift.humidityPct))),
  );
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  const devices = resolved.devices.filter(({ equipment }) => keys.has(equipment.tank));
  const known = devices.map((device) => meanWatts(watts.get(device.equipment.key) ?? [], span));
  return {
    heatCapacity: volume * density(temperature, salinity) * heatCapacity(temperature, salinity),
    evaporation: sum((tank) => tank.evaporation) * shift.evaporation,
    vapourFactor: salinityVapourFactor(salinity),
    powerAt: (atMs) => shift.power * sumOf(devices, (device, i) => heatOf(device, known[i] ?? null, clockS(atMs))),
    roomAt: (atMs) => {
      const at = clockS(atMs);
      const still = stillAir();
      airAt(air, at, Math.min(23, Math.floor(at / HOUR_S)), still);
      return still;
    },
  };
}

/** W/K through walls, bases and surfaces of some tanks. */
export function lossInUse(tanks: readonly ResolvedTank[]): number {
  return sumOf(tanks, ({ loss }) => loss);
}

function sumOf<T>(list: readonly T[], of: (one: T, at: number) => number): number {
  return list.reduce((total, one, at) => total + of(one, at), 0);
}

/** W that a piece of equipment gives to the water, heaters and chillers apart. */
function heatOf({ equipment, watts, heatShare }: ResolvedDevice, read: number | null, atS: number): number {
  if (equipment.type === 'heater' || equipment.type === 'chiller') return 0;
  if (read !== null) return read * heatShare;
  const { regulation } = equipment.plan;
  const runs = regulation.kind === 'always' || (regulation.kind === 'hours' && isWithin(regulation, atS));
  return runs ? watts * heatShare : 0;
}

/** Whether a time of day lies between two others, which may lie around midnight. */
export function isWithin({ from, to }: { from: string; to: string }, atS: number): boolean {
  const [a, b] = [secondsOf(from), secondsOf(to)];
  return a < b ? atS >= a && atS < b : atS >= a || atS < b;
}

function secondsOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * HOUR_S + minutes * 60;
}
