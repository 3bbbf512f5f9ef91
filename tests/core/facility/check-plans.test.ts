import { checkReferences } from '#core/facility/check-references';
import type { Facility } from '#core/facility/facility';
import { formatPath } from '#core/facility/path';
import { describe, expect, test } from 'vitest';
import {
  airBlower,
  chiller,
  circulationPump,
  cutOut,
  drainValve,
  filter,
  heater,
  levelControl,
  offWithoutReturn,
  plan,
  returnPump,
  skimmer,
  thermostat,
  topOff,
} from '../../_support/build-equipment';
import { sensor, system } from '../../_support/build-system';
import { withEquipment, withSystem } from '../../_support/with-part';

/** What is wrong with the equipment of a facility, as `path: message` from the equipment down. */
function problems(of: Facility): string[] {
  return checkReferences(of).map(({ path, message }) => `${formatPath(path).replace('systems[0].', '')}: ${message}`);
}

const H = 'equipment[0]';
const R = `${H}.plan.regulation`;
const heaterWith = (...given: Parameters<typeof thermostat>) =>
  withEquipment(heater({ plan: { ...heater().plan, regulation: thermostat(...given) } }));
const topOffWith = (...given: Parameters<typeof levelControl>) =>
  withEquipment(topOff({ plan: plan({ regulation: levelControl(...given) }) }));

const BROKEN: [string, Facility, string[]][] = [
  [
    'equipment in a tank and on a circuit that are not there',
    withEquipment(heater({ tank: 'smup', circuit: 'attic' })),
    [
      `${H}.tank: tank must be the key of a tank of this system; "smup" is none. Did you mean "sump"?`,
      `${H}.circuit: circuit must be the key of a circuit; "attic" is none`,
    ],
  ],
  [
    'a heater that cools, floods and moves water',
    withEquipment(heater({ coolingW: 10, floodsAboveMm: 5, flowLPerH: 100 })),
    [
      `${H}.flowLPerH: flowLPerH does not belong to a heater; it belongs to return-pump, circulation-pump, filter, top-off, doser, supply`,
      `${H}.coolingW: coolingW does not belong to a heater; it belongs to chiller`,
      `${H}.floodsAboveMm: floodsAboveMm does not belong to a heater; it belongs to skimmer`,
    ],
  ],
  [
    'a water supply without a source',
    withEquipment({ ...topOff({ type: 'supply', plan: plan() }), source: undefined }),
    ['equipment[5].source: source is missing: a supply takes water from a reservoir tank or from mains'],
  ],
  [
    'a doser that fills the reservoir it takes from, with carbon dioxide and a hopper',
    withEquipment(topOff({ type: 'doser', tank: 'reservoir', plan: plan(), co2GPerH: 2, hopperG: 3 })),
    [
      'equipment[5].co2GPerH: co2GPerH does not belong to a doser; it belongs to co2',
      'equipment[5].hopperG: hopperG does not belong to a doser; it belongs to feeder',
      'equipment[5].tank: tank must be the tank the doser fills; "reservoir" is a reservoir',
    ],
  ],
  [
    'a watts range upside down',
    withEquipment(heater({ wattsRange: { minW: 160, maxW: 140 } })),
    [`${H}.wattsRange: wattsRange must have minW at most maxW; found 160 and 140`],
  ],
  [
    'stones in a tank that is not there',
    withEquipment(airBlower({ stones: [{ tank: 'pond', count: 1 }] })),
    ['equipment[6].stones[0].tank: tank must be the key of a tank of this system; "pond" is none'],
  ],
  [
    'a top-off that fills the reservoir from the sump',
    withEquipment(topOff({ tank: 'reservoir', source: 'sump' })),
    [
      'equipment[5].tank: tank must be the tank the top-off fills; "reservoir" is a reservoir',
      'equipment[5].source: source must be a reservoir tank, or mains; "sump" is a sump tank',
    ],
  ],
  [
    'a top-off without a source',
    withEquipment(topOff({ source: undefined })),
    ['equipment[5].source: source is missing: a top-off takes water from a reservoir tank or from mains'],
  ],
  [
    'a return pump in the display',
    withEquipment(returnPump({ tank: 'display' })),
    ['equipment[2].tank: tank must be the sump "sump", from which a return pump lifts; found "display"'],
  ],
  [
    'a return pump without a sump',
    withSystem({
      tanks: system().tanks.filter(({ role }) => role !== 'sump'),
      equipment: [returnPump({ tank: 'display' })],
      sensors: [],
      alarms: [],
    }),
    ['equipment[0].type: type is return-pump, which needs a tank with role sump in its system'],
  ],
  [
    'a cut-out with its probe nowhere, proved by an alarm, at no value',
    withEquipment(
      heater({
        plan: { ...heater().plan, cutOuts: [cutOut({ tank: 'pond', safeguard: 'alarm-path', above: undefined })] },
      }),
    ),
    [
      `${H}.plan.cutOuts[0].tank: tank must be the key of a tank of this system; "pond" is none`,
      `${H}.plan.cutOuts[0].safeguard: safeguard must name a safeguard of kind cut-out; "alarm-path" is of kind alarm`,
      `${H}.plan.cutOuts[0]: cutOuts[0] must give above or below, or both`,
    ],
  ],
  [
    'an interlock on a sensor that is not there, proved by a cut-out',
    withEquipment(
      circulationPump({
        plan: plan({
          interlocks: [
            {
              when: { kind: 'sensor', sensor: 'ph', above: 9 },
              then: 'off',
              by: 'person',
              safeguard: 'heater-1-cut-out',
            },
          ],
        }),
      }),
    ),
    [
      'equipment[3].plan.interlocks[0].safeguard: safeguard must name a safeguard of kind interlock; "heater-1-cut-out" is of kind cut-out',
      'equipment[3].plan.interlocks[0].when.sensor: sensor must be the key of a sensor of this system; "ph" is none',
    ],
  ],
  [
    'an interlock that waits for flow without a flow sensor, and for a return that is not there',
    withSystem({
      equipment: [skimmer({ plan: plan({ interlocks: [offWithoutReturn()] }) })],
      sensors: [],
      alarms: [],
    }),
    [
      `${H}.plan.interlocks[0].when: when waits for lost return, but this system has no return-pump`,
      `${H}.plan.interlocks[0].when.provedBy: provedBy is flow, but this system has no flow sensor`,
    ],
  ],
  [
    'an interlock on the watts of a return pump that nothing measures',
    withSystem({
      equipment: [
        returnPump(),
        skimmer({
          plan: plan({ interlocks: [offWithoutReturn({ when: { kind: 'return-lost', provedBy: 'watts' } })] }),
        }),
      ],
      sensors: [],
      alarms: [],
    }),
    [
      'equipment[1].plan.interlocks[0].when.provedBy: provedBy is watts, but no watts sensor of this system measures its return-pump',
    ],
  ],
  [
    'two lines for one operating state',
    withEquipment(
      returnPump({
        plan: plan({
          states: [
            { state: 'feeding', then: 'off', by: 'controller' },
            { state: 'feeding', then: 'on', by: 'controller' },
          ],
        }),
      }),
    ),
    ['equipment[2].plan.states[1].state: state must differ from every other in its list; feeding stands twice'],
  ],
  [
    'an action on lost sensing where nothing is sensed',
    withEquipment(returnPump({ plan: plan({ lostSensing: { action: 'on', by: 'controller' } }) })),
    ['equipment[2].plan.lostSensing: lostSensing has no sensing to lose: regulation is always'],
  ],
  [
    'a thermostat upside down',
    heaterWith({ lowC: 25.2, highC: 25.2 }),
    [`${R}.lowC: lowC must be less than highC; found lowC 25.2 and highC 25.2`],
  ],
  [
    'a thermostat that reads a level',
    heaterWith({ sensors: ['sump-level'] }),
    [`${R}.sensors[0]: sensors[0] must name a temperature sensor; "sump-level" measures level`],
  ],
  [
    'a single vote of two sensors',
    heaterWith({ sensors: ['sump-temperature', 'display-temperature'] }),
    [`${R}.vote: vote is single, which needs exactly one sensor; found 2`],
  ],
  [
    'a median of one sensor',
    heaterWith({ vote: 'median' }),
    [`${R}.vote: vote is median, which needs at least two sensors; found 1`],
  ],
  [
    'one sensor that votes twice',
    heaterWith({ vote: 'highest', sensors: ['sump-temperature', 'sump-temperature'] }),
    [`${R}.sensors[1]: sensors[1] repeats "sump-temperature"; one sensor, one vote`],
  ],
  [
    'a pump that follows a thermostat',
    withEquipment(circulationPump({ plan: plan({ regulation: thermostat() }) })),
    [
      'equipment[3].plan.regulation.kind: kind is thermostat, which only a heater or a chiller can follow, not a circulation-pump',
    ],
  ],
  [
    'a heater that follows a level',
    withEquipment(heater({ plan: plan({ regulation: levelControl() }) })),
    [`${R}.kind: kind is level, which only a top-off can follow, not a heater`],
  ],
  [
    'a level control upside down',
    topOffWith({ lowMm: 2, highMm: 0 }),
    ['equipment[5].plan.regulation.lowMm: lowMm must be less than highMm; found lowMm 2 and highMm 0'],
  ],
  [
    'a level control that reads a temperature, with a proof of a run limit that is not set',
    topOffWith({ sensor: 'sump-temperature', runLimitMin: undefined }),
    [
      'equipment[5].plan.regulation.sensor: sensor must name a level sensor; "sump-temperature" measures temperature',
      'equipment[5].plan.regulation.runLimitSafeguard: runLimitSafeguard is given, but runLimitMin sets no run limit',
    ],
  ],
  [
    'hours that begin when they end',
    withEquipment(
      circulationPump({ plan: plan({ regulation: { kind: 'hours', from: '08:00', to: '08:00', by: 'controller' } }) }),
    ),
    ['equipment[3].plan.regulation.to: to must differ from "from"; both are 08:00'],
  ],
];

describe('plans and equipment', () => {
  test.each(BROKEN)('name %s', (_, broken, expected) => {
    expect(problems(broken)).toEqual(expected);
  });

  test('of every kind that is well described pass', () => {
    const both = ['sump-temperature', 'display-temperature'];
    const items = [
      heater({ plan: plan({ regulation: thermostat({ vote: 'highest', sensors: both }) }) }),
      topOff({ source: 'mains' }),
      chiller(),
      drainValve(),
      filter(),
    ];
    expect(problems(withEquipment(...items))).toEqual([]);
  });

  test('let an interlock prove the return by the watts of its pump', () => {
    const when = { kind: 'return-lost', provedBy: 'watts' } as const;
    expect(problems(withEquipment(skimmer({ plan: plan({ interlocks: [offWithoutReturn({ when })] }) })))).toEqual([]);
  });

  test('say what seems absent apart from what contradicts', () => {
    const broken = withSystem({ equipment: [skimmer()], sensors: [sensor()], alarms: [] });
    expect(checkReferences(broken).map(({ about }) => about)).toEqual(['absence', 'absence']);
  });
});
