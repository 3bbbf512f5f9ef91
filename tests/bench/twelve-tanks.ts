import type { Facility } from '#core/facility/facility';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { Equipment, Sensor, System, Tank } from '#core/facility/system';
import {
  airBlower,
  chiller,
  circulationPump,
  drainValve,
  filter,
  heater,
  plan,
  returnPump,
  skimmer,
  thermostat,
  topOff,
} from '../_support/build-equipment';
import { circuit, facility, room } from '../_support/build-facility';
import { alarm, reservoir, safeguard, sensor, stock, sump, system, tank } from '../_support/build-system';

const NUMBERS = Array.from({ length: 12 }, (_, i) => i + 1);

function holding(n: number): Tank {
  const litres = 80 + 15 * n;
  return tank({
    key: `tank-${n}`,
    name: `Tank ${n}`,
    role: 'holding',
    volumeL: litres,
    surfaceM2: litres / 500,
    lossWPerK: litres * 0.03,
    drainDownMm: 15,
    outletMm: 40,
    siphonBreakMm: 20,
    returnShare: litres,
  });
}

const CIRCUITS = ['heat', 'pumps'];

function equipment(): Equipment[] {
  return [
    ...[1, 2].map((n) =>
      heater({
        key: `heater-${n}`,
        name: `Heater ${n}`,
        ratedW: 600,
        circuit: CIRCUITS[n - 1],
        plan: plan({ ...heater().plan, regulation: thermostat({ lowC: 24.7 + 0.1 * n, highC: 25.2 + 0.1 * n }) }),
      }),
    ),
    chiller({ key: 'chiller', name: 'Chiller', coolingW: 1200, ratedW: 500 }),
    ...[1, 2].map((n) =>
      returnPump({ key: `return-${n}`, name: `Return ${n}`, flowLPerH: 6000, ratedW: 90, circuit: CIRCUITS[n - 1] }),
    ),
    skimmer({ gasTransferLPerH: 2500, circuit: 'pumps' }),
    airBlower({ circuit: 'air', tank: 'tank-1', stones: NUMBERS.map((n) => ({ tank: `tank-${n}`, count: 1 })) }),
    ...[3, 9].map((n) =>
      circulationPump({ key: `stream-${n}`, name: `Stream ${n}`, tank: `tank-${n}`, circuit: 'pumps' }),
    ),
    filter({ key: 'filter', name: 'Filter', tank: 'sump', circuit: 'pumps' }),
    drainValve({ key: 'drain', name: 'Drain valve', tank: 'sump' }),
    topOff({ flowLPerH: 90 }),
  ];
}

function sensors(): Sensor[] {
  return [
    ...system().sensors.filter((s) => s.tank !== 'display' && s.equipment !== 'return-pump'),
    ...NUMBERS.map((n) => sensor({ key: `temperature-${n}`, name: `Temperature ${n}`, tank: `tank-${n}` })),
    sensor({ key: 'oxygen-6', name: 'Oxygen 6', quantity: 'oxygen', tank: 'tank-6' }),
    sensor({ key: 'return-flow', name: 'Return flow', quantity: 'flow', tank: 'tank-1' }),
  ];
}

function alarms(): AlarmDefinition[] {
  return [
    ...NUMBERS.map((n) =>
      alarm({
        key: `warm-${n}`,
        name: `Tank ${n} too warm`,
        on: { kind: 'sensor', sensor: `temperature-${n}`, above: 27 },
      }),
    ),
    ...NUMBERS.map((n) =>
      alarm({
        key: `cold-${n}`,
        name: `Tank ${n} too cold`,
        on: { kind: 'sensor', sensor: `temperature-${n}`, below: 23 },
      }),
    ),
    alarm({ key: 'oxygen-low', name: 'Oxygen low', on: { kind: 'sensor', sensor: 'oxygen-6', below: 5 } }),
    alarm({
      key: 'return-lost',
      name: 'Return lost',
      on: { kind: 'sensor', sensor: 'return-flow', below: 3000 },
      delayS: 300,
    }),
  ];
}

/** Twelve holding tanks of different sizes on one sump, with everything in twos that people put in twos. */
export function twelveTanks(): System {
  return system({
    key: 'twelve',
    name: 'Twelve tanks',
    kind: 'fish-only-marine',
    tanks: [
      ...NUMBERS.map(holding),
      sump({ volumeL: 500, surfaceM2: 1.2, rimMm: 200, lossWPerK: 12 }),
      reservoir({ volumeL: 80 }),
    ],
    equipment: equipment(),
    sensors: sensors(),
    stock: NUMBERS.map((n) =>
      stock({ key: `fish-${n}`, group: `Fish ${n}`, tank: `tank-${n}`, count: 6 + n, eachG: 15 }),
    ),
    alarms: alarms(),
    safeguards: [...system().safeguards, safeguard({ key: 'chiller-path', kind: 'alarm' })],
    states: [
      {
        name: 'feeding',
        lastsMin: { value: 15, origin: 'entered' },
        endsBy: 'controller',
        endSafeguard: 'feeding-end',
      },
    ],
  });
}

/** The site of the twelve tanks; `byHour` lets the room swing by day, which multiplies the onset hours that differ. */
export function twelveTankSite(byHour = false): Facility {
  const swing = Array.from({ length: 24 }, (_, h) => 21 + 2 * Math.sin((2 * Math.PI * (h - 9)) / 24));
  const base = facility();
  return {
    ...base,
    rooms: [byHour ? { ...room(), temperatureC: swing } : room()],
    circuits: [...base.circuits, circuit({ key: 'spare', name: 'Spare', rcd: 'rcd-1' })],
    systems: [twelveTanks()],
  };
}
