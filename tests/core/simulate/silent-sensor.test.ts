import { describe, expect, test } from 'vitest';
import type { Upset } from '#core/faults/upset';
import { facility } from '../../_support/build-facility';
import { alarm, sensor, system } from '../../_support/build-system';
import { courseOf } from './course';

const PROBE = 'display-temperature';

/** s after which the alarm on the silence of a probe is raised; undefined: never. */
function raisedAfter(fault: (upset: Upset) => void, gateway: string | undefined = 'gateway-1'): number | undefined {
  const described = facility({
    systems: [
      system({
        sensors: [sensor({ key: PROBE, name: 'Display temperature', tank: 'display', gateway })],
        equipment: [],
        safeguards: [],
        states: [],
        alarms: [
          alarm({ key: 'no-word', on: { kind: 'silent-sensor', sensor: PROBE }, delayS: 900, safeguard: undefined }),
        ],
      }),
    ],
  });
  return courseOf(described, { hours: 2, fault }).record.alarms.get('no-word');
}

describe('an alarm on the silence of a sensor', () => {
  test('is raised after its delay when the probe is lost', () => {
    expect(raisedAfter((upset) => upset.probes.set(PROBE, { as: 'lost' }))).toBeCloseTo(900, 3);
  });

  test('is raised when its gateway goes', () => {
    expect(raisedAfter((upset) => upset.deadMonitors.add('gateway-1'))).toBeCloseTo(900, 3);
  });

  test('is not raised by a probe that lies, nor while all is well', () => {
    expect(raisedAfter((upset) => upset.probes.set(PROBE, { as: 'stuck', value: 25 }))).toBeUndefined();
    expect(raisedAfter(() => undefined)).toBeUndefined();
  });
});
