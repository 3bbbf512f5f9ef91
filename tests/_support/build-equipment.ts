import type { Equipment } from '#core/facility/system';
import type { CutOut, Interlock, LevelControl, Plan, Thermostat } from '#core/plans/plan';
import { entered, fill, type Given } from './given';

/** A thermostat on `sump-temperature`, 24.8 to 25.2 °C, carried out by a controller. */
export function thermostat(given: Partial<Thermostat> = {}): Thermostat {
  return {
    kind: 'thermostat',
    sensors: ['sump-temperature'],
    vote: 'single',
    lowC: 24.8,
    highC: 25.2,
    by: 'controller',
    ...given,
  };
}

/** A level control on `sump-level`, 6 mm below to the running level, at most 10 minutes a run. */
export function levelControl(given: Partial<LevelControl> = {}): LevelControl {
  return {
    kind: 'level',
    sensor: 'sump-level',
    lowMm: -6,
    highMm: 0,
    runLimitMin: 10,
    runLimitSafeguard: 'top-off-run-limit',
    by: 'controller',
    ...given,
  };
}

/** Hard-wired high-temperature contact with its own probe in the sump: opens above 27 °C, reset by hand. */
export function cutOut(given: Partial<CutOut> = {}): CutOut {
  return {
    quantity: 'temperature',
    tank: 'sump',
    above: 27,
    reset: 'manual',
    safeguard: 'heater-1-cut-out',
    ...given,
  };
}

/** Off while the return is lost, proved by flow, carried out by a controller. */
export function offWithoutReturn(given: Partial<Interlock> = {}): Interlock {
  return { when: { kind: 'return-lost', provedBy: 'flow' }, then: 'off', by: 'controller', ...given };
}

/** A plan that runs all the time, with nothing above regulation. */
export function plan(given: Partial<Plan> = {}): Plan {
  return { cutOuts: [], interlocks: [], states: [], regulation: { kind: 'always', by: 'hard-wired' }, ...given };
}

/** `heater-1`: 150 W in the sump with thermostat, cut-out, interlock on return, off when its sensing is lost. */
export function heater(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'heater-1',
    name: 'Heater 1',
    type: 'heater',
    tank: 'sump',
    circuit: 'heat',
    ratedW: entered(150),
    wattsRange: { minW: 135, maxW: 160 },
    heatToWater: entered(1),
    repairMin: entered(20),
    bareBelowMm: entered(120),
    plan: plan({
      cutOuts: [cutOut()],
      interlocks: [offWithoutReturn({ safeguard: 'heater-interlock' })],
      lostSensing: { action: 'off', by: 'controller' },
      states: [{ state: 'water-change', then: 'off', by: 'controller' }],
      regulation: thermostat(),
    }),
  };
  return fill(base, given);
}

/** `chiller-1`: takes 400 W out of the sump's water, from 26.5 down to 26 °C. Not part of the base system. */
export function chiller(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'chiller-1',
    name: 'Chiller 1',
    type: 'chiller',
    tank: 'sump',
    circuit: 'heat',
    ratedW: entered(220),
    wattsRange: { minW: 180, maxW: 260 },
    heatToWater: entered(0),
    coolingW: entered(400),
    repairMin: entered(60),
    plan: plan({
      interlocks: [offWithoutReturn()],
      lostSensing: { action: 'off', by: 'controller' },
      regulation: thermostat({ lowC: 26, highC: 26.5 }),
    }),
  };
  return fill(base, given);
}

/** `return-pump`: 3000 L/h out of the sump, 40 W, always running. */
export function returnPump(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'return-pump',
    name: 'Return pump',
    type: 'return-pump',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(40),
    wattsRange: { minW: 34, maxW: 46 },
    heatToWater: entered(0.7),
    repairMin: entered(30),
    flowLPerH: entered(3000),
    plan: plan({ states: [{ state: 'feeding', then: 'off', by: 'controller' }] }),
  };
  return fill(base, given);
}

/** `circulation-pump`: 4000 L/h within the display, 15 W, on another circuit than the return. */
export function circulationPump(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'circulation-pump',
    name: 'Circulation pump',
    type: 'circulation-pump',
    tank: 'display',
    circuit: 'air',
    ratedW: entered(15),
    wattsRange: { minW: 12, maxW: 18 },
    heatToWater: entered(1),
    repairMin: entered(15),
    flowLPerH: entered(4000),
    gasTransferLPerH: entered(150),
    plan: plan(),
  };
  return fill(base, given);
}

/** `skimmer`: in the sump, off while the return is lost or fed. */
export function skimmer(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'skimmer',
    name: 'Skimmer',
    type: 'skimmer',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(25),
    wattsRange: { minW: 20, maxW: 30 },
    heatToWater: entered(0.7),
    repairMin: entered(15),
    gasTransferLPerH: entered(400),
    floodsAboveMm: entered(25),
    floodLPerHPerMm: entered(0.5),
    plan: plan({
      interlocks: [offWithoutReturn({ safeguard: 'skimmer-interlock' })],
      states: [
        { state: 'feeding', then: 'off', by: 'controller' },
        { state: 'water-change', then: 'off', by: 'controller' },
      ],
    }),
  };
  return fill(base, given);
}

/** `air-blower`: two stones in the display, on a circuit with a battery. */
export function airBlower(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'air-blower',
    name: 'Air blower',
    type: 'air-blower',
    tank: 'display',
    circuit: 'air',
    ratedW: entered(12),
    wattsRange: { minW: 9, maxW: 15 },
    heatToWater: entered(0),
    repairMin: entered(15),
    gasTransferLPerH: entered(250),
    stones: [{ tank: 'display', count: 2 }],
    plan: plan(),
  };
  return fill(base, given);
}

/** `top-off`: 20 L/h from the 25 L reservoir into the sump, on the sump's level. */
export function topOff(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'top-off',
    name: 'Top-off',
    type: 'top-off',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(6),
    wattsRange: { minW: 4, maxW: 8 },
    heatToWater: entered(0),
    repairMin: entered(15),
    flowLPerH: entered(20),
    source: 'reservoir',
    plan: plan({
      interlocks: [offWithoutReturn()],
      lostSensing: { action: 'off', by: 'controller' },
      states: [{ state: 'water-change', then: 'off', by: 'controller' }],
      regulation: levelControl(),
    }),
  };
  return fill(base, given);
}

/** `drain-valve`: opened by hand, empties the sump at 600 L/h down to 150 mm below the running level. Not in the base. */
export function drainValve(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'drain-valve',
    name: 'Drain valve',
    type: 'drain-valve',
    tank: 'sump',
    repairMin: entered(5),
    wasteLPerH: entered(600),
    wasteToMm: entered(150),
    plan: plan({ regulation: { kind: 'never', by: 'person' } }),
  };
  return fill(base, given);
}

/** `filter`: 2000 L/h from the sump, always running, with a backwash line to waste. Not part of the base system. */
export function filter(given: Given<Equipment> = {}): Equipment {
  const base: Equipment = {
    key: 'filter',
    name: 'Sand filter',
    type: 'filter',
    tank: 'sump',
    circuit: 'pumps',
    ratedW: entered(180),
    wattsRange: { minW: 150, maxW: 200 },
    heatToWater: entered(0.6),
    repairMin: entered(60),
    flowLPerH: entered(2000),
    wasteLPerH: entered(1500),
    wasteToMm: entered(150),
    plan: plan(),
  };
  return fill(base, given);
}
