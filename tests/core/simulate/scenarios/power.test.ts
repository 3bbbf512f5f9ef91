import { describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import type { Circuit, Site } from '#core/facility/site';
import type { OperatingState } from '#core/facility/system';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import { airBlower, heater, plan, returnPump, thermostat } from '../../../_support/build-equipment';
import { circuit, facility, room, site } from '../../../_support/build-facility';
import { safeguard, stock, system } from '../../../_support/build-system';
import type { Given } from '../../../_support/given';
import { type Course, courseOf, device, oxygen, temperature, timeTo } from '../course';

const HOUR = 3600;

function reef(
  circuits: Circuit[],
  more: { site?: Given<Site>; fish?: number; states?: OperatingState[] } = {},
): Facility {
  return facility({
    site: site(more.site),
    rooms: [room({ temperatureC: 22 })],
    circuits,
    safeguards: [
      safeguard({ key: 'battery', kind: 'standby-power' }),
      safeguard({ key: 'generator', kind: 'standby-power' }),
    ],
    systems: [
      system({
        equipment: [
          heater({ ratedW: 300, circuit: 'pumps', plan: plan({ regulation: thermostat() }) }),
          returnPump(),
          airBlower(),
        ],
        stock: [stock({ count: more.fish ?? 60 })],
        ...(more.states ? { states: more.states } : {}),
      }),
    ],
  });
}

const UPS = { backedBy: ['ups' as const], upsMin: 60, upsSafeguard: 'battery' };

describe('an RCD takes the air with it where the air hangs on it', () => {
  /** The RCD of the pumps trips: every circuit of its group goes. */
  const tripped = (rcdOfAir: string) => {
    const facilityOf = reef([circuit(), circuit({ key: 'air', name: 'Air', rcd: rcdOfAir })]);
    return courseOf(facilityOf, {
      hours: 24,
      fault: (upset) => {
        for (const one of facilityOf.circuits) if (one.rcd === 'rcd-1') upset.deadCircuits.add(one.key);
      },
    });
  };

  test('then the fish run out of oxygen', () => {
    const course = tripped('rcd-1');
    expect(timeTo(course, 'oxygen')).toBeLessThan(10 * HOUR);
    expect(course.record.optimistic).toBe(true);
  });

  test('but not where the air has one of its own', () => {
    const course = tripped('rcd-2');
    expect(timeTo(course, 'oxygen')).toBe(Number.POSITIVE_INFINITY);
    expect(device(course, 'air-blower').working).toBe(true);
    expect(device(course, 'return-pump').working).toBe(false);
    expect(course.record.optimistic).toBe(false);
  });
});

describe('when the utility fails, a circuit lives as long as what backs it', () => {
  const generator = {
    startsAfterS: { value: 90, origin: 'entered' as const },
    fuelH: { value: 5, origin: 'entered' as const },
    safeguard: 'generator',
  };
  const failed = (
    backing: Given<Circuit>,
    more: { generatorFails?: boolean; column?: 'tested'; site?: Given<Site> } = {},
  ) =>
    courseOf(
      reef([circuit(), circuit({ key: 'air', name: 'Air', rcd: 'rcd-2', ...backing })], {
        site: more.site ?? { generator },
      }),
      {
        hours: 12,
        column: more.column ?? 'claimed',
        fault: (upset) => {
          upset.utilityDown = true;
          upset.generatorFails = more.generatorFails ?? false;
        },
      },
    );
  /** Seconds at which the blower's supply comes and goes. */
  const turns = (course: Course) => device(course, 'air-blower').phases.map((p) => [p.fromS, p.live]);
  /** Whether the water of the display still gains oxygen at a time: its stones are at work. */
  const stonesWork = (course: Course, t: number) => oxygen(course, 'display', t) > 5.5;

  test('a battery alone: its minutes', () => {
    const course = failed(UPS);
    expect(turns(course)).toEqual([
      [0, true],
      [HOUR, false],
    ]);
    expect(stonesWork(course, HOUR)).toBe(true);
    expect(stonesWork(course, 4 * HOUR)).toBe(false);
    expect(course.record.acted.has('battery')).toBe(true);
  });

  test('a generator alone: a gap until it runs, then its fuel', () => {
    const course = failed({ backedBy: ['generator'] });
    expect(turns(course)).toEqual([
      [0, false],
      [90, true],
      [90 + 5 * HOUR, false],
    ]);
    expect(stonesWork(course, 5 * HOUR)).toBe(true);
    expect(stonesWork(course, 9 * HOUR)).toBe(false);
    expect(course.record.acted.has('generator')).toBe(true);
  });

  test('a battery that bridges the gap, then the generator, then nothing', () => {
    const course = failed({ ...UPS, backedBy: ['ups', 'generator'] });
    const live = turns(course).filter(([, on]) => on);
    expect(live.map(([from]) => from)).toEqual([0, 90, HOUR]);
    expect(turns(course).at(-1)).toEqual([90 + 5 * HOUR, false]);
    expect(course.record.acted).toEqual(new Set(['battery', 'generator', 'siphon-break']));
  });

  test('a generator that does not start leaves the battery', () => {
    const course = failed({ ...UPS, backedBy: ['ups', 'generator'] }, { generatorFails: true });
    expect(turns(course)).toEqual([
      [0, true],
      [HOUR, false],
    ]);
    expect(course.record.acted.has('generator')).toBe(false);
  });

  test('what nobody has tested carries nothing in the column as tested', () => {
    const site = reef([circuit(), circuit({ key: 'air', name: 'Air', rcd: 'rcd-2', ...UPS })]);
    const bare = { ...site, safeguards: site.safeguards.map((s) => ({ ...s, tests: [] })) };
    const course = courseOf(bare, {
      hours: 1,
      column: 'tested',
      fault: (upset) => {
        upset.utilityDown = true;
      },
    });
    expect(device(course, 'air-blower').working).toBe(false);
  });
});

describe('a feeding pause', () => {
  const pausing = (endSafeguard: string | undefined, neverEnds: boolean) => {
    const states: OperatingState[] = [
      {
        name: 'feeding',
        lastsMin: { value: 20, origin: 'entered' },
        endsBy: 'controller',
        ...(endSafeguard ? { endSafeguard } : {}),
      },
    ];
    return courseOf(reef([circuit(), circuit({ key: 'air', name: 'Air', rcd: 'rcd-2' })], { states }), {
      hours: 40,
      state: 'feeding',
      fault: (upset) => {
        upset.stateNeverEnds = neverEnds;
      },
    });
  };
  const startsAgain = (course: Course) => device(course, 'return-pump').working;

  test('that ends when it should brings everything back', () => {
    const course = pausing(undefined, false);
    expect(startsAgain(course)).toBe(true);
    expect(course.record.events.find((e) => e.what === 'the operating state ends')?.t).toBeCloseTo(1200, 3);
    expect(timeTo(course, 'temperature')).toBe(Number.POSITIVE_INFINITY);
  });

  test('that nobody ends leaves the display without the sump, and with it without heat, for good', () => {
    const course = pausing(undefined, true);
    expect(startsAgain(course)).toBe(false);
    expect(course.record.events.some((e) => e.what === 'the operating state ends')).toBe(false);
    expect(temperature(course, 'display')).toBeLessThan(23.5);
    expect(temperature(course, 'sump')).toBeCloseTo(25, 0);
  });

  test('that a hard timer ends is over on time whoever forgot it, and the timer is thanked', () => {
    const course = pausing('feeding-end', true);
    expect(startsAgain(course)).toBe(true);
    expect(course.record.acted.has('feeding-end')).toBe(true);
  });
});

describe('height above the sea', () => {
  const at = (altitudeM: number) =>
    courseOf(reef([circuit(), circuit({ key: 'air', name: 'Air', rcd: 'rcd-2' })], { site: { altitudeM }, fish: 30 }), {
      hours: 1,
    });

  test('lowers oxygen, by what saturation loses to the thinner air and no less', () => {
    const [low, high] = [at(0), at(1500)];
    const loss = oxygen(low, 'display') - oxygen(high, 'display');
    const full = (course: Course) =>
      oxygenSaturation(temperature(course, 'display'), 35, course.machine.plant.pressureAtm);
    expect(high.machine.plant.pressureAtm).toBeCloseTo(0.8345, 3);
    expect(loss).toBeGreaterThan(0.95 * (full(low) - full(high)));
    expect(loss).toBeLessThan(1.05 * (full(low) - full(high)));
  });
});
