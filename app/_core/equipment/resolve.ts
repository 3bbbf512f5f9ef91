import type { ByHour } from '../facility/figure';
import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { atmospheresFromAltitude } from '../water/pressure-from-altitude';
import { respirationAtReference, respirationFactor } from '../water/respiration';
import { DEFAULTS } from './defaults';
import { resolveChemistry } from './resolve-chemistry';
import { resolveDevice } from './resolve-device';
import { resolveTank } from './resolve-tank';
import type { ResolvedRoom, ResolvedSystem, ResolvedTank } from './resolved';
import { type BadEnd, EITHER, HEAT, LESS, MORE, type Side, take, type Taker, taker } from './take';

/**
 * One system in numbers.
 * @param side which end of every plausible range to take
 * @param only path of the single figure that takes its bad end; null for all
 * @returns numbers in SI units, what was filled in, and what nobody knows (`missing` not empty: do not simulate)
 */
export function resolveSystem(
  facility: Facility,
  system: System,
  side: Side,
  only: string | null = null,
): ResolvedSystem {
  const t = taker(side, only);
  const tanks = system.tanks.map((tank) => resolveTank(t, system, tank));
  scaleShares(tanks);
  const temperature = keptAt(system);
  const filled = tanks.filter((x) => x.tank.role !== 'reservoir');
  const salinity = take(t, `systems/${system.key}/salinity`, 'salinity', system.salinity, EITHER);
  const devices = system.equipment.map((equipment) => resolveDevice(t, facility, system, equipment, filled, salinity));
  const chemistry = resolveChemistry(t, facility, system, {
    salinity,
    temperature,
    devices,
    mass: massByTank(t, system),
    volumes: new Map(filled.map((x) => [x.tank.key, x.volume])),
  });
  return {
    side,
    only,
    tanks,
    devices,
    room: resolveRoom(t, facility, system),
    salinity,
    chemistry,
    lags: lagsOf(t, system),
    temperature,
    pressureAtm: pressureAt(t, facility),
    fallShare: fallShareOf(t, system),
    respiration: respirationByTank(t, system, temperature),
    bacteriaShare: take(
      t,
      `systems/${system.key}/bacteriaShare`,
      "bacteria's oxygen use",
      undefined,
      MORE,
      DEFAULTS.bacteriaShare,
    ),
    notes: t.notes,
    missing: t.missing,
  };
}

/** Part of the return's flow that comes down saturated. */
function fallShareOf(t: Taker, { key }: System): number {
  const name = 'oxygen gained where water falls into the sump';
  return take(t, `systems/${key}/fallShare`, name, undefined, LESS, DEFAULTS.fallShare);
}

/** Air pressure at the site's height, atm. */
function pressureAt(t: Taker, { site }: Facility): number {
  return atmospheresFromAltitude(
    take(t, 'site/altitudeM', 'height above the sea', site.altitudeM, MORE, DEFAULTS.altitudeM),
  );
}

/** kg of animals by tank. */
function massByTank(t: Taker, system: System): Map<string, number> {
  const quiet = taker(t.side, t.only);
  const mass = new Map<string, number>();
  for (const stock of system.stock) {
    const path = `systems/${system.key}/stock/${stock.key}/eachG`;
    const each = take(quiet, path, `mass of one of ${stock.group}`, stock.eachG, MORE) / 1000;
    mass.set(stock.tank, (mass.get(stock.tank) ?? 0) + each * stock.count);
  }
  return mass;
}

function lagsOf(t: Taker, system: System): Map<string, number> {
  return new Map(
    system.sensors.flatMap(({ key, name, lagS }) => {
      const lag = lagS ? take(t, `systems/${system.key}/sensors/${key}/lagS`, `lag of ${name}`, lagS, MORE) : 0;
      return lag > 0 ? [[key, lag] as const] : [];
    }),
  );
}

function scaleShares(tanks: ResolvedTank[]): void {
  const sum = tanks.reduce((total, tank) => total + tank.share, 0);
  if (sum > 0) for (const tank of tanks) tank.share /= sum;
}

/**
 * Mean of the middles of all thermostats' bands, the heaters' where there are any; else 25 °C (12 °C for cold systems). Only
 * where a run starts looking, whatever the order in which the equipment is listed.
 */
function keptAt(system: System): number {
  const regulated = system.equipment.flatMap(({ type, plan: { regulation } }) =>
    regulation.kind === 'thermostat' ? [{ type, middle: (regulation.lowC + regulation.highC) / 2 }] : [],
  );
  const heaters = regulated.filter(({ type }) => type === 'heater');
  const middles = (heaters.length > 0 ? heaters : regulated).map(({ middle }) => middle).sort((a, b) => a - b);
  if (middles.length === 0) return system.kind === 'cold-marine' ? 12 : 25;
  return middles.reduce((sum, middle) => sum + middle, 0) / middles.length;
}

function resolveRoom(t: Taker, facility: Facility, system: System): ResolvedRoom {
  const room = facility.rooms.find((r) => r.key === system.room);
  return {
    temperatureC: byHour(
      t,
      `rooms/${system.room}/temperatureC`,
      `air temperature of ${room?.name ?? system.room}`,
      room?.temperatureC,
      HEAT,
    ),
    humidityPct: byHour(
      t,
      `rooms/${system.room}/humidityPct`,
      `humidity of ${room?.name ?? system.room}`,
      room?.humidityPct,
      HEAT,
    ),
  };
}

function byHour(t: Taker, path: string, name: string, figure: ByHour | undefined, bad: BadEnd): number[] {
  if (Array.isArray(figure)) return figure;
  const value = take(t, path, name, figure, bad);
  return new Array<number>(24).fill(value);
}

function respirationByTank(t: Taker, system: System, temperature: number): Map<string, number> {
  const activity = take(
    t,
    `systems/${system.key}/activity`,
    'how lively the animals are',
    undefined,
    MORE,
    DEFAULTS.activityFactor,
  );
  const byTank = new Map<string, number>();
  for (const stock of system.stock) {
    const path = `systems/${system.key}/stock/${stock.key}`;
    const each = take(t, `${path}/eachG`, `mass of one of ${stock.group}`, stock.eachG, MORE) / 1000;
    const resting = respirationAtReference(each) * stock.count * activity;
    const measured = stock.oxygenMgPerKgH;
    const use = measured
      ? (take(t, `${path}/oxygenMgPerKgH`, `oxygen use of ${stock.group}`, measured, MORE) * each * stock.count) /
        3.6e6 /
        respirationFactor(temperature)
      : resting;
    byTank.set(stock.tank, (byTank.get(stock.tank) ?? 0) + use);
  }
  return byTank;
}
