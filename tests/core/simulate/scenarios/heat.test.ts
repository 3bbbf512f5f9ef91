import { describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import type { Equipment } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import { airBlower, cutOut, heater, plan, returnPump, thermostat } from '../../../_support/build-equipment';
import { facility, room } from '../../../_support/build-facility';
import { stock, system } from '../../../_support/build-system';
import { courseOf, device, temperature, timeTo } from '../course';

const HOUR = 3600;

/** The base reef with one big heater in the sump and whatever else a test wants, in a room of some temperature. */
function reef(heaterPlan: Partial<Plan>, roomC = 20, more: Equipment[] = [], watts = 500): Facility {
  return facility({
    rooms: [room({ temperatureC: roomC })],
    systems: [
      system({
        equipment: [
          heater({ ratedW: watts, plan: plan({ regulation: thermostat(), ...heaterPlan }) }),
          returnPump(),
          airBlower(),
          ...more,
        ],
        stock: [stock({ count: 5 })],
      }),
    ],
  });
}

describe('a heater in the sump with the return stopped heats the sump alone', () => {
  const stopped = (sensors: string[]) =>
    courseOf(reef({ regulation: thermostat({ sensors }) }), {
      hours: 30,
      fault: (upset) => upset.health.set('return-pump', 'dead'),
    });

  test('obeying the probe in the sump, it keeps the sump and lets the display cool', () => {
    const course = stopped(['sump-temperature']);
    expect(temperature(course, 'sump')).toBeCloseTo(25, 0);
    expect(temperature(course, 'display')).toBeLessThan(23);
  });

  test('obeying the probe in the display, it cooks the sump and lets the display cool all the same', () => {
    const course = stopped(['display-temperature']);
    expect(temperature(course, 'sump')).toBeGreaterThan(45);
    expect(temperature(course, 'display')).toBeLessThan(23);
    expect(temperature(course, 'display')).toBeCloseTo(temperature(stopped(['sump-temperature']), 'display'), 1);
  });

  test('when the return comes back, what was cooked arrives at once', () => {
    const line = { state: 'feeding', then: 'off', by: 'controller' } as const;
    const site = reef({ regulation: thermostat({ sensors: ['display-temperature'] }) }, 18);
    const [base] = site.systems;
    if (!base) throw new Error('no system');
    const pausing = {
      ...site,
      systems: [
        {
          ...base,
          equipment: base.equipment.map((e) =>
            e.type === 'return-pump' ? { ...e, plan: plan({ states: [line] }) } : e,
          ),
          states: [
            {
              name: 'feeding' as const,
              lastsMin: { value: 300, origin: 'entered' as const },
              endsBy: 'person' as const,
            },
          ],
        },
      ],
    };
    const course = courseOf(pausing, { hours: 6, state: 'feeding' });
    const [before, sump] = [temperature(course, 'display', 5 * HOUR), temperature(course, 'sump', 5 * HOUR)];
    expect(before).toBeLessThan(24.8);
    expect(sump).toBeGreaterThan(35);
    // Half an hour of 3000 L/h mixes the 552 L: the heat of the sump is shared.
    const after = temperature(course, 'display', 5.5 * HOUR);
    expect(after - before).toBeGreaterThan(0.8 * ((sump - before) * (120 / 552)));
    const first = temperature(course, 'display', 5 * HOUR + 300) - before;
    expect(first).toBeGreaterThan((after - before) / 3);
  });
});

describe('a welded heater', () => {
  const welded = (heaterPlan: Partial<Plan>) =>
    courseOf(reef(heaterPlan), { hours: 60, fault: (upset) => upset.health.set('heater-1', 'stuck-on') });
  const tooHot = (by: 'controller' | 'hard-wired' | 'person') =>
    ({ when: { kind: 'sensor', sensor: 'sump-temperature', above: 27 }, then: 'off', by }) as const;

  test('goes on and on under its thermostat', () => {
    expect(temperature(welded({}), 'display')).toBeGreaterThan(31);
  });

  test('is stopped by a hard-wired cut-out, for good when that is reset by hand', () => {
    const course = welded({ cutOuts: [cutOut()] });
    expect(timeTo(course, 'temperature', 'above')).toBe(Number.POSITIVE_INFINITY);
    expect(temperature(course, 'display')).toBeLessThan(25);
    expect(device(course, 'heater-1').drawing).toBe(false);
    expect(course.record.acted.has('heater-1-cut-out')).toBe(true);
  });

  test('cycles on a cut-out that resets itself', () => {
    const course = welded({ cutOuts: [cutOut({ reset: 'automatic' })] });
    const openings = course.record.events.filter((e) => e.what.endsWith('opens'));
    expect(openings.length).toBeGreaterThan(2);
    for (const { t } of openings) expect(temperature(course, 'sump', t)).toBeCloseTo(27, 3);
  });

  test('is not stopped by an interlock of the controller, which only opens the contact that has welded', () => {
    const course = welded({ interlocks: [tooHot('controller')] });
    expect(temperature(course, 'display')).toBeCloseTo(temperature(welded({}), 'display'), 6);
    expect(device(course, 'heater-1')).toMatchObject({ command: false, drawing: true });
  });

  test('is stopped by the same interlock hard-wired, and not by a person who is not there', () => {
    expect(temperature(welded({ interlocks: [tooHot('hard-wired')] }), 'sump')).toBeLessThan(27.2);
    expect(temperature(welded({ interlocks: [tooHot('person')] }), 'display')).toBeGreaterThan(31);
  });
});

describe('a heater whose probe says nothing', () => {
  const lost = (action?: 'off' | 'on' | 'hold') =>
    courseOf(reef(action ? { lostSensing: { action, by: 'controller' } } : {}), {
      hours: 60,
      fault: (upset) => upset.probes.set('sump-temperature', { as: 'lost' }),
    });

  test('goes off where its plan says so, and the water cools', () => {
    expect(temperature(lost('off'), 'display')).toBeLessThan(23);
  });

  test('heats without end where its plan says on, or holds its last word, or says nothing', () => {
    for (const action of ['on', 'hold', undefined] as const)
      expect(temperature(lost(action), 'display')).toBeGreaterThan(31);
  });

  test('goes by the other probe where it has two', () => {
    const two = reef({
      regulation: thermostat({ sensors: ['sump-temperature', 'display-temperature'], vote: 'median' }),
    });
    const course = courseOf(two, { hours: 60, fault: (upset) => upset.probes.set('sump-temperature', { as: 'lost' }) });
    expect(temperature(course, 'display')).toBeCloseTo(25, 0);
  });
});

describe('a heater whose probe hangs in the air', () => {
  const hanging = (roomC: number) =>
    courseOf(reef({}, roomC), { hours: 60, fault: (upset) => upset.probes.set('sump-temperature', { as: 'air' }) });

  test('heats without end in a cool room', () => {
    const course = hanging(20);
    expect(temperature(course, 'display')).toBeGreaterThan(31);
    expect(device(course, 'heater-1').on).toBe(true);
  });

  test('never starts in a room warmer than its band', () => {
    const course = hanging(25.5);
    expect(course.record.switches.filter((s) => s.on)).toEqual([]);
  });
});

describe('shortest times and equal thresholds', () => {
  test('a heater runs and rests at least as long as its plan says, whatever the temperature does', () => {
    const minOnS = 1500;
    const minOffS = 2400;
    const site = reef({ regulation: thermostat({ lowC: 24.98, highC: 25.02, minOnS, minOffS }) }, 20, [], 900);
    const { switches } = courseOf(site, { hours: 24 }).record;
    const stretches = switches.slice(1).map((s, i) => ({ on: switches[i]?.on, s: s.t - (switches[i]?.t ?? 0) }));
    expect(stretches.length).toBeGreaterThan(10);
    for (const stretch of stretches.slice(1)) expect(stretch.s).toBeGreaterThan((stretch.on ? minOnS : minOffS) - 1e-3);
    // The band alone would be crossed sooner than that.
    expect(Math.min(...stretches.filter((one) => one.on).map((one) => one.s))).toBeCloseTo(minOnS, 2);
  });

  test('two heaters with the same band switch at the same instants, though each has its own contact', () => {
    const twin = heater({ key: 'heater-2', name: 'Heater 2', ratedW: 200, plan: plan({ regulation: thermostat() }) });
    const { switches } = courseOf(reef({}, 20, [twin], 200), { hours: 24 }).record;
    const of = (index: number) => switches.filter((s) => s.device === index);
    expect(of(0).length).toBeGreaterThan(4);
    expect(of(3).map((s) => s.t)).toEqual(of(0).map((s) => s.t));
  });
});
