import type { AlarmDefinition } from '#core/alarms/definition';
import type { Stock } from '#core/facility/stock';
import type { Sensor, System, Tank } from '#core/facility/system';
import type { Safeguard } from '#core/plans/safeguard';
import { airBlower, circulationPump, cutOut, heater, plan, returnPump, skimmer, topOff } from './build-equipment';
import { entered, fill, type Given } from './given';

/** The day on which the base facility's safeguards were tested: within a year of `REVIEWED_ON`. */
const TESTED_ON = '2026-03-02';
/** The day tests that need "today" are judged on; a Monday. */
export const REVIEWED_ON = '2026-06-01';

/** `display`: 432 L, 1.2 × 0.6 m, lidded. */
export function tank(given: Given<Tank> = {}): Tank {
  const base: Tank = {
    key: 'display',
    name: 'Display',
    role: 'display',
    volumeL: entered(432),
    surfaceM2: entered(0.72),
    lossWPerK: entered(10),
    cover: 'lidded',
    rimMm: entered(40),
    drainDownMm: entered(12),
    outletMm: entered(60),
    siphonBreakMm: entered(15),
    siphonSafeguard: 'siphon-break',
    returnShare: entered(1),
  };
  return fill(base, given);
}

/** `sump`: 120 L with 150 mm above the running level. */
export function sump(given: Given<Tank> = {}): Tank {
  const base: Tank = {
    key: 'sump',
    name: 'Sump',
    role: 'sump',
    volumeL: entered(120),
    surfaceM2: entered(0.4),
    lossWPerK: entered(4),
    cover: 'open',
    rimMm: entered(150),
    pumpDryMm: entered(100),
  };
  return fill(base, given);
}

/** `reservoir`: 25 L of fresh water for the top-off. */
export function reservoir(given: Given<Tank> = {}): Tank {
  const base: Tank = {
    key: 'reservoir',
    name: 'Top-off reservoir',
    role: 'reservoir',
    volumeL: entered(25),
    surfaceM2: entered(0.08),
    lossWPerK: entered(1),
    cover: 'lidded',
  };
  return fill(base, given);
}

/** `sump-temperature`, read through `gateway-1`. */
export function sensor(given: Given<Sensor> = {}): Sensor {
  const base: Sensor = {
    key: 'sump-temperature',
    name: 'Sump temperature',
    quantity: 'temperature',
    tank: 'sump',
    gateway: 'gateway-1',
    accuracy: entered(0.2),
    calibrationDue: '2026-12-01',
  };
  return fill(base, given);
}

/** `fish`: thirty fish of 20 g in the display. */
export function stock(given: Given<Stock> = {}): Stock {
  const base: Stock = {
    key: 'fish',
    group: 'Reef fish',
    tank: 'display',
    count: 30,
    eachG: entered(20),
  };
  return fill(base, given);
}

/** A safeguard tested on `TESTED_ON` that worked; the name follows the key. */
export function safeguard(given: Given<Safeguard> & { key: string }): Safeguard {
  const base: Safeguard = {
    key: given.key,
    name: given.key.replaceAll('-', ' '),
    kind: 'cut-out',
    testEveryDays: 180,
    tests: [{ on: TESTED_ON, result: 'worked', by: 'Robin' }],
  };
  return fill(base, given);
}

/** `too-warm`: above 26.5 °C at `display-temperature` for 10 minutes, answered by the rota. */
export function alarm(given: Given<AlarmDefinition> = {}): AlarmDefinition {
  const base: AlarmDefinition = {
    key: 'too-warm',
    name: 'Too warm',
    on: { kind: 'sensor', sensor: 'display-temperature', above: 26.5 },
    delayS: 600,
    deadBand: 0.3,
    answeredBy: 'rota',
    safeguard: 'alarm-path',
  };
  return fill(base, given);
}

function sensors(): Sensor[] {
  return [
    sensor(),
    sensor({ key: 'display-temperature', name: 'Display temperature', tank: 'display' }),
    sensor({ key: 'sump-level', name: 'Sump level', quantity: 'level', accuracy: 2 }),
    sensor({ key: 'return-flow', name: 'Return flow', quantity: 'flow', tank: 'display', accuracy: 100 }),
    sensor({ key: 'display-oxygen', name: 'Display oxygen', quantity: 'oxygen', tank: 'display', accuracy: 0.3 }),
    sensor({ key: 'sump-salinity', name: 'Sump salinity', quantity: 'salinity', accuracy: 0.5 }),
    sensor({ key: 'floor', name: 'Floor', quantity: 'leak', tank: undefined, accuracy: undefined }),
    watts('return-pump'),
    watts('heater-1'),
    watts('heater-2'),
  ];
}

function watts(equipment: string): Sensor {
  const key = `${equipment}-watts`;
  return sensor({ key, name: `Watts of ${equipment}`, quantity: 'watts', tank: undefined, equipment, accuracy: 2 });
}

function alarms(): AlarmDefinition[] {
  return [
    alarm(),
    alarm({ key: 'too-cold', name: 'Too cold', on: { kind: 'sensor', sensor: 'display-temperature', below: 23.5 } }),
    alarm({
      key: 'return-lost',
      name: 'Return flow lost',
      on: { kind: 'sensor', sensor: 'return-flow', below: 1000 },
      delayS: 300,
      deadBand: 200,
    }),
    alarm({ key: 'oxygen-low', name: 'Oxygen low', on: { kind: 'sensor', sensor: 'display-oxygen', below: 5 } }),
    alarm({
      key: 'sump-high',
      name: 'Sump level high',
      on: { kind: 'sensor', sensor: 'sump-level', above: 40 },
      deadBand: 5,
    }),
    alarm({
      key: 'sump-low',
      name: 'Sump level low',
      on: { kind: 'sensor', sensor: 'sump-level', below: -40 },
      deadBand: 5,
    }),
    alarm({
      key: 'floor-wet',
      name: 'Water on the floor',
      on: { kind: 'sensor', sensor: 'floor', above: 0.5 },
      deadBand: 0,
    }),
    alarm({
      key: 'return-watts',
      name: 'Return pump watts',
      on: { kind: 'watts', equipment: 'return-pump' },
      deadBand: 0,
    }),
    alarm({ key: 'gateway-silent', name: 'Gateway silent', on: { kind: 'silent', gateway: 'gateway-1' }, deadBand: 0 }),
  ];
}

function safeguards(): Safeguard[] {
  return [
    safeguard({ key: 'heater-1-cut-out', name: 'Heater 1 high cut-out' }),
    safeguard({ key: 'heater-2-cut-out', name: 'Heater 2 high cut-out' }),
    safeguard({ key: 'heater-interlock', name: 'Heaters off without return', kind: 'interlock' }),
    safeguard({ key: 'skimmer-interlock', name: 'Skimmer off without return', kind: 'interlock' }),
    safeguard({ key: 'top-off-run-limit', name: 'Top-off run limit', kind: 'run-limit' }),
    safeguard({ key: 'siphon-break', name: 'Siphon break', kind: 'siphon-break' }),
    safeguard({ key: 'feeding-end', name: 'Feeding pause ends by a hard timer', kind: 'state-end' }),
    safeguard({ key: 'alarm-path', name: 'Alarms of this system reach a person', kind: 'alarm' }),
  ];
}

/** `reef-1`: a well protected reef of 432 L over a 120 L sump, two heaters, fed and watched. Valid as it stands. */
export function system(given: Given<System> = {}): System {
  const second = { key: 'heater-2', name: 'Heater 2' };
  const secondPlan = plan({ ...heater().plan, cutOuts: [cutOut({ safeguard: 'heater-2-cut-out' })] });
  const base: System = {
    key: 'reef-1',
    name: 'Reef 1',
    kind: 'reef',
    room: 'gallery',
    salinity: entered(35),
    feedGPerDay: entered(15),
    tanks: [tank(), sump(), reservoir()],
    equipment: [
      heater(),
      heater({ ...second, circuit: 'pumps', plan: secondPlan }),
      returnPump(),
      circulationPump(),
      skimmer(),
      topOff(),
      airBlower(),
    ],
    sensors: sensors(),
    stock: [stock()],
    safeguards: safeguards(),
    alarms: alarms(),
    states: [
      { name: 'feeding', lastsMin: entered(10), endsBy: 'controller', endSafeguard: 'feeding-end' },
      { name: 'water-change', lastsMin: entered(60), endsBy: 'person', drawnL: entered(50) },
    ],
  };
  return fill(base, given);
}
