import { describe, expect, test } from 'vitest';
import type { Around, Condition, StateSpell } from '#core/alarms/condition';
import { conditionOf } from '#core/alarms/condition-of';
import type { AlarmSource } from '#core/alarms/definition';
import { beginWatch, hold, pass, type Watch } from '#core/alarms/is-true';
import { passSite, type SeenOf } from '#core/alarms/pass-site';
import type { Equipment, Sensor, System } from '#core/facility/system';
import { alarm } from '../../_support/build-system';
import { heater } from '../../_support/build-equipment';
import { smallFacility, smallSystem } from '../../_support/small-facility';

const TEMPERATURE: Sensor = { key: 'a', name: 'A', quantity: 'temperature', tank: 'display', gateway: 'gateway' };
const SENSORS: Sensor[] = [
  TEMPERATURE,
  { ...TEMPERATURE, key: 'b', name: 'B' },
  { key: 'meter', name: 'Meter', quantity: 'watts', equipment: 'thing', gateway: 'gateway' },
];

function thing(plan: Partial<Equipment['plan']>, type: Equipment['type'] = 'heater'): Equipment {
  const base = heater();
  return { ...base, key: 'thing', type, wattsRange: { minW: 180, maxW: 220 }, plan: { ...base.plan, ...plan } };
}

function conditionFor(on: AlarmSource, piece = thing({}), given: Partial<System> = {}): Condition {
  const system = { ...smallSystem(), ...given, sensors: SENSORS, equipment: [piece] };
  const facility = smallFacility(system);
  const made = conditionOf(facility, system, alarm({ on, delayS: 60, deadBand: 0.1 }));
  if (!made) throw new Error('There is nothing to hold it to');
  return made;
}

const KEY = smallSystem().key;
const seen = (sensor: string, atS: number, value: number, given: Partial<SeenOf> = {}): SeenOf => ({
  ...{ sensor: `${KEY}/${sensor}`, atMs: atS * 1000, cameMs: atS * 1000, value, quality: 'good', isByHand: false },
  ...given,
});

/** Second at which it stands raised after each of these, in order. */
function raisedAfter(condition: Condition, list: readonly SeenOf[], around?: Around): boolean[] {
  let watch: Watch = beginWatch(condition, 0);
  return list.map((one) => {
    watch = pass(condition, watch, one.cameMs, around).watch;
    for (const step of hold(condition, watch, one, around)) watch = step.watch;
    return watch.phase === 'active' || watch.phase === 'clearing';
  });
}
const lastRaised = (condition: Condition, list: readonly SeenOf[], around?: Around) =>
  raisedAfter(condition, list, around).at(-1);

const spell = (given: Partial<StateSpell> = {}): StateSpell => ({
  ...{ system: KEY, state: 'feeding', fromMs: 0, toMs: null, untilMs: 900_000 },
  ...given,
});
const during = (...spells: StateSpell[]): Around => ({ spells, daySecond: (ms) => (ms / 1000) % 86_400 });

describe('two sensors that should agree', () => {
  const condition = conditionFor({ kind: 'deviation', sensor: 'a', other: 'b', by: 0.5 });

  test('are called when they part either way, by the newest of each', () => {
    expect(lastRaised(condition, [seen('a', 0, 25), seen('b', 1, 25.4), seen('a', 70, 25)])).toBe(false);
    expect(lastRaised(condition, [seen('a', 0, 25), seen('b', 1, 25.6), seen('a', 70, 25)])).toBe(true);
    expect(lastRaised(condition, [seen('a', 0, 25), seen('b', 1, 24.4), seen('b', 70, 24.4)])).toBe(true);
  });

  test('are not compared when one has not spoken for a quarter of an hour', () => {
    expect(lastRaised(condition, [seen('a', 0, 25), seen('b', 1000, 30), seen('b', 1100, 30)])).toBe(false);
  });

  test('agree again by good readings alone, and one that comes late undoes nothing', () => {
    const parted = [seen('a', 0, 25), seen('b', 1, 26), seen('a', 70, 25)];
    expect(lastRaised(condition, [...parted, seen('b', 80, 25, { quality: 'suspect' })])).toBe(true);
    expect(lastRaised(condition, [...parted, seen('b', 80, 25, { isByHand: true })])).toBe(true);
    expect(lastRaised(condition, [...parted, seen('b', 0, 25, { cameMs: 80_000 })])).toBe(true);
    expect(lastRaised(condition, [...parted, seen('b', 80, 25)])).toBe(false);
  });
});

describe('what equipment draws', () => {
  const thermostat = (given = {}) =>
    thing({
      regulation: { kind: 'thermostat', sensors: ['a'], vote: 'single', lowC: 25, highC: 25.4, by: 'controller' },
      interlocks: [],
      cutOuts: [],
      states: [],
      ...given,
    });
  const watts = { kind: 'watts', equipment: 'thing' } as const;
  const both = (atS: number, c: number, w: number) => [seen('a', atS, c), seen('meter', atS, w)];

  test('of a heater while it is clearly warm enough is called, and while it may go either way is not', () => {
    const condition = conditionFor(watts, thermostat());
    const at = (c: number, w: number) =>
      lastRaised(
        condition,
        [0, 60, 120, 180].flatMap((s) => both(s, c, w)),
      );
    expect(at(25.7, 200)).toBe(true);
    expect(at(25.7, 1)).toBe(false);
    expect(at(25.3, 200)).toBe(false);
    expect(at(25.3, 0)).toBe(false);
    expect(at(24.7, 0)).toBe(true);
    expect(at(24.7, 200)).toBe(false);
    expect(at(25.3, 150)).toBe(true);
  });

  test('is nothing to call for where an interlock may hold it off, and is where it still draws', () => {
    const locked = thermostat({
      interlocks: [{ when: { kind: 'return-lost', provedBy: 'command' }, then: 'off', by: 'controller' }],
    });
    const condition = conditionFor(watts, locked);
    const at = (c: number, w: number) =>
      lastRaised(
        condition,
        [0, 60, 120, 180].flatMap((s) => both(s, c, w)),
      );
    expect(at(24.7, 0)).toBe(false);
    expect(at(25.7, 200)).toBe(true);
  });

  test('in a state that has it off is called, and outside of it that it draws nothing', () => {
    const piece = thing({
      regulation: { kind: 'always', by: 'controller' },
      states: [{ state: 'water-change', then: 'off', by: 'person' }],
      interlocks: [],
      cutOuts: [],
    });
    const states = [{ name: 'water-change', endsBy: 'person' } as const];
    const condition = conditionFor(watts, piece, { states });
    const list = (w: number) => [0, 60, 120, 180].map((s) => seen('meter', s, w));
    const inState = during(spell({ state: 'water-change' }));
    expect([lastRaised(condition, list(200), inState), lastRaised(condition, list(0), inState)]).toEqual([true, false]);
    expect([lastRaised(condition, list(200)), lastRaised(condition, list(0))]).toEqual([false, true]);
  });

  test('by the hours of its plan is called outside of them', () => {
    const condition = conditionFor(
      watts,
      thing(
        {
          regulation: { kind: 'hours', from: '09:00', to: '21:00', by: 'controller' },
          states: [],
          interlocks: [],
          cutOuts: [],
        },
        'light',
      ),
    );
    const list = (hour: number, w: number) => [0, 60, 120, 180].map((s) => seen('meter', hour * 3600 + s, w));
    expect(lastRaised(condition, list(23, 200), during())).toBe(true);
    expect(lastRaised(condition, list(12, 200), during())).toBe(false);
    expect(lastRaised(condition, list(12, 0), during())).toBe(true);
    expect(lastRaised(condition, list(23, 0), during())).toBe(false);
  });
});

describe('a run', () => {
  const condition = conditionFor({ kind: 'run-limit', equipment: 'thing', longerThanMin: 10 });
  test('that lasts too long is called by the clock, from when it began', () => {
    let [step] = hold(condition, beginWatch(condition, 0), seen('meter', 100, 200));
    expect(pass(condition, step?.watch ?? beginWatch(condition, 0), 759_000).turn).toBeNull();
    expect(pass(condition, step?.watch ?? beginWatch(condition, 0), 760_000).turn).toMatchObject({ atMs: 100_000 });
    [step] = hold(condition, step?.watch ?? beginWatch(condition, 0), seen('meter', 300, 0));
    expect(pass(condition, step?.watch ?? beginWatch(condition, 0), 9_000_000).turn).toBeNull();
  });
});

describe('a state that outstays', () => {
  const judged = (on: AlarmSource, spells: StateSpell[], times: readonly number[]) => {
    const condition = conditionFor(on);
    let watched = { alarm: 'one', condition, watch: beginWatch(condition, 0) };
    return times.flatMap((s) => {
      const { changed, turns } = passSite([watched], [], s * 1000, false, during(...spells));
      watched = changed[0] ?? watched;
      return turns.map(({ turn }) => [turn.kind, s, turn.atMs / 1000]);
    });
  };
  const on = { kind: 'state-outstayed', state: 'feeding' } as const;

  test('is called once its end and the delay are past, and is back when it ends', () => {
    expect(judged(on, [spell()], [0, 900, 959])).toEqual([]);
    expect(judged(on, [spell()], [0, 960, 2000])).toEqual([['raised', 960, 900]]);
    expect(judged(on, [spell({ toMs: 1_000_000 })], [0, 960, 1010])).toEqual([
      ['raised', 960, 900],
      ['returned', 1010, 1000],
    ]);
  });

  test('goes by a time of its own where one is set, and by no other system', () => {
    expect(judged({ ...on, afterMin: 5 }, [spell()], [0, 360])).toEqual([['raised', 360, 300]]);
    expect(judged(on, [spell({ system: 'other' })], [0, 5000])).toEqual([]);
  });
});
