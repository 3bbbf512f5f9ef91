import type { Equipment } from '../../../facility/system';
import type { Interlock, Plan, StateLine, Thermostat } from '../../../plans/plan';
import { entered } from './proven';

const DURING_FEEDING: StateLine = { state: 'feeding', then: 'off', by: 'controller' };
const DURING_CHANGE: StateLine = { state: 'water-change', then: 'off', by: 'controller' };

/** 77.5 to 78.5 °F, the one degree Fahrenheit of common practice: it must pass whatever is asked of dead bands. */
const BAND: Thermostat = {
  kind: 'thermostat',
  sensors: ['sump-temperature'],
  vote: 'single',
  lowC: 25.28,
  highC: 25.83,
  by: 'controller',
};

function withoutReturn(safeguard: string): Interlock {
  return { when: { kind: 'return-lost', provedBy: 'flow' }, then: 'off', by: 'controller', safeguard };
}

function heater(key: string, name: string, circuit: string): Equipment {
  return {
    key,
    name,
    type: 'heater',
    tank: 'sump',
    circuit,
    ratedW: entered(150),
    wattsRange: { minW: 130, maxW: 165 },
    plan: {
      cutOuts: [{ quantity: 'temperature', tank: 'sump', above: 27.5, reset: 'manual', safeguard: `${key}-cut-out` }],
      interlocks: [withoutReturn('heater-interlock')],
      lostSensing: { action: 'off', by: 'controller' },
      states: [DURING_CHANGE],
      regulation: BAND,
    },
  };
}

/** Runs all the time but in these states. */
function running(states: StateLine[], interlocks: Interlock[] = []): Plan {
  return { cutOuts: [], interlocks, states, regulation: { kind: 'always', by: 'hard-wired' } };
}

/** A chiller that fits the example: 400 W out of the sump, from 27.3 down to 27 °C. Rules about chillers put it in. */
export const CHILLER: Equipment = {
  key: 'chiller',
  name: 'Chiller',
  type: 'chiller',
  tank: 'sump',
  circuit: 'heat',
  ratedW: entered(220),
  wattsRange: { minW: 180, maxW: 260 },
  coolingW: entered(400),
  plan: {
    cutOuts: [],
    interlocks: [withoutReturn('heater-interlock')],
    lostSensing: { action: 'off', by: 'controller' },
    states: [DURING_CHANGE],
    regulation: { ...BAND, lowC: 27, highC: 27.3 },
  },
};

/**
 * Two heaters, return, circulation, skimmer, air and top-off, divided over three circuits, each with the plan it
 * needs.
 */
export const EQUIPMENT: Equipment[] = [
  heater('heater-1', 'Heater 1', 'heat'),
  heater('heater-2', 'Heater 2', 'pumps'),
  {
    key: 'return',
    name: 'Return pump',
    type: 'return-pump',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(40),
    wattsRange: { minW: 34, maxW: 46 },
    flowLPerH: entered(3000),
    plan: running([DURING_FEEDING]),
  },
  {
    key: 'circulation',
    name: 'Circulation pump',
    type: 'circulation-pump',
    tank: 'display',
    circuit: 'air',
    ratedW: entered(15),
    wattsRange: { minW: 12, maxW: 18 },
    flowLPerH: entered(4000),
    plan: running([]),
  },
  {
    key: 'skimmer',
    name: 'Skimmer',
    type: 'skimmer',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(25),
    wattsRange: { minW: 20, maxW: 30 },
    plan: running([DURING_FEEDING, DURING_CHANGE], [withoutReturn('skimmer-interlock')]),
  },
  {
    key: 'blower',
    name: 'Air blower',
    type: 'air-blower',
    tank: 'display',
    circuit: 'air',
    ratedW: entered(12),
    wattsRange: { minW: 9, maxW: 15 },
    stones: [{ tank: 'display', count: 2 }],
    plan: running([]),
  },
  {
    key: 'top-off',
    name: 'Top-off',
    type: 'top-off',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(6),
    wattsRange: { minW: 4, maxW: 8 },
    flowLPerH: entered(20),
    source: 'reservoir',
    plan: {
      cutOuts: [],
      interlocks: [withoutReturn('top-off-interlock')],
      lostSensing: { action: 'off', by: 'controller' },
      states: [DURING_CHANGE],
      regulation: {
        kind: 'level',
        sensor: 'sump-level',
        lowMm: -6,
        highMm: 0,
        runLimitMin: 10,
        runLimitSafeguard: 'run-limit',
        by: 'controller',
      },
    },
  },
];
