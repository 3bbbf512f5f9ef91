import { describe, expect, test } from 'vitest';
import type { Equipment, System } from '#core/facility/system';
import type { Upset } from '#core/faults/upset';
import type { Machine } from '#core/simulate/machine';
import { TEMPERATURE } from '#core/simulate/plant';
import { heater, plan, returnPump } from '../../_support/build-equipment';
import { circuit, facility, site } from '../../_support/build-facility';
import { alarm, safeguard, sensor, system } from '../../_support/build-system';
import { entered } from '../../_support/given';
import { type Course, courseOf, device, profileWith, temperature, TIGHT } from './course';
import { aloneIn, off, ownHeater, sealed } from './plain';

const HOUR = 3600;

/** Sealed water of 20 °C, probes and all. */
function cold(machine: Machine): void {
  sealed(machine);
  machine.initial[TEMPERATURE] = 20;
  for (const { at } of machine.probes) machine.initial[at] = 20;
}

type Wrong = (upset: Upset) => void;

/** The base reef with some equipment, and what is wrong. */
function reef(more: Partial<System>, fault?: Wrong, hours = 1, given: Parameters<typeof facility>[0] = {}): Course {
  return courseOf(facility({ systems: [system({ states: [], ...more })], ...given }), { hours, fault, fresh: true });
}

describe('power', () => {
  const backed = {
    site: site({ generator: { safeguard: 'generator', startsAfterS: entered(60), fuelH: entered(12) } }),
    safeguards: [safeguard({ key: 'generator' })],
    circuits: [circuit({ key: 'heat', backedBy: ['generator', 'ups'], upsMin: 10 })],
  };
  const lit = (fault: Wrong, hours: number) => {
    const course = reef(
      { equipment: [heater({ circuit: 'heat' })] },
      (u) => {
        u.utilityDown = true;
        fault(u);
      },
      hours,
      backed,
    );
    return device(course, 'heater-1')
      .phases.filter((p) => p.live)
      .flatMap((p) => [p.fromS]);
  };

  test('that comes back is back at its hour; what does not start by itself again stays off', () => {
    const back: Wrong = (u) => {
      u.utilityDown = true;
      u.utilityBackS = HOUR;
    };
    const pump = returnPump();
    const runs = (fault: Wrong, hours: number) => device(reef({ equipment: [pump] }, fault, hours), pump.key).working;
    expect(runs(back, 0.9)).toBe(false);
    expect(runs(back, 1.1)).toBe(true);
    expect(
      runs((u) => {
        back(u);
        u.noRestart.add(pump.key);
      }, 1.1),
    ).toBe(false);
  });

  test('of a generator that dies is gone after as long as it ran; dead batteries carry nothing', () => {
    expect(lit(() => undefined, 0.01)).toContain(0);
    expect(
      lit((u) => {
        u.batteriesFail = true;
      }, 0.01),
    ).not.toContain(0);
    const ends = (fault: Wrong) =>
      device(
        reef(
          { equipment: [heater({ circuit: 'heat' })] },
          (u) => {
            u.utilityDown = true;
            fault(u);
          },
          0.01,
          backed,
        ),
        'heater-1',
      ).phases;
    const [dies, runs] = [
      ends((u) => {
        u.generatorDiesS = 900;
      }),
      ends(() => undefined),
    ].map((p) => p.at(-1)?.fromS ?? 0);
    expect(dies).toBeLessThan(1200);
    expect(runs).toBeGreaterThan(8 * HOUR);
  });
});

describe('effect, room, clock and feed', () => {
  test('a weakened heater gives its part of the heat; a shifted set point moves the band', () => {
    const hot = (fault?: Wrong) =>
      courseOf(aloneIn(20, [ownHeater(300, { lowC: 30, highC: 31 })]), {
        hours: 1,
        fresh: true,
        fault,
        adjust: cold,
      });
    const rise = (c: Course) => temperature(c, 'display') - c.record.knots.value(0, 1);
    expect(off(rise(hot((u) => u.weakened.set('heater-1', 0.4))), 0.4 * rise(hot()))).toBeLessThan(1e-3);
    const kept = (by: number) =>
      temperature(
        courseOf(aloneIn(20, [ownHeater(300)]), {
          hours: 60,
          fresh: true,
          fault: (u) => u.setPointShift.set('heater-1', by),
        }),
        'display',
      );
    expect(kept(2) - kept(0)).toBeCloseTo(2, 0);
  });

  test('a room off by some kelvin moves water without heater as far', () => {
    const at = (by: number) =>
      temperature(
        courseOf(aloneIn(20, []), {
          hours: 400,
          fresh: true,
          fault: (u) => {
            u.roomShiftC = by;
          },
          adjust: (m) => {
            m.plant.evaporationWPerPa.fill(0);
          },
        }),
        'display',
      );
    expect(at(6) - at(0)).toBeCloseTo(6, 2);
  });

  test('a clock off by three hours switches three hours early', () => {
    const lamp: Equipment = {
      key: 'lamp',
      name: 'Lamp',
      type: 'light',
      tank: 'display',
      ratedW: entered(100),
      plan: plan({ regulation: { kind: 'hours', from: '09:00', to: '19:00', by: 'controller' } }),
    };
    const on = (off: number) =>
      courseOf(aloneIn(20, [lamp]), {
        hours: 24,
        at: 4,
        fresh: true,
        fault: (u) => {
          u.clockOffS = off;
        },
      }).record.switches.find((s) => s.on)?.t;
    expect(on(0)).toBeCloseTo(5 * HOUR, 3);
    expect(on(3 * HOUR)).toBeCloseTo(2 * HOUR, 3);
  });

  test('feed that falls in is given off within a day as nitrogen, and takes oxygen for as long', () => {
    const fed = { feedGPerDay: entered(1), feedProtein: entered(0.5) };
    const course = courseOf(aloneIn(25, [], profileWith(), fed), {
      hours: 30,
      fresh: true,
      fault: (u) => {
        u.feedDumpedG = 50;
      },
      adjust: (m) => {
        sealed(m);
        m.bacteria = [];
        m.plant.chemistry.excretion.fill(0);
        m.initial[3] = 100;
      },
    });
    const from = course.machine.plant.layout.followers.ammonia;
    const [x0, x1] = [course.record.knots.stateAt(0), course.record.knots.stateAt(course.record.endS)];
    expect(((x1[from] ?? 0) - (x0[from] ?? 0)) * 0.4).toBeCloseTo(50 * 0.5 * 0.0922, 6);
    expect(((x0[3] ?? 0) - (x1[3] ?? 0)) * 0.4).toBeCloseTo(0.5 * 50, 2);
  });
});

describe('telling', () => {
  test('a muted alarm is not raised', () => {
    const hot = {
      alarms: [alarm({ key: 'high', delayS: 0, on: { kind: 'sensor', sensor: 'sump-temperature', above: 20 } })],
    };
    expect(reef(hot).record.alarms.has('high')).toBe(true);
    expect(reef(hot, (u) => u.mutedAlarms.add('high')).record.alarms.has('high')).toBe(false);
  });
});

describe('a probe that lags', () => {
  const slow = (lagS: number) => [sensor({ key: 'display-temperature', tank: 'display', lagS: entered(lagS) })];

  test('follows a ramp its time constant late', () => {
    const course = courseOf(
      aloneIn(25, [ownHeater(400, { lowC: 60, highC: 61 })], profileWith(), { sensors: slow(600) }),
      { hours: 3, fresh: true, options: { tolerance: TIGHT }, adjust: cold },
    );
    const x = course.record.knots.stateAt(course.record.endS);
    const perS = 400 / (0.4 * course.machine.plant.heatCapacity);
    expect((x[1] ?? 0) - (x[course.machine.plant.layout.probes] ?? 0)).toBeCloseTo(perS * 600, 6);
  });

  test('is what regulation reads: the water swings further than its band', () => {
    const swing = (lagS: number) => {
      const { record } = courseOf(aloneIn(15, [ownHeater(800)], profileWith(), { sensors: slow(lagS) }), {
        hours: 12,
        fresh: true,
      });
      const values = Array.from({ length: record.knots.length }, (_, i) => i)
        .filter((i) => record.knots.time(i) > 6 * HOUR)
        .map((i) => record.knots.value(i, 1));
      return Math.max(...values) - Math.min(...values);
    };
    expect(swing(1)).toBeCloseTo(0.4, 1);
    expect(swing(900)).toBeGreaterThan(0.6);
  });
});
