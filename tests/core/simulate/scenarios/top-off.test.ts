import { describe, expect, test } from 'vitest';
import type { Equipment } from '#core/facility/system';
import { fault as skimmerFloods } from '#core/faults/modes/skimmer-floods';
import { fault as topOffOn } from '#core/faults/modes/top-off-on';
import { noUpset } from '#core/faults/upset';
import { levelControl, plan, skimmer, topOff } from '../../../_support/build-equipment';
import { sensor } from '../../../_support/build-system';
import { type Ask, courseOf, floor, inReservoir, level, salinity, timeTo, volume } from '../course';
import { befall, dead, reef } from './reef';

const HOUR = 3600;

describe('a top-off whose level switch hangs', () => {
  const hanging = (line: Parameters<typeof levelControl>[0], source = 'reservoir', litres = 60) => {
    const site = reef({
      sump: { rimMm: 300 },
      reservoir: { volumeL: litres },
      equipment: [topOff({ source, plan: plan({ regulation: levelControl(line) }) })],
    });
    return courseOf(site, { hours: 48, fault: befall(site, topOffOn, 'top-off') });
  };

  test('pumps for its longest run and not a second longer', () => {
    const course = hanging({});
    const before = inReservoir(course, 0);
    expect(before - inReservoir(course)).toBeCloseTo(20 / 6, 3);
    expect(course.record.acted.has('top-off-run-limit')).toBe(true);
    expect(salinity(course, 'display')).toBeGreaterThan(33);
  });

  test('is held to that limit also when it happened to be running', () => {
    const site = reef({
      equipment: [topOff({ plan: plan({ regulation: levelControl() }) })],
      reservoir: { volumeL: 60 },
    });
    const running = (machine: Parameters<NonNullable<Ask['adjust']>>[0]) => {
      for (const one of machine.devices) {
        if (one.type !== 'top-off' || !one.regulated.watch) continue;
        one.on = true;
        one.regulated.watch.active = true;
      }
    };
    const course = courseOf(site, { hours: 48, fault: befall(site, topOffOn, 'top-off'), adjust: running });
    expect(inReservoir(course, 0) - inReservoir(course)).toBeCloseTo(20 / 6, 3);
  });

  test('without a limit empties its reservoir, and salinity falls by what that held', () => {
    const course = hanging({ runLimitMin: undefined });
    expect(inReservoir(course)).toBeCloseTo(0, 6);
    const whole = (t: number) => volume(course, 'display', t) + volume(course, 'sump', t);
    expect(salinity(course, 'display', 6 * HOUR)).toBeCloseTo(
      (salinity(course, 'display', 0) * whole(0)) / whole(6 * HOUR),
      2,
    );
    expect(salinity(course, 'display', 6 * HOUR)).toBeLessThan(33);
  });

  test('fed from the mains never ends: the sump runs over and the salt goes', () => {
    const course = hanging({ runLimitMin: undefined }, 'mains');
    expect(timeTo(course, 'water-on-floor')).toBeLessThan(10 * HOUR);
    expect(salinity(course, 'display')).toBeLessThan(15);
    expect(floor(course)).toBeGreaterThan(500);
  });

  test('frozen full, lets the water fall and grow saltier', () => {
    const course = courseOf(reef({ equipment: [topOff()] }), { hours: 96, fault: dead('top-off') });
    expect(level(course, 'sump')).toBeLessThan(-10);
    expect(salinity(course, 'display')).toBeGreaterThan(salinity(course, 'display', 0) + 0.3);
  });
});

describe('a skimmer that floods because the sump stands too high', () => {
  const flooded = (equipment: Equipment[]) => {
    const site = reef({ reservoir: { volumeL: 100 }, equipment });
    return courseOf(site, { hours: 72, fault: befall(site, skimmerFloods, 'skimmer') });
  };
  const low = (course: ReturnType<typeof courseOf>) => salinity(course, 'display') - salinity(course, 'display', 0);

  test('loses salt water that the top-off replaces with fresh', () => {
    const course = flooded([
      skimmer(),
      topOff({ plan: plan({ regulation: levelControl({ runLimitMin: undefined }) }) }),
    ]);
    expect(timeTo(course, 'water-on-floor')).toBeLessThan(24 * HOUR);
    expect(floor(course)).toBeGreaterThan(50);
    // A hundred and more litres of the 550 exchanged for fresh water.
    expect(low(course)).toBeLessThan(-3);
  });

  test('without a top-off spills until the level is down again, and no more', () => {
    const course = flooded([skimmer()]);
    expect(floor(course)).toBeLessThan(20);
    expect(low(course)).toBeGreaterThan(-0.5);
  });

  test('does so twice as fast where there are two', () => {
    const second = skimmer({ key: 'skimmer-2', name: 'Skimmer 2' });
    const [one, two] = [flooded([skimmer()]), flooded([skimmer(), second])];
    const early = 0.2 * HOUR;
    expect(floor(two, early) / floor(one, early)).toBeGreaterThan(1.7);
  });
});

test('a reservoir that siphons over is found empty and not filled again, as one behind a top-off that hangs', () => {
  const site = reef({ sump: { rimMm: 300 }, reservoir: { volumeL: 10 }, equipment: [topOff()] });
  const course = courseOf(site, { hours: 30, fault: (upset) => upset.siphoning.add('top-off') });
  expect(inReservoir(course)).toBeCloseTo(0, 6);
});

test('a level switch that floods the skimmer is the one of its own sump, in whatever order things are described', () => {
  const elsewhere = topOff({
    key: 'other',
    tank: 'display',
    plan: plan({ regulation: levelControl({ sensor: 'high' }) }),
  });
  const site = reef({ equipment: [elsewhere, topOff(), skimmer()] });
  const [system] = site.systems;
  if (!system) throw new Error('the reef is a system');
  const given = {
    ...system,
    sensors: [...system.sensors, sensor({ key: 'high', quantity: 'level', tank: 'display' })],
  };
  const misled = (described: typeof given) => {
    const upset = noUpset();
    skimmerFloods.befall(upset, { kind: 'equipment', key: 'skimmer', name: 'Skimmer' }, site, described);
    return [...upset.probes.keys()];
  };
  expect(misled(given)).toEqual(['sump-level']);
  expect(misled({ ...given, equipment: [...given.equipment].reverse() })).toEqual(['sump-level']);
});
