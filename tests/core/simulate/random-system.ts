import type { Facility } from '#core/facility/facility';
import type { System, Tank } from '#core/facility/system';
import {
  airBlower,
  chiller,
  circulationPump,
  cutOut,
  drainValve,
  heater,
  offWithoutReturn,
  plan,
  returnPump,
  skimmer,
  thermostat,
  topOff,
} from '../../_support/build-equipment';
import { facility, room } from '../../_support/build-facility';
import { reservoir, sensor, stock, sump, system, tank } from '../../_support/build-system';

/** Repeatable numbers from 0 to 1 (the generator of Park and Miller, 1988). */
export function dice(seed: number): () => number {
  let state = (seed * 48_271 + 1) % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** A plausible system with one to four tanks, with or without a sump, and everything of random size. */
export function randomSite(seed: number): Facility {
  const next = dice(seed);
  const base = facility();
  const swing = next() < 0.5;
  const mean = 16 + 10 * next();
  const temperatureC = Array.from({ length: 24 }, (_, h) => mean + 3 * Math.sin((2 * Math.PI * (h - 9)) / 24));
  return {
    ...base,
    rooms: [
      swing
        ? { ...room(), temperatureC, humidityPct: { value: 30 + 50 * next(), origin: 'entered' } }
        : room({ temperatureC: mean, humidityPct: 30 + 50 * next() }),
    ],
    systems: [next() < 0.8 ? withSump(next) : alone(next)],
  };
}

function fedTank(litres: number, i: number, next: () => number): Tank {
  return tank({
    key: `t${i}`,
    name: `T${i}`,
    volumeL: litres,
    surfaceM2: litres / (300 + 300 * next()),
    lossWPerK: litres * (0.01 + 0.05 * next()),
    drainDownMm: 8 + 20 * next(),
    outletMm: 50,
    siphonBreakMm: undefined,
    siphonSafeguard: undefined,
    returnShare: 0.2 + next(),
    cover: next() < 0.5 ? 'open' : 'lidded',
  });
}

function withSump(next: () => number): System {
  const count = 1 + Math.floor(4 * next());
  const litres = Array.from({ length: count }, () => 60 + 900 * next() * next());
  const whole = litres.reduce((sum, v) => sum + v, 0);
  const low = 23 + 3 * next();
  const band = { lowC: low, highC: low + 0.2 + 0.6 * next() };
  const keys = litres.map((_, i) => `t${i}`);
  const watts = whole * (0.2 + 0.4 * next());
  return system({
    salinity: next() < 0.7 ? 33 + 3 * next() : 0,
    tanks: [
      ...litres.map((v, i) => fedTank(v, i, next)),
      sump({ volumeL: whole * (0.15 + 0.2 * next()), surfaceM2: whole * 0.0008 }),
      reservoir({ volumeL: whole * 0.05 }),
    ],
    equipment: [
      heater({
        ratedW: watts,
        plan: plan({
          cutOuts: next() < 0.5 ? [cutOut({ above: low + 2 })] : [],
          interlocks: next() < 0.5 ? [offWithoutReturn({ by: 'hard-wired' })] : [],
          regulation: thermostat({ ...band, minOnS: next() < 0.3 ? 600 : undefined }),
        }),
      }),
      chiller({
        coolingW: watts,
        plan: plan({ regulation: thermostat({ lowC: band.highC + 0.5, highC: band.highC + 1 }) }),
      }),
      returnPump({ flowLPerH: whole * (2 + 6 * next()), ratedW: whole * 0.05 }),
      circulationPump({ tank: 't0', gasTransferLPerH: undefined }),
      skimmer({ gasTransferLPerH: undefined }),
      airBlower({ tank: 't0', stones: keys.map((key) => ({ tank: key, count: 1 })), gasTransferLPerH: undefined }),
      topOff({ flowLPerH: 10 + 100 * next() }),
      drainValve(),
    ],
    sensors: [sensor(), ...system().sensors.filter((s) => s.key === 'sump-level')],
    stock: keys.map((key, i) =>
      stock({ key: `fish-${i}`, tank: key, count: 1 + Math.floor(15 * next()), eachG: 5 + 40 * next() }),
    ),
    alarms: [],
    states: [],
  });
}

function alone(next: () => number): System {
  const v = 40 + 300 * next();
  const low = 23 + 3 * next();
  return system({
    salinity: 0,
    kind: 'tropical-fresh',
    tanks: [
      tank({
        volumeL: v,
        surfaceM2: v / 400,
        lossWPerK: v * 0.04,
        siphonBreakMm: undefined,
        siphonSafeguard: undefined,
      }),
    ],
    equipment: [
      heater({
        tank: 'display',
        ratedW: v * (0.4 + next()),
        plan: plan({ regulation: thermostat({ sensors: ['display-temperature'], lowC: low, highC: low + 0.5 }) }),
      }),
      airBlower(),
      drainValve({ tank: 'display' }),
    ],
    sensors: [sensor({ key: 'display-temperature', tank: 'display' })],
    stock: [stock({ count: 5 + Math.floor(30 * next()) })],
    alarms: [],
    states: [],
  });
}
