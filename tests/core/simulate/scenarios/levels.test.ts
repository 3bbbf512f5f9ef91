import { describe, expect, test } from 'vitest';
import type { Equipment } from '#core/facility/system';
import { airBlower, drainValve, heater, plan, returnPump, thermostat } from '../../../_support/build-equipment';
import { room } from '../../../_support/build-facility';
import { safeguard, system } from '../../../_support/build-system';
import { type Ask, courseOf, floor, harmOf, level, salinity, timeTo, volume } from '../course';
import { dead, reef } from './reef';

const HOUR = 3600;

describe('when the return stops, the sump takes what comes down', () => {
  // 15 mm of 0.72 m², to the siphon-break: 10.8 L, which is 27 mm in the sump.
  const stopped = (parts: Parameters<typeof reef>[0], ask: Partial<Ask> = {}) =>
    courseOf(reef(parts), { hours: 4, fault: dead('return-pump'), ...ask });

  test('and holds it where its free space is enough', () => {
    const course = stopped({ sump: { rimMm: 40 } });
    expect(timeTo(course, 'water-on-floor')).toBe(Number.POSITIVE_INFINITY);
    expect(floor(course)).toBe(0);
    expect(level(course, 'display', HOUR)).toBeCloseTo(-15, 0);
    // Half a day's evaporation is not replaced and is not missed yet.
    expect(level(course, 'sump', 0.2 * HOUR) - level(course, 'sump', 0)).toBeCloseTo(27, 0);
  });

  test('and spills the rest where it is not', () => {
    const course = stopped({ sump: { rimMm: 10 } });
    expect(timeTo(course, 'water-on-floor')).toBeLessThan(300);
    const [before] = [level(course, 'sump', 0)];
    expect(floor(course)).toBeCloseTo(10.8 - 0.4 * (10 - before), 0);
  });

  test('down to the outlet once the siphon-break is clogged', () => {
    const course = stopped(
      {
        sump: { rimMm: 400 },
        more: { safeguards: system().safeguards.map((s) => (s.key === 'siphon-break' ? { ...s, tests: [] } : s)) },
      },
      { column: 'tested' },
    );
    expect(level(course, 'display')).toBeCloseTo(-60, 0);
    expect(level(course, 'sump', HOUR) - level(course, 'sump', 0)).toBeCloseTo((60 * 0.72) / 0.4, -1);
    expect(course.record.acted.has('siphon-break')).toBe(false);
  });

  test('and the break is thanked where it acts, also where moist air lets water condense on a cold tank', () => {
    const cold = reef({ more: { kind: 'cold-marine' } });
    const moist = {
      ...cold,
      rooms: [room({ temperatureC: 24, humidityPct: 70 })],
      systems: cold.systems.map((s) => ({ ...s, equipment: [returnPump(), airBlower()] })),
    };
    const course = courseOf(moist, { hours: 3, fresh: true, fault: dead('return-pump') });
    expect(course.record.acted.has('siphon-break')).toBe(true);
    expect(courseOf(moist, { hours: 3, fresh: true }).record.acted.has('siphon-break')).toBe(false);
  });
});

test('a blocked overflow lifts the display over its rim and runs the sump dry', () => {
  const course = courseOf(reef({}), {
    hours: 6,
    fresh: true,
    fault: (upset) => upset.blockedOverflows.add('display'),
  });
  // 40 mm of 0.72 m² at 3000 L/h take 35 s.
  expect(timeTo(course, 'water-on-floor')).toBeLessThan(120);
  expect(harmOf(course, 'pump-dry')?.tank).toBe('sump');
  // 100 mm of 0.4 m² less the 40 mm that the display takes to its rim: at most 11.2 L on the floor.
  expect(floor(course)).toBeGreaterThan(3);
  expect(floor(course)).toBeLessThan(11.3);
  // The pump lost its prime: the siphon then brings the display down again, and the pump does not find it.
  expect(level(course, 'display')).toBeLessThan(-10);
  expect(course.machine.mode.returnTotal).toBe(0);
});

describe('an open waste', () => {
  const open = (valve: Equipment, hours: number) =>
    courseOf(reef({ equipment: [valve], more: { safeguards: [safeguard({ key: 'unused' })] } }), {
      hours,
      fault: (upset) => upset.openWaste.add('drain-valve'),
    });

  test('takes the sump below its pump, and nothing comes back in when evaporation takes it lower still', () => {
    const course = open(drainValve({ wasteToMm: 120 }), 160);
    expect(harmOf(course, 'pump-dry')).toBeDefined();
    const salt = (t: number) => salinity(course, 'sump', t) * volume(course, 'sump', t);
    expect(level(course, 'sump', 160 * HOUR)).toBeLessThan(level(course, 'sump', 30 * HOUR) - 2);
    expect(Math.abs(salt(160 * HOUR) / salt(30 * HOUR) - 1)).toBeLessThan(1e-6);
  });

  test('described deeper than the tank empties it to its foot and the run goes on', () => {
    const course = open(drainValve({ wasteToMm: 5000 }), 160);
    expect(volume(course, 'sump')).toBeGreaterThan(0);
    expect(volume(course, 'sump')).toBeLessThan(0.03 * 0.12);
    expect(course.record.endS).toBe(160 * HOUR);
  });
});

test('a heater left in a cut-off sump boils it down to nothing, and the run comes to its end', () => {
  const site = reef({});
  const [base] = site.systems;
  if (!base) throw new Error('no system');
  const obeys = thermostat({ sensors: ['display-temperature'], lowC: 26.5, highC: 27 });
  const strong = heater({ ratedW: 2000, plan: plan({ regulation: obeys }) });
  const hot = { ...site, systems: [{ ...base, equipment: [strong, returnPump(), airBlower()] }] };
  const course = courseOf(hot, { hours: 168, fault: dead('return-pump') });
  expect(course.record.endS).toBe(168 * HOUR);
  expect(course.record.events.some((e) => e.what === 'sump: no water left')).toBe(true);
  expect(volume(course, 'sump')).toBeGreaterThan(0);
});

describe('a state that draws water', () => {
  const changing = (drawn: number) =>
    courseOf(
      reef({
        more: {
          states: [
            {
              name: 'water-change',
              lastsMin: { value: 60, origin: 'entered' },
              endsBy: 'person',
              drawnL: { value: drawn, origin: 'entered' },
            },
          ],
        },
      }),
      { hours: 3, state: 'water-change', fault: dead('return-pump') },
    );

  test.each([50, 150, 500])('of %i L leaves water everywhere and puts it back once the state is over', (drawn) => {
    const course = changing(drawn);
    const whole = (t: number) => 1000 * (volume(course, 'display', t) + volume(course, 'sump', t));
    for (const key of ['display', 'sump']) expect(volume(course, key, 1)).toBeGreaterThan(0.01);
    expect(whole(1)).toBeLessThan(552 - 0.95 * Math.min(drawn, 0.9 * 552));
    expect(whole(1.5 * HOUR)).toBeGreaterThan(0.97 * 552);
    expect(whole(1.5 * HOUR)).toBeLessThan(553);
    expect(salinity(course, 'display')).toBeCloseTo(salinity(course, 'display', 0), 1);
  });
});
