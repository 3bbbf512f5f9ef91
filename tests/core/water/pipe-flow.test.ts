import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCubicMetresPerSecond, toCubicMetresPerSecond } from '#core/units/flow';
import { pipeFriction, pipeVelocity, pumpPower, turnover } from '#core/water/pipe-flow';
import { argument, cases, miss } from './reference';

test.each(cases('pipe-velocity'))('speed: %s', (_name, row) => {
  const speed = pipeVelocity(toCubicMetresPerSecond(argument(row, 0), 'galUS/min'), 0.0254 * argument(row, 1));
  expect(miss(row, speed / 0.3048)).toBeLessThanOrEqual(1);
});

test.each(cases('pipe-friction'))('friction: %s', (_name, row) => {
  const head = pipeFriction(argument(row, 0), argument(row, 1), argument(row, 2), argument(row, 3));
  expect(miss(row, head)).toBeLessThanOrEqual(1);
});

describe('misprinted powers', () => {
  // pe-calc.com: 250 gal/min, 6 in, C 150, 850 ft.
  const usForm = (q: number, c: number) => 0.2083 * 100 ** 1.852 * (q / c / 6 ** 4.8655) * 8.5;

  test('250^1.852 is 27605 and not 41842, 150^1.852 10718 and not 16847', () => {
    expect(250 ** 1.852).toBeCloseTo(27_605, -2);
    expect(150 ** 1.852).toBeCloseTo(10_718, -2);
  });

  test('with the true powers the US form gives 3.77 ft, and ours is within 2 % of it', () => {
    const flow = toCubicMetresPerSecond(250, 'galUS/min');
    const ours = pipeFriction(flow, 6 * 0.0254, 850 * 0.3048, 150) / 0.3048;
    expect(usForm(250 ** 1.852, 150 ** 1.852)).toBeCloseTo(3.77, 2);
    expect(Math.abs(ours / usForm(250 ** 1.852, 150 ** 1.852) - 1)).toBeLessThan(0.02);
    expect(Math.abs(ours / usForm(41_842, 10_718) - 1)).toBeGreaterThan(0.3);
  });

  test('the form in pounds per square inch gives the same within 1 %', () => {
    // fire.ezvirtualtools.com: 4.52·Q^1.85/(C^1.85·d^4.87) psi/ft; 2.31 ft of water to a psi (2.307).
    const psi = (850 * 4.52 * 250 ** 1.85) / (150 ** 1.85 * 6 ** 4.87);
    const ours = pipeFriction(toCubicMetresPerSecond(250, 'galUS/min'), 6 * 0.0254, 850 * 0.3048, 150) / 0.3048;
    expect(Math.abs(ours / (2.307 * psi) - 1)).toBeLessThan(0.01);
  });
});

test('twice the flow is 3.6 times the friction, half the bore 29 times', () => {
  expect(pipeFriction(0.02, 0.1, 10, 150) / pipeFriction(0.01, 0.1, 10, 150)).toBeCloseTo(2 ** 1.852, 9);
  expect(pipeFriction(0.01, 0.05, 10, 150) / pipeFriction(0.01, 0.1, 10, 150)).toBeCloseTo(2 ** 4.87, 9);
});

test('lifting 10 m³/h of sea water by 4 m takes 112 W, as mass times g times height has it', () => {
  expect(pumpPower(1023.3, 10 / 3600, 4)).toBeCloseTo((1023.3 * 10 * 9.80665 * 4) / 3600, 9);
  expect(pumpPower(1023.3, 10 / 3600, 4)).toBeCloseTo(111.5, 1);
});

test('a turnover is volume over flow, and never without flow', () => {
  expect(turnover(1, fromCubicMetresPerSecond(1, 'm3/s') / 3600)).toBeCloseTo(3600, 9);
  expect(turnover(1, 0)).toBe(Number.POSITIVE_INFINITY);
  expect(turnover(0, 0)).toBe(0);
  expect(turnover(0, Number.NaN)).toBeNaN();
});

test('more flow is always faster and costs more head', () => {
  const flow = fc.double({ min: 1e-5, max: 1, noNaN: true });
  const bore = fc.double({ min: 0.01, max: 0.5, noNaN: true });
  fc.assert(
    fc.property(flow, bore, (q, d) => {
      return (
        pipeVelocity(1.1 * q, d) > pipeVelocity(q, d) && pipeFriction(1.1 * q, d, 5, 150) > pipeFriction(q, d, 5, 150)
      );
    }),
  );
});
