import { describe, expect, test } from 'vitest';
import { chiller, heater, plan, returnPump, thermostat } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { stock, system } from '../../_support/build-system';
import { courseOf, temperature } from './course';

const reef = (watts: number) =>
  facility({
    systems: [
      system({
        equipment: [
          heater({ ratedW: watts, plan: plan({ regulation: thermostat() }) }),
          chiller({ plan: plan({ regulation: thermostat({ lowC: 26, highC: 26.5 }) }) }),
          returnPump(),
        ],
        stock: [stock({ count: 2 })],
      }),
    ],
  });

describe('a run says when it has left what the laws were published for', () => {
  test('not in a normal day', () => {
    expect(courseOf(reef(300), { hours: 24 }).record.outside).toBe(false);
  });

  test('when water that something breathes in is warmer than fish were measured at', () => {
    const course = courseOf(reef(1500), { hours: 12, fault: (upset) => upset.health.set('heater-1', 'stuck-on') });
    expect(temperature(course, 'display')).toBeGreaterThan(30);
    expect(course.record.outside).toBe(true);
  });

  test('when a chiller takes a cut-off sump below freezing, which the model lets it do', () => {
    const course = courseOf(reef(300), {
      hours: 48,
      fault: (upset) => {
        upset.health.set('chiller-1', 'stuck-on');
        upset.health.set('return-pump', 'dead');
        upset.health.set('heater-1', 'dead');
      },
    });
    expect(temperature(course, 'sump')).toBeLessThan(0);
    expect(course.record.outside).toBe(true);
  });
});
