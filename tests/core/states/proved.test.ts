import { describe, expect, test } from 'vitest';
import { answerProofs } from '#core/states/answered';
import { proofsOf } from '#core/states/proofs';
import { type Newest, provedBy } from '#core/states/proved';
import { heater, plan, returnPump } from '../../_support/build-equipment';
import { sensor, system } from '../../_support/build-system';
import { entered } from '../../_support/given';

const MINUTE = 60_000;
const BEGAN = Date.UTC(2026, 5, 1, 7, 0);
const NOW = BEGAN + 15 * MINUTE;
const feeding = (regulation = plan().regulation) =>
  plan({ states: [{ state: 'feeding', then: 'off', by: 'controller' }], regulation });
const pump = returnPump({
  key: 'return',
  wattsRange: { minW: 40, maxW: 60 },
  flowLPerH: entered(2000),
  plan: feeding({ kind: 'always', by: 'controller' }),
});
const warm = heater({
  key: 'warm',
  wattsRange: { minW: 280, maxW: 320 },
  plan: feeding({ kind: 'thermostat', sensors: [], vote: 'single', lowC: 24, highC: 25, by: 'controller' }),
});
const of = system({
  equipment: [pump, warm],
  sensors: [
    sensor({ key: 'return-watts', quantity: 'watts', equipment: 'return', tank: undefined }),
    sensor({ key: 'warm-watts', quantity: 'watts', equipment: 'warm', tank: undefined }),
    sensor({ key: 'flow', name: 'Flow', quantity: 'flow' }),
    sensor({ key: 'level', name: 'Level', quantity: 'level' }),
  ],
});
const says = (key: string, sensorKey: string, value: number, more: Partial<Newest> = {}) => {
  const proof = proofsOf(of, 'feeding').find((one) => one.key === key);
  if (!proof) throw new Error(`no proof ${key}`);
  const newest = new Map([[sensorKey, { atMs: NOW - MINUTE, value, quality: 'good' as const, ...more }]]);
  return provedBy(of, proof, newest, { sinceMs: BEGAN, atMs: NOW }).says;
};

describe('what a reading says of a proof', () => {
  test.each([
    ['watts.return', 'return-watts', 52, 'shown'],
    ['watts.return', 'return-watts', 0.4, 'contradicted'],
    ['watts.return', 'return-watts', 21, 'contradicted'],
    // A heater that draws nothing may be warm enough.
    ['watts.warm', 'warm-watts', 0, 'nothing'],
    ['watts.warm', 'warm-watts', 300, 'shown'],
    ['watts.warm', 'warm-watts', 90, 'contradicted'],
    ['flow', 'flow', 1900, 'shown'],
    ['flow', 'flow', 600, 'nothing'],
    ['flow', 'flow', 20, 'contradicted'],
    ['level', 'level', -12, 'shown'],
    ['level', 'level', 40, 'nothing'],
    ['level', 'level', -80, 'contradicted'],
  ] as const)('%s by %s at %d: %s', (key, by, value, expected) => {
    expect(says(key, by, value)).toBe(expected);
  });

  test('is nothing when it is old, from before the state, or not good', () => {
    expect(says('watts.return', 'return-watts', 52, { atMs: NOW - 6 * MINUTE })).toBe('nothing');
    expect(says('watts.return', 'return-watts', 0, { quality: 'suspect' })).toBe('nothing');
    const proof = proofsOf(of, 'feeding')[0];
    if (!proof) throw new Error('no proof');
    const newest = new Map([['return-watts', { atMs: BEGAN - 1000, value: 52, quality: 'good' as const }]]);
    expect(provedBy(of, proof, newest, { sinceMs: BEGAN, atMs: BEGAN + MINUTE }).says).toBe('nothing');
  });
});

describe('the end of a state', () => {
  const [proof] = proofsOf(of, 'feeding');
  if (!proof) throw new Error('no proof');
  const by = { sensor: 'Return meter', quantity: 'watts' as const, value: 0, atMs: NOW };
  const said = (seen: boolean, despite = '') => new Map([[proof.key, { seen, despite }]]);
  const answer = (saysSo: 'shown' | 'contradicted' | 'nothing', given = new Map()) =>
    answerProofs([{ proof, proved: { says: saysSo, by } }], given);

  test('needs no word for what a reading shows, and one for what none shows', () => {
    expect(answer('shown').kept).toEqual([{ key: 'watts.return', how: 'reading', value: 0 }]);
    expect(answer('nothing').missing).toMatchObject([{ key: 'watts.return' }]);
    expect(answer('nothing', said(true)).kept).toMatchObject([{ how: 'seen' }]);
  });

  test('is refused as all well against a reading, and kept with its reason otherwise', () => {
    expect(answer('contradicted', said(true))).toMatchObject({ kept: [], missing: [{ key: 'watts.return' }] });
    expect(answer('contradicted', said(false, 'meter unplugged')).kept).toMatchObject([
      { how: 'despite', why: 'meter unplugged' },
    ]);
  });
});
