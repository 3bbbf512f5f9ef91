import { proofsOf } from '#core/states/proofs';
import { endsItself, hasHandsIn } from '#core/states/state-end';
import { describe, expect, test } from 'vitest';
import { heater, plan, returnPump, skimmer } from '../../_support/build-equipment';
import { sensor, system } from '../../_support/build-system';

const flow = sensor({ key: 'flow', name: 'Return flow', quantity: 'flow' });
const level = sensor({ key: 'level', name: 'Sump level', quantity: 'level' });
const off = (state: 'feeding' | 'water-change') => plan({ states: [{ state, then: 'off', by: 'controller' }] });

describe('a state ends by itself', () => {
  test.each([
    ['feeding', 'controller', true],
    ['feeding', 'hard-wired', true],
    ['feeding', 'person', false],
    // Hands are in the water: whatever the description says.
    ['water-change', 'controller', false],
    ['backwash', 'controller', false],
    ['treatment', 'hard-wired', false],
  ] as const)('%s that is ended by a %s: %s', (name, endsBy, expected) => {
    expect(endsItself({ states: [{ name, endsBy }] }, name)).toBe(expected);
    expect(hasHandsIn('night')).toBe(false);
  });

  test('never where the system does not speak of it', () => {
    expect(endsItself({ states: [] }, 'feeding')).toBe(false);
  });
});

describe('what proves that everything runs again', () => {
  const feeding = off('feeding');

  test('are the watts of what was off, the flow and the level where the return stood still', () => {
    const pump = returnPump({ name: 'Return', wattsRange: { minW: 40, maxW: 60 }, plan: feeding });
    const foam = skimmer({ name: 'Skimmer', wattsRange: undefined, plan: feeding });
    const of = system({ equipment: [pump, foam, heater({ plan: plan() })], sensors: [flow, level] });
    expect(proofsOf(of, 'feeding')).toMatchObject([
      { kind: 'watts', equipment: 'Return', range: { minW: 40, maxW: 60 } },
      { kind: 'watts', equipment: 'Skimmer', range: null },
      { kind: 'flow', sensor: 'Return flow' },
      { kind: 'level', sensor: 'Sump level' },
    ]);
    expect(proofsOf(of, 'night')).toEqual([]);
  });

  test('are a shut waste and the level, by eye where no sensor is, after water was taken out', () => {
    const waste = heater({ key: 'waste', name: 'Waste', type: 'drain-valve', plan: plan() });
    const air = heater({ name: 'Air', plan: plan({ states: [{ state: 'water-change', then: 'on', by: 'person' }] }) });
    expect(proofsOf(system({ equipment: [air, waste], sensors: [] }), 'water-change')).toMatchObject([
      { kind: 'off', equipment: 'Air' },
      { kind: 'shut', equipment: 'Waste' },
      { kind: 'level', sensor: null },
    ]);
  });
});
