import type { AlarmDefinition, AlarmSource } from '../../../alarms/definition';
import type { Sensor, SensorQuantity, System } from '../../../facility/system';
import { EQUIPMENT } from './equipment';
import { PAPER_KINDS } from '../../../facility/paper';
import { entered, proven } from './proven';

function sensor(
  key: string,
  name: string,
  quantity: SensorQuantity,
  place: Pick<Sensor, 'tank' | 'equipment'>,
): Sensor {
  return { key, name, quantity, ...place, gateway: 'gateway', calibrationDue: '2026-12-01' };
}

function alarm(key: string, name: string, on: AlarmSource, deadBand: number): AlarmDefinition {
  const whatToDo = 'Go to the system, look at what the alarm watches, and follow its card.';
  return { key, name, on, delayS: 300, deadBand, whatToDo, answeredBy: 'rota', safeguard: 'alarm-path' };
}

const ALARMS: AlarmDefinition[] = [
  alarm('too-warm', 'Too warm', { kind: 'sensor', sensor: 'display-temperature', above: 27 }, 0.3),
  alarm('too-cold', 'Too cold', { kind: 'sensor', sensor: 'display-temperature', below: 24 }, 0.3),
  alarm('oxygen-low', 'Oxygen low', { kind: 'sensor', sensor: 'oxygen', below: 5 }, 0.3),
  alarm('salinity-low', 'Salinity low', { kind: 'sensor', sensor: 'salinity', below: 33 }, 0.3),
  alarm('return-lost', 'Return flow lost', { kind: 'sensor', sensor: 'flow', below: 1000 }, 200),
  {
    ...alarm('sump-low', 'Sump level low', { kind: 'sensor', sensor: 'sump-level', below: -40 }, 5),
    suppressedIn: ['water-change'],
  },
  alarm('floor-wet', 'Water on the floor', { kind: 'sensor', sensor: 'floor', above: 0.5 }, 0),
  alarm('return-watts', 'Return pump watts', { kind: 'watts', equipment: 'return' }, 0),
  alarm('gateway-silent', 'Gateway silent', { kind: 'silent', gateway: 'gateway' }, 0),
];

/**
 * A well protected reef: 432 L of display over a sump of 120 L, with thirty fish. It passes every rule as it stands.
 */
export const SYSTEM: System = {
  key: 'reef',
  name: 'Reef',
  kind: 'reef',
  room: 'gallery',
  salinity: entered(35),
  tanks: [
    {
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
    },
    {
      key: 'sump',
      name: 'Sump',
      role: 'sump',
      volumeL: entered(120),
      surfaceM2: entered(0.4),
      lossWPerK: entered(4),
      cover: 'open',
      rimMm: entered(150),
      pumpDryMm: entered(100),
    },
    {
      key: 'reservoir',
      name: 'Reservoir',
      role: 'reservoir',
      volumeL: entered(25),
      surfaceM2: entered(0.08),
      lossWPerK: entered(1),
      cover: 'lidded',
    },
  ],
  equipment: EQUIPMENT,
  sensors: [
    sensor('sump-temperature', 'Sump temperature', 'temperature', { tank: 'sump' }),
    sensor('display-temperature', 'Display temperature', 'temperature', { tank: 'display' }),
    sensor('sump-level', 'Sump level', 'level', { tank: 'sump' }),
    sensor('flow', 'Return flow', 'flow', { tank: 'display' }),
    sensor('oxygen', 'Oxygen', 'oxygen', { tank: 'display' }),
    sensor('salinity', 'Salinity', 'salinity', { tank: 'sump' }),
    sensor('floor', 'Floor', 'leak', {}),
    sensor('return-watts', 'Watts of the return pump', 'watts', { equipment: 'return' }),
  ],
  stock: [{ key: 'fish', group: 'Reef fish', tank: 'display', count: 30, eachG: entered(20) }],
  safeguards: [
    proven('heater-1-cut-out', 'Cut-out of heater 1', 'cut-out'),
    proven('heater-2-cut-out', 'Cut-out of heater 2', 'cut-out'),
    proven('heater-interlock', 'Heaters off without return', 'interlock'),
    proven('skimmer-interlock', 'Skimmer off without return', 'interlock'),
    proven('top-off-interlock', 'Top-off off without return', 'interlock'),
    proven('run-limit', 'Run limit of the top-off', 'run-limit'),
    proven('siphon-break', 'Siphon break', 'siphon-break'),
    proven('feeding-end', 'Timer that ends the feeding pause', 'state-end'),
    proven('alarm-path', 'Way of the alarms to a person', 'alarm'),
  ],
  alarms: ALARMS,
  states: [
    { name: 'feeding', lastsMin: entered(10), endsBy: 'controller', endSafeguard: 'feeding-end' },
    { name: 'water-change', lastsMin: entered(60), endsBy: 'person', drawnL: entered(50) },
  ],
  papers: PAPER_KINDS.map((kind) => ({ key: kind, kind, on: '2026-05-01' })),
};
