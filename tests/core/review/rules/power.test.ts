import type { Circuit } from '#core/facility/site';
import type { Equipment } from '#core/facility/system';
import {
  changed,
  type Change,
  withEquipment,
  withMore,
  withPlan,
  withSite,
  withSystem,
} from '#core/review/rules/example/example';
import { entered } from '#core/review/rules/example/proven';
import { describe, expect, test } from 'vitest';
import { unknown } from '../../../_support/given';
import { causes, finds, shown } from './finds';

const circuit = (key: string, given: Partial<Circuit>): Change =>
  withSite(({ circuits }) => ({ circuits: changed(circuits, key, given) }));
const on = (name: string): Change[] =>
  ['return', 'circulation', 'skimmer', 'blower'].map((key) => withEquipment(key, { circuit: name }));
const only = (...keys: string[]): Change =>
  withSystem(({ equipment }) => ({ equipment: equipment.filter(({ key }) => keys.includes(key)) }));

describe('one RCD group', () => {
  const separate = circuit('air', { rcd: undefined });

  test('is also one circuit without an RCD', () => {
    expect(causes('all-on-one-rcd', ...on('air'), separate)).toEqual(['circuit Air']);
    expect(causes('all-on-one-rcd', ...on('air'))).toEqual(['RCD group RCD 3']);
  });

  test('is not two circuits of which neither names an RCD', () => {
    expect(causes('all-on-one-rcd', separate, circuit('pumps', { rcd: undefined }))).toEqual([]);
  });

  test('is not concluded where a circuit is not known, or only one thing moves the water', () => {
    const same = circuit('air', { rcd: 'RCD 1' });
    expect(causes('all-on-one-rcd', same)).toEqual(['RCD group RCD 1']);
    expect(causes('all-on-one-rcd', same, withEquipment('blower', { circuit: undefined }))).toEqual([]);
    expect(causes('all-on-one-rcd', only('blower', 'heater-1'))).toEqual([]);
  });

  test('that takes both blowers, or all pumps, is reported by its duty', () => {
    const second: Equipment = {
      key: 'second',
      name: 'Second blower',
      type: 'air-blower',
      tank: 'display',
      circuit: 'air',
      plan: { cutOuts: [], interlocks: [], states: [], regulation: { kind: 'always', by: 'hard-wired' } },
    };
    const [breach] = finds('pair-on-one-rcd', withMore(second));
    expect(breach?.consequence).toBe('One trip stops Air blower and Second blower.');
    const standby: Equipment = { ...second, plan: { ...second.plan, regulation: { kind: 'never', by: 'person' } } };
    expect(causes('pair-on-one-rcd', withMore(standby))).toEqual([]);
  });

  test('that takes everything is reported once, as the graver matter', () => {
    const all = on('air');
    expect(causes('all-on-one-rcd', ...all)).toHaveLength(1);
    expect(causes('pair-on-one-rcd', ...all)).toEqual([]);
  });
});

describe('the load of a circuit', () => {
  test('is all that hangs on it in the whole site, against 80 % of its breaker', () => {
    // 150 + 40 + 25 + 6 W on the pumps' circuit; 0.8 · 1.2 A · 230 V = 220.8 W.
    const breaker = circuit('pumps', { breakerA: entered(1.2) });
    const [breach] = finds('circuit-overloaded', breaker);
    expect(shown(breach, 'load')).toBe('221 W');
    expect(shown(breach, '80 % of it')).toBe('220.8 W');
    expect(causes('circuit-overloaded', circuit('pumps', { breakerA: entered(1.21) }))).toEqual([]);
    const twin = withSite(({ systems }) => ({
      systems: [...systems, ...systems.map((one) => ({ ...one, key: 'twin' }))],
    }));
    expect(causes('circuit-overloaded', circuit('pumps', { breakerA: entered(1.21) }), twin)).toEqual(['Pumps']);
  });

  test('is reported to the systems that hang on it, not to others', () => {
    const weak = [circuit('pumps', { breakerA: entered(1) }), circuit('heat', { breakerA: entered(0.5) })];
    expect(causes('circuit-overloaded', ...weak, only('heater-1'))).toEqual(['Heat']);
    const elsewhere = withSite(({ systems }) => ({
      systems: [
        ...systems.map((one) => ({ ...one, equipment: one.equipment.filter(({ key }) => key === 'blower') })),
        ...systems.map((one) => ({ ...one, key: 'twin' })),
      ],
    }));
    expect(causes('circuit-overloaded', ...weak, elsewhere)).toEqual([]);
  });

  test('is not judged where breaker or voltage is unknown', () => {
    expect(causes('circuit-overloaded', circuit('pumps', { breakerA: unknown() }))).toEqual([]);
    expect(causes('circuit-overloaded', circuit('pumps', { breakerA: entered(0.1), volts: undefined }))).toEqual([]);
  });
});

describe('what is not named', () => {
  test('is a circuit of equipment that needs power, not of a valve', () => {
    const plan: Equipment['plan'] = {
      cutOuts: [],
      interlocks: [],
      states: [],
      regulation: { kind: 'never', by: 'person' },
    };
    const valve: Equipment = { key: 'valve', name: 'Valve', type: 'drain-valve', tank: 'sump', plan };
    const trickle: Equipment = { ...valve, key: 'trickle', name: 'Trickle filter', type: 'filter' };
    expect(causes('equipment-on-no-circuit', withMore(valve), withMore(trickle))).toEqual([]);
    expect(causes('equipment-on-no-circuit', withMore({ ...trickle, ratedW: entered(30) }))).toEqual([
      'Trickle filter',
    ]);
    expect(
      causes('equipment-on-no-circuit', withEquipment('skimmer', { circuit: undefined, ratedW: undefined })),
    ).toEqual(['Skimmer']);
    expect(causes('equipment-on-no-circuit', withEquipment('return', { circuit: 'elsewhere' }))).toEqual([
      'Return pump',
    ]);
  });

  test('is an RCD of a circuit that feeds this system, not of others', () => {
    expect(causes('circuit-without-rcd', circuit('watch', { rcd: undefined }))).toEqual([]);
    expect(causes('circuit-without-rcd', circuit('air', { rcd: undefined }))).toEqual(['Air']);
  });
});

describe('the way of the alarms', () => {
  const monitor = (key: string, named: string | undefined): Change =>
    withSite(({ monitors }) => ({ monitors: changed(monitors, key, { circuit: named }) }));

  test('must not share a circuit or an RCD group with what it reports', () => {
    expect(causes('monitor-on-watched-circuit', monitor('host', 'pumps'))).toEqual(['Holdfast host']);
    expect(causes('monitor-on-watched-circuit', circuit('watch', { rcd: 'RCD 3' }))).toHaveLength(3);
  });

  test('may share one with a lamp', () => {
    const lamp: Equipment = {
      key: 'lamp',
      name: 'Lamp',
      type: 'light',
      tank: 'display',
      circuit: 'watch',
      plan: {
        cutOuts: [],
        interlocks: [],
        states: [],
        regulation: { kind: 'hours', from: '09:00', to: '19:00', by: 'controller' },
      },
    };
    expect(causes('monitor-on-watched-circuit', withMore(lamp))).toEqual([]);
  });

  test('must have a battery or the generator behind it', () => {
    expect(causes('monitor-without-backing', circuit('watch', { backedBy: ['generator'] }))).toEqual([]);
    expect(causes('monitor-without-backing', circuit('watch', { backedBy: [] }))).toHaveLength(3);
  });

  test('is that of this system alone: other gateways, and systems without alarms, do not matter', () => {
    const other = withSite(({ monitors }) => ({
      monitors: [...monitors, { key: 'elsewhere', name: 'Elsewhere', kind: 'gateway', circuit: 'pumps' }],
    }));
    expect(causes('monitor-on-watched-circuit', other)).toEqual([]);
    const silent = withSystem(() => ({ alarms: [] }));
    expect(causes('monitor-on-watched-circuit', monitor('host', 'pumps'), silent)).toEqual([]);
  });
});

describe('watts', () => {
  const range = (key: string, minW: number, maxW: number, ratedW = 100): string[] =>
    finds('blind-watts-range', withEquipment(key, { ratedW: entered(ratedW), wattsRange: { minW, maxW } })).map(
      ({ consequence }) => consequence,
    );

  test('of nothing, or of idling, must lie outside the range', () => {
    expect(range('return', 10, 120)).toEqual(['Its range counts as healthy one that stands still or is dead.']);
    expect(range('return', 10.1, 120)).toEqual([]);
  });

  test('of half a heater must lie outside a heater’s range', () => {
    expect(range('heater-1', 50, 120)).toEqual(['Its range counts as healthy one with half of its elements dead.']);
    expect(range('heater-1', 50.1, 120)).toEqual([]);
    expect(range('circulation', 50, 120)).toEqual([]);
  });

  test('of a motor held fast must lie outside the range', () => {
    expect(range('return', 80, 200)).toEqual(['Its range counts as healthy one that is held fast or draws double.']);
    expect(range('return', 80, 199)).toEqual([]);
    expect(range('return', 0, 200)).toHaveLength(1);
  });

  test('are judged by the middle of the range where the rating is not known', () => {
    const unrated = (minW: number) => withEquipment('return', { ratedW: undefined, wattsRange: { minW, maxW: 50 } });
    expect(causes('blind-watts-range', unrated(2))).toEqual(['Return pump']);
    expect(causes('blind-watts-range', unrated(5))).toEqual([]);
  });

  test('are asked of heaters, pumps, skimmer, blower and chiller, not of a top-off or a lamp', () => {
    const bare = withSystem(({ equipment }) => ({
      equipment: equipment.map((one) => ({ ...one, wattsRange: undefined })),
    }));
    expect(causes('no-watts-range', bare)).toEqual([
      'Heater 1',
      'Heater 2',
      'Return pump',
      'Circulation pump',
      'Skimmer',
      'Air blower',
    ]);
  });
});

test('the return is not proved by its command, unless something else proves it too', () => {
  const command = { when: { kind: 'return-lost', provedBy: 'command' }, then: 'off', by: 'controller' } as const;
  const level = { when: { kind: 'sensor', sensor: 'sump-level', above: 20 }, then: 'off', by: 'hard-wired' } as const;
  expect(
    causes(
      'return-proved-by-command',
      withPlan('skimmer', () => ({ interlocks: [command] })),
    ),
  ).toEqual(['Skimmer']);
  expect(
    causes(
      'return-proved-by-command',
      withPlan('skimmer', () => ({ interlocks: [command, level] })),
    ),
  ).toEqual([]);
  expect(
    causes(
      'return-proved-by-command',
      withPlan('skimmer', () => ({ interlocks: [] })),
    ),
  ).toEqual([]);
});

test('a line left to a person is reported where no rule asks for a device in its place', () => {
  const byPerson = { when: { kind: 'return-lost', provedBy: 'flow' }, then: 'off', by: 'person' } as const;
  expect(
    causes(
      'line-by-person',
      withPlan('heater-1', () => ({ interlocks: [byPerson] })),
    ),
  ).toEqual([]);
  expect(
    causes(
      'line-by-person',
      withPlan('top-off', () => ({ interlocks: [byPerson] })),
    ),
  ).toEqual(['Top-off']);
  const [breach] = finds(
    'line-by-person',
    withPlan('top-off', () => ({ interlocks: [byPerson], lostSensing: { action: 'off', by: 'person' } })),
  );
  expect(breach?.consequence).toBe(
    'Its plan has a person carry out the interlock and action on lost sensing; it counts as absent.',
  );
});
