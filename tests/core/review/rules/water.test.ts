import { changed, type Change, withEquipment, withPlan, withSystem } from '#core/review/rules/example/example';
import { entered } from '#core/review/rules/example/proven';
import type { Tank } from '#core/facility/system';
import { describe, expect, test } from 'vitest';
import { unknown } from '../../../_support/given';
import { causes, finds, shown } from './finds';

const tank = (key: string, given: Partial<Tank>): Change =>
  withSystem(({ tanks }) => ({ tanks: changed(tanks, key, given) }));
const kept = (kind: 'tropical-fresh' | 'reef', salinity: number): Change =>
  withSystem(() => ({ kind, salinity: entered(salinity) }));

describe('what drains down', () => {
  // 0.72 m² of display: 15 mm to the siphon break, 60 mm to the outlet; 0.4 m² of sump.
  const room = (rimMm: number) => tank('sump', { rimMm: entered(rimMm) });

  test('is area times depth, once with the siphon break and once without it', () => {
    const [breach] = finds('drain-down-over-sump', room(20));
    expect(shown(breach, 'drains down')).toBe('10.8 L');
    expect(shown(breach, 'drains down with siphon breaks blocked')).toBe('43.2 L');
    expect(shown(breach, 'room in the sump')).toBe('8 L');
    expect(breach?.consequence).toBe('Water goes over its rim whenever the return stops.');
    expect(shown(breach, 'over the rim')).toBe('2.8 L');
  });

  test('fits exactly, fits only with the break open, or does not fit', () => {
    const [over, alone] = ['drain-down-over-sump', 'siphon-break-alone'];
    expect(causes(over, room(27.1))).toEqual([]);
    expect(causes(over, room(26.9))).toEqual(['Sump']);
    expect(causes(alone, room(26.9))).toEqual([]);
    expect(causes(alone, room(107))).toEqual(['Sump']);
    expect(causes(alone, room(108.1))).toEqual([]);
  });

  test('counts every tank the return feeds', () => {
    const second = withSystem(({ tanks }) => ({
      tanks: tanks.flatMap((one) => (one.key === 'display' ? [one, { ...one, key: 'second', name: 'Second' }] : [one])),
    }));
    expect(causes('siphon-break-alone', second)).toEqual(['Sump']);
  });

  test('runs to the outlet where there is no break, and never stops above the crest', () => {
    const none = tank('display', { siphonBreakMm: undefined, siphonSafeguard: undefined });
    expect(causes('drain-down-over-sump', none, room(107))).toEqual(['Sump']);
    expect(causes('drain-down-over-sump', none, room(107), tank('sump', { name: 'Basement' }))).toEqual(['Basement']);
    const crest = tank('display', { drainDownMm: entered(200) });
    expect(shown(finds('drain-down-over-sump', crest, room(100))[0], 'drains down')).toBe('144 L');
  });

  test('is not asked about without a return, nor judged where a figure is unknown', () => {
    const dry = withSystem(({ equipment }) => ({ equipment: equipment.filter(({ key }) => key !== 'return') }));
    expect(causes('drain-down-over-sump', room(1), dry)).toEqual([]);
    expect(causes('drain-down-over-sump', room(1), tank('display', { surfaceM2: unknown() }))).toEqual([]);
  });
});

describe('a reservoir', () => {
  const content = (litres: number): Change => tank('reservoir', { volumeL: entered(litres) });

  test('is too large as soon as its whole content takes salinity below the limit', () => {
    // 552 L of 35 fall to 31 with 552·(35/31 − 1) = 71.2 L that stay; the sump has room for 60 of them.
    expect(causes('reservoir-too-large', content(70.5))).toEqual([]);
    expect(causes('reservoir-too-large', content(71.3))).toEqual(['Top-off']);
    expect(shown(finds('reservoir-too-large', content(100))[0], 'salinity after')).toBe('29.6');
  });

  test('dilutes more where what is too much runs over the rim', () => {
    const none = tank('sump', { rimMm: entered(0) });
    // 35·e^(−100/552) = 29.2.
    expect(shown(finds('reservoir-too-large', content(100), none)[0], 'salinity after')).toBe('29.2');
  });

  test('that is the mains has no end', () => {
    const [breach] = finds('reservoir-too-large', withEquipment('top-off', { source: 'mains' }));
    expect(breach?.consequence).toBe('It is fed from the mains, which never run empty.');
  });

  test('of fresh water cannot dilute fresh water', () => {
    expect(causes('reservoir-too-large', content(1000), kept('tropical-fresh', 0.3))).toEqual([]);
  });

  test('of unknown size, or beside water that is too fresh already, is not judged', () => {
    expect(causes('reservoir-too-large', tank('reservoir', { volumeL: unknown() }))).toEqual([]);
    expect(causes('reservoir-too-large', content(1000), kept('reef', 30))).toEqual([]);
  });
});

describe('a top-off', () => {
  const regulated = (given: object): Change =>
    withPlan('top-off', ({ regulation }) =>
      regulation.kind === 'level' ? { regulation: { ...regulation, ...given } } : {},
    );

  test('needs a run limit that a device keeps', () => {
    expect(causes('top-off-without-run-limit', regulated({ by: 'hard-wired' }))).toEqual([]);
    expect(causes('top-off-without-run-limit', regulated({ by: 'person' }))).toEqual(['Top-off']);
    expect(
      causes(
        'top-off-without-run-limit',
        withPlan('top-off', () => ({ regulation: { kind: 'always', by: 'hard-wired' } })),
      ),
    ).toEqual(['Top-off']);
    expect(
      causes(
        'top-off-without-run-limit',
        withPlan('top-off', () => ({ regulation: { kind: 'never', by: 'person' } })),
      ),
    ).toEqual([]);
  });

  test('must rest in a water change, if the system ever has one', () => {
    const runs = withPlan('top-off', () => ({ states: [] }));
    expect(causes('top-off-in-water-change', runs)).toEqual(['Top-off']);
    expect(
      causes(
        'top-off-in-water-change',
        runs,
        withSystem(() => ({ states: [] })),
      ),
    ).toEqual([]);
  });
});

describe('a skimmer', () => {
  const bare = withPlan('skimmer', () => ({ states: [], interlocks: [] }));

  test('need not rest in states that never come, nor at meals that leave the return on', () => {
    expect(causes('skimmer-while-feeding', bare)).toEqual(['Skimmer']);
    expect(
      causes(
        'skimmer-while-feeding',
        bare,
        withPlan('return', () => ({ states: [] })),
      ),
    ).toEqual([]);
    expect(
      causes(
        'skimmer-while-feeding',
        bare,
        withSystem(() => ({ states: [] })),
      ),
    ).toEqual([]);
    expect(causes('skimmer-in-water-change', bare)).toEqual(['Skimmer']);
    const one = (name: string) =>
      withSystem(({ states }) => ({ states: states.filter((state) => state.name === name) }));
    expect(causes('skimmer-in-water-change', bare, one('feeding'))).toEqual([]);
    expect(causes('skimmer-while-feeding', bare, one('water-change'))).toEqual([]);
    expect(
      causes(
        'skimmer-in-water-change',
        bare,
        withSystem(() => ({ states: [] })),
      ),
    ).toEqual([]);
  });

  test('that follows the return rests with it only when all of the return rests', () => {
    const follows = withPlan('skimmer', () => ({ states: [] }));
    const second = withSystem(({ equipment }) => ({
      equipment: equipment.flatMap((one) =>
        one.key === 'return'
          ? [one, { ...one, key: 'second', name: 'Second', plan: { ...one.plan, states: [] } }]
          : [one],
      ),
    }));
    expect(causes('skimmer-while-feeding', follows)).toEqual([]);
    expect(causes('skimmer-while-feeding', follows, second)).toEqual(['Skimmer']);
  });
});
