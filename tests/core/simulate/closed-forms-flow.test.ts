import { describe, expect, test } from 'vitest';
import type { Equipment } from '#core/facility/system';
import type { Facility } from '#core/facility/facility';
import type { Machine } from '#core/simulate/machine';
import { STRIDE, TEMPERATURE } from '#core/simulate/plant';
import { drainDownDepth, drainDownVolume } from '#core/water/drain-down';
import { heater, plan, returnPump } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { stock, sump, system, tank } from '../../_support/build-system';
import { type Course, courseOf, level, profileWith, salinity, temperature, TIGHT, volume } from './course';
import { off, sealed } from './plain';

const HOUR = 3600;
const NEAR = 1e-6;
const L_PER_H = 1 / 3.6e6;

/** Two displays of unlike size over one sump, a return of 2000 L/h shared 3 to 1, no heat of its own. */
function pair(more: Equipment[] = []): Facility {
  const bare = { siphonBreakMm: undefined, siphonSafeguard: undefined, drainDownMm: 20, outletMm: 20 };
  return facility({
    profiles: [profileWith()],
    systems: [
      system({
        tanks: [
          tank({ ...bare, volumeL: 300, surfaceM2: 0.6, returnShare: 3 }),
          tank({ ...bare, key: 'side', name: 'Side', volumeL: 80, surfaceM2: 0.2, returnShare: 1 }),
          sump({ volumeL: 120 }),
        ],
        equipment: [returnPump({ flowLPerH: 2000, heatToWater: 0 }), ...more],
        sensors: [],
        stock: [stock({ count: 1, eachG: 1, profile: 'exact' })],
        alarms: [],
        states: [],
      }),
    ],
  });
}

function heated(tankKey: string, watts: number): Equipment {
  return heater({ key: `heat-${tankKey}`, tank: tankKey, ratedW: watts, plan: plan() });
}

const tight = { options: { tolerance: TIGHT }, fresh: true };

function knotTimes({ record }: Course): number[] {
  return Array.from({ length: record.knots.length }, (_, i) => record.knots.time(i)).filter((t) => t > 0);
}

/** Only the overflow drains; the pipe of the return does not siphon. */
function withoutSiphon(machine: Machine): void {
  sealed(machine);
  for (const node of machine.nodes) node.siphon = false;
}

describe('when the return stops', () => {
  const stopped = (adjust: (machine: Machine) => void) =>
    courseOf(pair(), { ...tight, hours: 0.5, fault: (upset) => upset.health.set('return-pump', 'dead'), adjust });

  test('the layer over the crest drains as e to the minus t·Q over its volume', () => {
    const course = stopped(withoutSiphon);
    for (const [key, whole, layer, flow] of [
      ['display', 0.3, 0.012, 1500],
      ['side', 0.08, 0.004, 500],
    ] as const) {
      const rate = (flow * L_PER_H) / layer;
      for (const t of knotTimes(course))
        expect(off(volume(course, key, t), whole - layer + layer * Math.exp(-rate * t))).toBeLessThan(NEAR);
    }
  });

  test('the sump takes what comes down: area times depth of each tank', () => {
    const course = stopped(sealed);
    const down = [0.6, 0.2].map((area) => drainDownVolume(area, drainDownDepth(0.02, 0.02, 0.02), 0));
    expect(off(volume(course, 'sump'), 0.12 + down.reduce((sum, v) => sum + v, 0))).toBeLessThan(NEAR);
    expect(level(course, 'display')).toBeCloseTo(-20, 4);
    expect(level(course, 'side')).toBeCloseTo(-20, 4);
  });

  test('sump and tanks part: each warms or cools by itself', () => {
    const course = courseOf(pair([heated('sump', 200)]), {
      ...tight,
      hours: 2,
      fault: (upset) => upset.health.set('return-pump', 'dead'),
      adjust: sealed,
    });
    const { plant } = course.machine;
    expect(off(temperature(course, 'display'), 25)).toBeLessThan(NEAR);
    // Counted from when the water has come down; it comes at the sump's own temperature, which is still 25 °C but for a hair.
    const drained = volume(course, 'sump');
    const risen = (200 * 2 * HOUR) / (plant.heatCapacity * drained);
    expect(off(temperature(course, 'sump') - 25, risen)).toBeLessThan(2e-3);
    expect(off((temperature(course, 'sump') - 25) * drained * plant.heatCapacity, 200 * 2 * HOUR)).toBeLessThan(NEAR);
  });
});

describe('while the return runs', () => {
  test('sump and one tank of unlike temperature meet at the mean by volume, at the rate q·(1/V1 + 1/V2)', () => {
    const site = pair();
    const [base] = site.systems;
    const single = { ...site, systems: base ? [{ ...base, tanks: base.tanks.filter((t) => t.key !== 'side') }] : [] };
    const course = courseOf(single, {
      ...tight,
      hours: 2,
      adjust: (machine) => {
        sealed(machine);
        machine.initial[TEMPERATURE] = 20;
        machine.initial[STRIDE + TEMPERATURE] = 30;
      },
    });
    const q = 2000 * L_PER_H;
    const mean = (0.3 * 20 + 0.12 * 30) / 0.42;
    for (const t of knotTimes(course)) {
      const fade = Math.exp(-q * t * (1 / 0.3 + 1 / 0.12));
      expect(off(temperature(course, 'display', t), mean + (20 - mean) * fade)).toBeLessThan(NEAR);
      expect(off(temperature(course, 'sump', t), mean + (30 - mean) * fade)).toBeLessThan(NEAR);
    }
  });

  test('salt mixes as heat does', () => {
    const course = courseOf(pair(), {
      ...tight,
      hours: 6,
      adjust: (machine) => {
        sealed(machine);
        // Half the salt of the side tank.
        machine.initial[STRIDE + 2] = (machine.initial[STRIDE + 2] as number) / 2;
      },
    });
    const even = (35 * (0.3 + 0.04 + 0.12)) / 0.5;
    for (const key of ['display', 'side', 'sump']) expect(off(salinity(course, key), even)).toBeLessThan(NEAR);
  });

  test('the sump stands at the mean of what flows into it, each tank above it by power over flow', () => {
    const course = courseOf(pair([heated('display', 90), heated('side', 60)]), {
      ...tight,
      hours: 400,
      adjust: (machine) => {
        sealed(machine);
        // The sump alone loses heat, so that the system comes to rest.
        machine.plant.lossWPerK[machine.plant.hub] = 30;
      },
    });
    const { plant } = course.machine;
    const sumpC = temperature(course, 'sump');
    const [display, side] = [temperature(course, 'display'), temperature(course, 'side')];
    expect(off(sumpC, 21 + 150 / 30)).toBeLessThan(NEAR);
    expect(off(display - sumpC, 90 / (plant.heatCapacity * 1500 * L_PER_H))).toBeLessThan(NEAR);
    expect(off(side - sumpC, 60 / (plant.heatCapacity * 500 * L_PER_H))).toBeLessThan(NEAR);
    // What flows in is warmer than the sump by what the sump loses.
    const mixed = (3 * display + side) / 4;
    expect(off(mixed - sumpC, 150 / (plant.heatCapacity * 2000 * L_PER_H))).toBeLessThan(NEAR);
  });
});
