import { describe, expect, test } from 'vitest';
import type { System } from '#core/facility/system';
import { oxygenWithout } from '#core/review/oxygen-without';
import { airBlower, plan, skimmer } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { REVIEWED_ON, stock, tank } from '../../_support/build-system';
import { entered } from '../../_support/given';
import { smallSystem } from '../../_support/small-facility';

const always = { kind: 'always', by: 'controller' } as const;
const noReturn = { drainDownMm: undefined, outletMm: undefined, returnShare: undefined };
const off = plan({ states: [{ state: 'treatment', then: 'off', by: 'person' }], regulation: always });

/** One tank whose air comes from one blower and one skimmer, with so much fish. */
function of(fish: number, blower = plan({ regulation: always }), foam = plan({ regulation: always })): System {
  const small = smallSystem();
  return {
    ...small,
    tanks: [tank({ ...noReturn, siphonBreakMm: undefined, siphonSafeguard: undefined, surfaceM2: entered(0.2) })],
    stock: [stock({ count: fish })],
    equipment: [
      ...small.equipment.filter(({ type }) => type === 'heater'),
      airBlower({ tank: 'display', stones: [{ tank: 'display', count: 2 }], plan: blower }),
      skimmer({ tank: 'display', plan: foam }),
    ],
  };
}
const without = (system: System) => oxygenWithout(facility({ systems: [system] }), system, 'treatment', REVIEWED_ON);

describe('the oxygen without what a treatment stops', () => {
  test('is as the plans say, sooner with more fish and with less air left, and holds where enough is', () => {
    const few = without(of(20, off, off));
    const many = without(of(60, off, off));
    expect(few).toMatchObject({ isAssumed: false, why: null });
    expect(many?.stopped).toHaveLength(2);
    expect(many?.hours ?? Infinity).toBeLessThan(few?.hours ?? Infinity);
    const withAir = without(of(60, plan({ regulation: always }), off));
    expect(withAir?.hours ?? Infinity).toBeGreaterThan(many?.hours ?? Infinity);
    expect(withAir?.leastMgL ?? 0).toBeGreaterThan(many?.leastMgL ?? Infinity);
  });

  test('is never longer with every figure at its bad end', () => {
    const many = without(of(60, off, off));
    expect(many?.badHours ?? Infinity).toBeLessThanOrEqual((many?.hours ?? Infinity) * 1.001);
  });

  test('takes the skimmer as off where no plan speaks of it, and says so', () => {
    expect(without(of(20))).toMatchObject({ isAssumed: true, stopped: [expect.any(String)] });
  });

  test('is nothing to work out where nothing that brings oxygen in is stopped', () => {
    expect(without({ ...smallSystem() })).toBeNull();
  });
});
