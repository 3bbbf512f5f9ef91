import { expect, test } from 'vitest';
import { blindSpots } from '#core/review/rules/facts/watched-power';
import { heater, returnPump } from '../../../_support/build-equipment';
import { circuit, facility, site } from '../../../_support/build-facility';
import { safeguard, system } from '../../../_support/build-system';
import { entered } from '../../../_support/given';
import { device } from '../course';
import { befallen } from './case-support';

const HOUR = 3600;

test('4,000 gallons of fuel carried an aquarium for about four days: 158 L an hour, and not an hour more (starnewsonline.com, 2006-01-03)', () => {
  const fuelH = 15_100 / 158;
  expect(fuelH / 24).toBeGreaterThan(3.9);
  expect(fuelH / 24).toBeLessThan(4.1);
  const base = facility();
  const stormy = facility({
    site: site({ generator: { safeguard: 'battery', startsAfterS: entered(20), fuelH: entered(fuelH) } }),
    circuits: base.circuits.map((one) => circuit({ ...one, backedBy: one.key === 'pumps' ? ['generator'] : [] })),
    safeguards: [
      ...base.safeguards.filter(({ key }) => key !== 'battery'),
      safeguard({ key: 'battery', kind: 'standby-power' }),
    ],
  });
  const powered = (hours: number) =>
    device(befallen(stormy, 'utility-fails', { hours, fresh: true }), 'return-pump').powered;
  expect(powered(0.5)).toBe(true);
  expect(powered(95)).toBe(true);
  expect(powered(97)).toBe(false);
  // It starts and dies again after hours, when everybody has gone.
  const dies = (hours: number) =>
    device(befallen(stormy, 'generator-dies', { hours, fresh: true }), 'return-pump').powered;
  expect(dies(3)).toBe(true);
  expect(dies(5)).toBe(false);
});

test('a heater whose probe is lost goes off (common practice, no source)', () => {
  const course = befallen(facility(), 'control-probe-lost', { hours: 2, fresh: true }, 'sump-temperature');
  expect(device(course, 'heater-1')).toMatchObject({ command: false, drawing: false });
});

test('a watts range of a 500 W heater passes a healthy one and catches a dead and a half-dead element (common practice, no source)', () => {
  const range = (minW: number, maxW: number) => heater({ ratedW: 500, wattsRange: { minW, maxW } });
  const inside = ({ wattsRange }: ReturnType<typeof range>, watts: number) =>
    watts >= (wattsRange?.minW ?? 0) && watts <= (wattsRange?.maxW ?? 0);
  const narrow = range(450, 550);
  expect(blindSpots(narrow)).toEqual([]);
  expect([500, 250, 0].map((watts) => inside(narrow, watts))).toEqual([true, false, false]);
  expect(blindSpots(range(200, 550)).map(({ what }) => what)).toEqual(['dead element']);
  expect(blindSpots(range(20, 550)).map(({ what }) => what)).toEqual(['idle']);
});

test('a dip of the power after which the chiller waits: heat runs again, cooling does not (chicagotribune.com, 2008-07-18)', () => {
  const base = system();
  const dipped = facility({
    systems: [
      system({
        equipment: [
          ...base.equipment.filter(({ type }) => type !== 'return-pump'),
          returnPump(),
          { ...heater({ key: 'chiller', name: 'Chiller' }), type: 'chiller', coolingW: entered(300) },
        ],
      }),
    ],
  });
  const course = befallen(dipped, 'cooling-not-restarted', { hours: 0.5, fresh: true });
  expect(device(course, 'return-pump').powered).toBe(true);
  expect(device(course, 'chiller').powered).toBe(false);
  expect(course.record.endS).toBeCloseTo(0.5 * HOUR, 6);
});
