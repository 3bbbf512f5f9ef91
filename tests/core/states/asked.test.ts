import { describe, expect, test } from 'vitest';
import { askedBy } from '#core/states/effective';
import { inferStates } from '#core/states/infer';
import type { Begun } from '#core/states/state-end';
import { airBlower, plan, returnPump, skimmer } from '../../_support/build-equipment';
import { system } from '../../_support/build-system';

const always = { kind: 'always', by: 'controller' } as const;
const line = (state: Begun, then: 'on' | 'off') => ({ state, then, by: 'controller' }) as const;
const pump = returnPump({ key: 'return', plan: plan({ states: [line('feeding', 'off')], regulation: always }) });
const foam = skimmer({
  key: 'foam',
  plan: plan({ states: [line('feeding', 'off'), line('treatment', 'off')], regulation: always }),
});
const air = airBlower({
  key: 'air',
  plan: plan({
    states: [line('treatment', 'on'), line('feeding', 'off'), line('hands-in', 'off')],
    regulation: always,
  }),
});
const of = system({
  equipment: [pump, foam, air],
  states: [
    { name: 'treatment', endsBy: 'person' },
    { name: 'feeding', endsBy: 'controller' },
  ],
});

describe('several states at once', () => {
  test('come to the most protective of what they ask: air on, the rest still', () => {
    expect(askedBy(of, ['treatment', 'feeding']).map(({ key, then, against }) => [key, then, against])).toEqual([
      ['return', 'off', []],
      ['foam', 'off', []],
      ['air', 'on', ['feeding']],
    ]);
  });

  test('leave off whatever is off for people, and ask nothing where no plan speaks', () => {
    expect(askedBy(of, ['treatment', 'hands-in']).find(({ key }) => key === 'air')).toMatchObject({ then: 'off' });
    expect(askedBy(of, ['night'])).toEqual([]);
  });
});

describe('a state that nobody said had begun', () => {
  const NOW = Date.UTC(2026, 5, 1, 7, 10);
  const MINUTE = 60_000;
  /** Draws so many watts a minute until it stopped. */
  const drew = (stoppedMin: number | null, w = 50) =>
    Array.from({ length: 20 }, (_, i) => {
      const ago = 19 - i;
      return { atMs: NOW - ago * MINUTE, w: stoppedMin !== null && ago <= stoppedMin ? 0 : w };
    });
  const infer = (minutes: Record<string, number | null>, inForce: Begun[] = []) =>
    inferStates(
      system({ ...of, equipment: [pump, foam, airBlower({ key: 'air', plan: plan({ regulation: always }) })] }),
      new Map(Object.entries(minutes).map(([key, stopped]) => [key, drew(stopped)])),
      new Set(inForce),
      NOW,
    );

  test('is told when all that it switches off stands still and the rest runs', () => {
    expect(infer({ return: 6, foam: 6, air: null })).toEqual([
      { state: 'feeding', sinceMs: NOW - 6 * MINUTE, equipment: ['return', 'foam'] },
    ]);
  });

  test('is not told of one pump alone, of a power cut, of a moment, or of what is known', () => {
    expect(infer({ return: 6, foam: null, air: null })).toEqual([]);
    expect(infer({ return: 6, foam: 6, air: 6 })).toEqual([]);
    expect(infer({ return: 1, foam: 1, air: null })).toEqual([]);
    expect(infer({ return: 6, foam: 6, air: null }, ['feeding'])).toEqual([]);
    expect(infer({})).toEqual([]);
  });

  test('is told apart from the one that stops less: the skimmer alone is a treatment', () => {
    expect(infer({ return: null, foam: 5, air: null })).toMatchObject([{ state: 'treatment' }]);
  });
});
