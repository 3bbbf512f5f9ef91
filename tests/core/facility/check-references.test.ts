import { checkReferences } from '#core/facility/check-references';
import type { Facility } from '#core/facility/facility';
import { formatPath } from '#core/facility/path';
import { describe, expect, test } from 'vitest';
import { circuit, facility, monitor, person, round, shift, site } from '../../_support/build-facility';
import { alarm, reservoir, safeguard, sensor, stock, sump, system, tank } from '../../_support/build-system';
import { entered } from '../../_support/given';
import { withAlarm, withSensor, withSystem, withTank } from '../../_support/with-part';

/** What is wrong with a facility, as `path: message`. */
function problems(of: Facility): string[] {
  return checkReferences(of).map(({ path, message }) => `${formatPath(path)}: ${message}`);
}

const S = 'systems[0]';
const pumpDry = tank({ pumpDryMm: 20 });

const BROKEN: [string, Facility, string[]][] = [
  [
    'a room that is not there',
    withSystem({ room: 'galery' }),
    [`${S}.room: room must be the key of a room; "galery" is none. Did you mean "gallery"?`],
  ],
  [
    'a key used twice',
    facility({ rooms: [...facility().rooms, ...facility().rooms] }),
    ['rooms[1].key: key must differ from every other in its list; [0] is "gallery" too'],
  ],
  [
    'a key used twice within a system',
    withSystem({ stock: [stock(), stock()] }),
    [`${S}.stock[1].key: key must differ from every other in its list; [0] is "fish" too`],
  ],
  [
    'a monitor on a circuit that is not there',
    facility({ monitors: [monitor({ circuit: 'attic' })] }),
    ['monitors[0].circuit: circuit must be the key of a circuit; "attic" is none'],
  ],
  [
    'a battery time on a circuit without a battery',
    facility({ circuits: [...facility().circuits, circuit({ key: 'spare', upsMin: 10, upsSafeguard: 'battery' })] }),
    [
      'circuits[4].upsMin: upsMin is given, but backedBy does not list ups',
      'circuits[4].upsSafeguard: upsSafeguard is given, but backedBy does not list ups',
    ],
  ],
  [
    'a circuit backed by a generator that nobody describes',
    facility({ circuits: [...facility().circuits, circuit({ key: 'spare', backedBy: ['generator'] })] }),
    ['circuits[4].backedBy: backedBy lists generator, but site.generator describes none'],
  ],
  [
    'a generator proved by a safeguard of another kind',
    facility({ site: site({ generator: { safeguard: 'outside-watch' } }) }),
    [
      'site.generator.safeguard: safeguard must name a safeguard of kind standby-power; "outside-watch" is of kind alarm',
    ],
  ],
  [
    'a generator proved by a safeguard of a system',
    facility({ site: site({ generator: { safeguard: 'siphon-break' } }) }),
    ['site.generator.safeguard: safeguard must be the key of a safeguard; "siphon-break" is none'],
  ],
  [
    'a watch answered by a stranger',
    facility({ site: site({ watchdog: { afterMin: 5, answeredBy: ['robin', 'kim'] } }) }),
    ['site.watchdog.answeredBy[1]: answeredBy[1] must be the key of a person; "kim" is none'],
  ],
  [
    'a shift worked by a stranger',
    facility({ people: [person()], shifts: [shift({ people: ['robn'] })] }),
    ['shifts[0].people[0]: people[0] must be the key of a person; "robn" is none. Did you mean "robin"?'],
  ],
  [
    'a round through a system that is not there',
    facility({ rounds: [round({ systems: ['reef-1', 'tropics'] })] }),
    ['rounds[0].systems[1]: systems[1] must be the key of a system; "tropics" is none'],
  ],
  [
    'a system without a tank',
    { ...withSystem({ tanks: [], equipment: [], sensors: [], stock: [], alarms: [] }) },
    [`${S}.tanks: tanks must list at least one tank`],
  ],
  [
    'a second sump',
    withTank(sump({ key: 'sump-2' })),
    [`${S}.tanks[3].role: role must not be sump again; "sump" is this system's sump`],
  ],
  [
    'a display with a pump to run dry',
    withTank(pumpDry),
    [`${S}.tanks[0].pumpDryMm: pumpDryMm belongs to a sump only`],
  ],
  [
    'a reservoir that receives a share of the return',
    withTank(reservoir({ returnShare: 0.5 })),
    [`${S}.tanks[2].returnShare: returnShare does not belong to a reservoir, which no return feeds`],
  ],
  [
    'a proof of a siphon break that is not there',
    withTank(tank({ siphonBreakMm: undefined })),
    [`${S}.tanks[0].siphonSafeguard: siphonSafeguard is given, but siphonBreakMm describes no siphon break`],
  ],
  [
    'a tank named like the water main',
    withTank(tank({ key: 'mains', siphonSafeguard: undefined })),
    [`${S}.tanks[3].key: key must not be "mains", which stands for the water main in a top-off`],
  ],
  [
    'animals in a tank that is not there',
    withSystem({ stock: [stock({ tank: 'pond' })] }),
    [`${S}.stock[0].tank: tank must be the key of a tank of this system; "pond" is none`],
  ],
  [
    'animals in the reservoir',
    withSystem({ stock: [stock({ tank: 'reservoir' })] }),
    [`${S}.stock[0].tank: tank must be a tank that can hold animals; "reservoir" is a reservoir tank`],
  ],
  [
    'a tolerance profile that is not there',
    withSystem({ stock: [stock({ profile: 'reeff' })] }),
    [`${S}.stock[0].profile: profile must be the key of a tolerance profile; "reeff" is none. Did you mean "reef"?`],
  ],
  [
    'a sensor read by a router',
    withSensor(sensor({ gateway: 'router' })),
    [`${S}.sensors[0].gateway: gateway must be the key of a monitor of kind gateway; "router" is none`],
  ],
  [
    'a temperature sensor that sits nowhere, on equipment',
    withSensor(sensor({ tank: undefined, equipment: 'heater-1' })),
    [
      `${S}.sensors[0].equipment: equipment does not belong to a temperature sensor`,
      `${S}.sensors[0].tank: tank is missing: a temperature sensor sits in a tank`,
    ],
  ],
  [
    'a watts sensor in a tank, on nothing',
    withSensor(sensor({ key: 'lamp-watts', quantity: 'watts' })),
    [
      `${S}.sensors[10].equipment: equipment is missing: a watts sensor measures equipment`,
      `${S}.sensors[10].tank: tank does not belong to a watts sensor`,
    ],
  ],
  [
    'an alarm on a sensor that is not there',
    withAlarm(alarm({ on: { kind: 'sensor', sensor: 'ph', below: 7 } })),
    [`${S}.alarms[0].on.sensor: sensor must be the key of a sensor of this system; "ph" is none`],
  ],
  [
    'an alarm that is always true',
    withAlarm(alarm({ on: { kind: 'sensor', sensor: 'floor', above: 1, below: 1 } })),
    [`${S}.alarms[0].on.below: below must be less than above; found below 1 and above 1`],
  ],
  [
    'an alarm without a limit',
    withAlarm(alarm({ on: { kind: 'sensor', sensor: 'floor' } })),
    [`${S}.alarms[0].on: on must give above or below, or both`],
  ],
  [
    'an alarm on watts that nothing measures',
    withAlarm(alarm({ on: { kind: 'watts', equipment: 'skimmer' } })),
    [`${S}.alarms[0].on.equipment: equipment is watched for watts, but no watts sensor measures "skimmer"`],
  ],
  [
    'an alarm on the silence of a host',
    withAlarm(alarm({ on: { kind: 'silent', gateway: 'host' } })),
    [`${S}.alarms[0].on.gateway: gateway must be the key of a monitor of kind gateway; "host" is none`],
  ],
  [
    'an alarm on the silence of a sensor that is not there',
    withAlarm(alarm({ on: { kind: 'silent-sensor', sensor: 'moon' } })),
    [`${S}.alarms[0].on.sensor: sensor must be the key of a sensor of this system; "moon" is none`],
  ],
  [
    'an alarm proved by an interlock, answered by a stranger',
    withAlarm(alarm({ safeguard: 'heater-interlock', answeredBy: ['kim'] })),
    [
      `${S}.alarms[0].answeredBy[0]: answeredBy[0] must be the key of a person; "kim" is none`,
      `${S}.alarms[0].safeguard: safeguard must name a safeguard of kind alarm; "heater-interlock" is of kind interlock`,
    ],
  ],
  [
    'a safeguard under the key of one of the site',
    withSystem({ safeguards: [...system().safeguards, safeguard({ key: 'battery', kind: 'standby-power' })] }),
    [`${S}.safeguards[8].key: key must differ from the safeguards of the site; "battery" is one of them`],
  ],
  [
    'an operating state described twice, ended by an alarm',
    withSystem({
      states: [
        { name: 'night', endsBy: 'person' },
        { name: 'night', endsBy: 'person', endSafeguard: 'alarm-path' },
      ],
    }),
    [
      `${S}.states[1].name: name must differ from every other in its list; night stands twice`,
      `${S}.states[1].endSafeguard: endSafeguard must name a safeguard of kind state-end; "alarm-path" is of kind alarm`,
    ],
  ],
  [
    'an own profile under the name of a default one, with its band upside down and a limit on nothing',
    facility({
      profiles: [
        {
          key: 'reef',
          name: 'Reef',
          usual: { temperatureC: [26, 24], salinity: [34, 35], oxygenMgL: 6 },
          limits: [{ quantity: 'oxygen', forMin: 5 }],
          source: 'own',
          confidence: 'low',
        },
      ],
    }),
    [
      'profiles[0].key: key must differ from the default profiles; "reef" is one of them',
      'profiles[0].usual.temperatureC: temperatureC must have its lower end first; found 26 and 24',
      'profiles[0].limits[0]: limits[0] must give above or below, or both',
    ],
  ],
];

describe('references', () => {
  test('of the base facility all fit', () => {
    expect(problems(facility())).toEqual([]);
  });

  test.each(BROKEN)('name %s', (_, broken, expected) => {
    expect(problems(broken)).toEqual(expected);
  });

  test('may lean on a safeguard of the site from within a system', () => {
    expect(problems(withAlarm(alarm({ safeguard: 'outside-watch' })))).toEqual([]);
  });

  test('are all reported, not only the first', () => {
    const several = facility({
      systems: [
        system({ room: 'attic', stock: [stock({ tank: 'pond' })] }),
        system({ key: 'reef-2', room: 'cellar', salinity: entered(35) }),
      ],
      rounds: [round({ systems: ['nowhere'] })],
    });
    expect(problems(several).map((text) => text.split(':')[0])).toEqual([
      'rounds[0].systems[0]',
      'systems[0].room',
      'systems[0].stock[0].tank',
      'systems[1].room',
    ]);
  });

  test('to a key that stands in the file but could not be read are let be', () => {
    const broken = withSystem({
      room: 'attic',
      safeguards: [safeguard({ key: 'siphon-break', kind: 'siphon-break' })],
    });
    const unread = new Set(['attic', ...system().safeguards.map(({ key }) => key)]);
    expect(checkReferences(broken, unread)).toEqual([]);
  });
});
