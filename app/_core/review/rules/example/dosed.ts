import type { Equipment, Sensor } from '../../../facility/system';
import type { Interlock, Plan } from '../../../plans/plan';
import { type Change, withSystem } from './example';
import { entered } from './proven';

const WITHOUT_RETURN: Interlock = {
  when: { kind: 'return-lost', provedBy: 'flow' },
  then: 'off',
  by: 'controller',
  safeguard: 'top-off-interlock',
};
const BY_DAY: Plan = {
  cutOuts: [],
  interlocks: [WITHOUT_RETURN],
  states: [{ state: 'water-change', then: 'off', by: 'controller' }],
  regulation: { kind: 'hours', from: '09:00', to: '17:00', by: 'controller' },
};

function more(type: Equipment['type'], name: string, given: Partial<Equipment> = {}): Equipment {
  return { key: type, name, type, tank: 'sump', circuit: 'heat', ratedW: entered(10), plan: BY_DAY, ...given };
}

function stoppedBy(...whens: Interlock['when'][]): Plan {
  const lines = whens.map((when): Interlock => ({ ...WITHOUT_RETURN, when }));
  return { ...BY_DAY, interlocks: [WITHOUT_RETURN, ...lines] };
}

/** Each with the plan it needs; rules about them put them in. */
export const UV: Equipment = more('uv', 'UV');
export const FEEDER: Equipment = more('feeder', 'Feeder', { hopperG: entered(20) });
export const SUPPLY: Equipment = more('supply', 'Supply', { source: 'mains', flowLPerH: entered(20) });
export const CO2: Equipment = more('co2', 'Carbon dioxide', {
  co2GPerH: entered(1),
  plan: stoppedBy({ kind: 'sensor', sensor: 'ph', below: 6.5 }),
});
export const OZONE: Equipment = more('ozone', 'Ozone', {
  ozoneGPerH: entered(0.05),
  plan: stoppedBy({ kind: 'sensor', sensor: 'redox-1', above: 350 }, { kind: 'sensor', sensor: 'redox-2', above: 350 }),
});
/** A return pump that nobody has put on the list of alarms. */
export const SECOND_RETURN: Equipment = more('return-pump', 'Return pump 2', {
  key: 'return-2',
  ratedW: entered(40),
  wattsRange: { minW: 34, maxW: 46 },
  flowLPerH: entered(3000),
  plan: {
    cutOuts: [],
    interlocks: [],
    states: [{ state: 'feeding', then: 'off', by: 'controller' }],
    regulation: { kind: 'always', by: 'hard-wired' },
  },
});

/** One pH probe in the sump with a low alarm. */
export const PH_PROBE: Change = withProbes('ph', ['ph'], 'ph-low', { below: 6.6 });
/** Two redox probes, one with a high alarm. */
export const REDOX_PROBES: Change = withProbes('redox', ['redox-1', 'redox-2'], 'redox-high', { above: 340 });

function withProbes(
  quantity: Sensor['quantity'],
  keys: readonly [string, ...string[]],
  alarm: string,
  bound: { above: number } | { below: number },
): Change {
  return withSystem(({ sensors, alarms }) => ({
    sensors: [
      ...sensors,
      ...keys.map((key) => ({
        key,
        name: key,
        quantity,
        tank: 'sump',
        gateway: 'gateway',
        calibrationDue: '2026-12-01',
      })),
    ],
    alarms: [
      ...alarms,
      {
        key: alarm,
        name: alarm,
        on: { kind: 'sensor', sensor: keys[0], ...bound },
        delayS: 300,
        deadBand: 0,
        whatToDo: 'Stop the dosing, measure by hand, and follow the card.',
        answeredBy: 'rota',
        safeguard: 'alarm-path',
      },
    ],
  }));
}
