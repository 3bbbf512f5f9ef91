import { expect, test } from 'vitest';
import type { Sensor } from '#core/facility/system';
import type { Upset } from '#core/faults/upset';
import { plan, returnPump } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { alarm, sensor, system } from '../../_support/build-system';
import { courseOf } from './course';

const METERS: [string, Sensor, Parameters<typeof alarm>[0]][] = [
  [
    'flow',
    sensor({ key: 'meter', quantity: 'flow', tank: 'sump' }),
    { on: { kind: 'sensor', sensor: 'meter', below: 100 } },
  ],
  [
    'watts',
    { ...sensor({ key: 'meter', quantity: 'watts' }), equipment: 'return' },
    { on: { kind: 'watts', equipment: 'return' } },
  ],
];

test.each(METERS)('an alarm on %s is not raised by a meter that goes on saying that all is well', (_, meter, on) => {
  const pump = returnPump({ key: 'return', plan: plan() });
  const site = facility({
    systems: [
      system({
        sensors: [meter],
        equipment: [pump],
        alarms: [alarm({ key: 'lost', delayS: 60, safeguard: undefined, ...on })],
        safeguards: [],
        states: [],
      }),
    ],
  });
  const raised = (wrong: (upset: Upset) => void) =>
    courseOf(site, { hours: 1, fresh: true, fault: wrong }).record.alarms.get('lost');
  const stop = (upset: Upset) => upset.health.set('return', 'dead');
  expect(raised(stop)).toBeCloseTo(60, 3);
  expect(
    raised((upset) => {
      stop(upset);
      upset.probes.set('meter', { as: 'stuck', value: 1e6 });
    }),
  ).toBeUndefined();
});
