import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shareOfAmmonia } from '#core/simulate/ammonia-table';
import { lawsOf } from '#core/simulate/law-table';
import { emptyLaws } from '#core/simulate/plant';
import { gasTransferFactor } from '#core/water/gas-transfer';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import { respirationFactor } from '#core/water/respiration';
import { unionisedShare } from '#core/water/unionised-ammonia';
import { vapourPressure } from '#core/water/vapour-pressure';

// What stands in for the laws within a run is held against the laws themselves, which are checked against published values.
const temperature = fc.double({ min: -8, max: 50, noNaN: true });
const salinity = fc.double({ min: 0, max: 60, noNaN: true });
const SEED = { numRuns: 3000, seed: 20_261_126 };

function off(found: number | undefined, law: number): number {
  return Math.abs((found ?? Number.NaN) / law - 1);
}

test('vapour, gas exchange, breath and saturation are those of the laws to a part in a thousand million, whatever the air', () => {
  const laws = emptyLaws(1);
  const pressure = fc.oneof(fc.constant(1), fc.double({ min: 0.3, max: 1.6, noNaN: true }));
  fc.assert(
    fc.property(temperature, salinity, pressure, (t, s, p) => {
      lawsOf(t, s, p, 0, laws);
      expect(off(laws.vapour[0], vapourPressure(t))).toBeLessThan(1e-9);
      expect(off(laws.gas[0], gasTransferFactor(t))).toBeLessThan(1e-9);
      expect(off(laws.breath[0], respirationFactor(t))).toBeLessThan(1e-9);
      expect(off(laws.saturation[0], oxygenSaturation(t, s, p))).toBeLessThan(1e-9);
    }),
    SEED,
  );
});

test('the un-ionised share is that of the law to two millionths', () => {
  fc.assert(
    fc.property(fc.double({ min: 5, max: 10, noNaN: true }), temperature, salinity, (ph, t, s) => {
      expect(off(shareOfAmmonia(ph, t, s), unionisedShare(ph, 'nbs', t, s))).toBeLessThan(2e-6);
    }),
    SEED,
  );
});
