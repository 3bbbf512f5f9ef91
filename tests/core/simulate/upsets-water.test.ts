import { describe, expect, test } from 'vitest';
import type { Equipment, System } from '#core/facility/system';
import type { Upset } from '#core/faults/upset';
import { dilutionOverflowing } from '#core/water/dilution-overflowing';
import { plan } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { reservoir, sump, system, tank } from '../../_support/build-system';
import { entered } from '../../_support/given';
import {
  type Course,
  courseOf,
  floor,
  inReservoir,
  level,
  profileWith,
  salinity,
  temperature,
  TIGHT,
  volume,
} from './course';
import { aloneIn, off, sealed } from './plain';

const HOUR = 3600;

type Wrong = (upset: Upset) => void;

/** The base reef with some equipment, and what is wrong. */
function reef(more: Partial<System>, fault?: Wrong, hours = 1, given: Parameters<typeof facility>[0] = {}): Course {
  return courseOf(facility({ systems: [system({ states: [], ...more })], ...given }), { hours, fault, fresh: true });
}

function supply(given: Partial<Equipment> = {}): Equipment {
  return {
    key: 'supply',
    name: 'Supply',
    type: 'supply',
    tank: 'display',
    source: 'mains',
    flowLPerH: entered(100),
    plan: plan(),
    ...given,
  };
}

describe('supply and standpipe', () => {
  const fed = (given: Partial<Equipment> = {}) =>
    aloneIn(25, [supply({ bringsSalinity: entered(0), bringsC: entered(15), ...given })], profileWith(), {
      tanks: [
        tank({ volumeL: 400, surfaceM2: 0.8, drainAboveMm: 5, siphonBreakMm: undefined, siphonSafeguard: undefined }),
      ],
    });

  test('thin the water out by e^(−Qt/V) and none of it is on the floor', () => {
    const course = courseOf(fed(), {
      hours: 12,
      fresh: true,
      options: { tolerance: TIGHT },
      adjust: (machine) => {
        sealed(machine);
        machine.initial[0] = 0.404;
        machine.initial[2] = ((machine.initial[2] as number) * 0.404) / 0.4;
      },
    });
    const start = course.record.knots.stateAt(0);
    expect(level(course, 'display')).toBeCloseTo(5, 0);
    expect(floor(course)).toBe(0);
    const thinned = dilutionOverflowing(1, 0, 0.404 + 1 / 3600, 0.1 * 12);
    const left = (course.record.knots.stateAt(course.record.endS)[2] as number) / (start[2] as number);
    expect(off(left, thinned)).toBeLessThan(2e-3);
  });

  test('a supply sets the temperature it brings; with what it brings changed by an upset, that one', () => {
    const long = (fault?: Wrong) => courseOf(fed(), { hours: 60, fresh: true, fault, adjust: sealed });
    expect(temperature(long(), 'display')).toBeCloseTo(15, 2);
    expect(
      temperature(
        long((u) => u.brings.set('supply', { temperatureC: 8 })),
        'display',
      ),
    ).toBeCloseTo(8, 2);
    expect(
      salinity(
        long((u) => u.brings.set('supply', { salinity: 20 })),
        'display',
      ),
    ).toBeCloseTo(20, 2);
  });

  test('what blocks the only way out of a tank blocks its standpipe: the water goes over the rim', () => {
    const course = courseOf(fed(), { hours: 3, fresh: true, fault: (u) => u.blockedOverflows.add('display') });
    expect(floor(course)).toBeGreaterThan(100);
  });
});

describe('oxidant of the mains', () => {
  const cleaner: Equipment = {
    key: 'carbon',
    name: 'Carbon',
    type: 'dechlorinator',
    tank: 'display',
    removes: entered(1),
    plan: plan(),
  };
  const mains = aloneIn(25, [supply(), cleaner], profileWith({ quantity: 'oxidant', above: 0.3 }), {
    tanks: [
      tank({ volumeL: 400, surfaceM2: 0.8, drainAboveMm: 5, siphonBreakMm: undefined, siphonSafeguard: undefined }),
    ],
  });
  const fed = { ...mains, site: { ...mains.site, mains: { oxidantMgL: entered(0.8) } } };
  const arrived = (fault?: Wrong) => {
    const { machine, record } = courseOf(fed, { hours: 40, fresh: true, fault });
    return record.knots.stateAt(record.endS)[machine.plant.layout.followers.oxidant] ?? Number.NaN;
  };

  test('stays out while the dechlorinator works, and comes to the mains’ own figure when it does not', () => {
    expect(arrived()).toBe(0);
    expect(arrived((u) => u.health.set('carbon', 'dead'))).toBeCloseTo(0.8, 3);
    expect(arrived((u) => u.weakened.set('carbon', 0.25))).toBeCloseTo(0.6, 3);
    expect(
      arrived((u) => {
        u.mainsOxidantPasses = 0.5;
      }),
    ).toBeCloseTo(0.4, 3);
  });

  test('runs in with a hose, whatever else is there', () => {
    expect(arrived((u) => u.hoses.set('display', 1e-4))).toBeGreaterThan(0.5);
  });
});

describe('water', () => {
  test('runs out of a hole down to it, onto the floor', () => {
    const leak: Wrong = (u) => u.leaks.set('display', { flow: 2e-5, depth: 0.1 });
    const course = courseOf(aloneIn(25, []), { hours: 40, fresh: true, fault: leak, adjust: sealed });
    expect(level(course, 'display')).toBeCloseTo(-100, 1);
    expect(floor(course)).toBeCloseTo(80, 1);
    // Torricelli: the time in which it all runs out is twice that at the first pace.
    expect(
      level(
        courseOf(aloneIn(25, []), { hours: (2 * 0.08) / 2e-5 / HOUR / 2, fresh: true, fault: leak, adjust: sealed }),
        'display',
      ),
    ).toBeCloseTo(-75, 0);
  });

  test('siphons out of a reservoir without power until it is empty, and an empty or salted reservoir is that', () => {
    const base = { tanks: [tank(), sump({ rimMm: 400 }), reservoir({ volumeL: 20 })] };
    const dark: Wrong = (u) => {
      u.utilityDown = true;
    };
    expect(inReservoir(reef(base, dark, 4))).toBeCloseTo(20, 6);
    expect(
      inReservoir(
        reef(
          base,
          (u) => {
            dark(u);
            u.siphoning.add('top-off');
          },
          20,
        ),
      ),
    ).toBeCloseTo(0, 6);
    expect(inReservoir(reef(base, (u) => u.emptyReservoirs.add('reservoir')))).toBe(0);
    const salted = (fault?: Wrong) =>
      salinity(
        reef(
          base,
          (u) => {
            u.siphoning.add('top-off');
            fault?.(u);
          },
          20,
        ),
        'sump',
      );
    expect(salted((u) => u.reservoirSalinity.set('reservoir', 35))).toBeGreaterThan(salted() + 0.5);
  });

  test('poured back at the end of a state cold, fresh or chlorinated is mixed in as such', () => {
    const change: Partial<System> = {
      states: [{ name: 'water-change', lastsMin: entered(10), endsBy: 'person', drawnL: entered(100) }],
    };
    const one = aloneIn(25, [], profileWith(), change);
    const course = (water: Upset['newWater']) =>
      courseOf(one, {
        hours: 0.5,
        fresh: true,
        state: 'water-change',
        adjust: sealed,
        fault: (u) => {
          u.newWater = water;
        },
      });
    expect(temperature(course({ temperatureC: 5 }), 'display')).toBeCloseTo(0.75 * 25 + 0.25 * 5, 6);
    const salt = salinity(course({}), 'display');
    expect(off(salinity(course({ salinity: 0 }), 'display'), 0.75 * salt)).toBeLessThan(1e-6);
    const { machine, record } = course({ oxidantMgL: 2 });
    expect(record.knots.stateAt(record.endS)[machine.plant.layout.followers.oxidant]).toBeCloseTo(0.5, 9);
    expect(volume(course(null), 'display')).toBeCloseTo(0.4, 9);
  });
});
