import { SYSTEM_KINDS } from '#core/facility/system';
import type { Plan, Thermostat } from '#core/plans/plan';
import type { FaultCase } from '#core/review/result';
import { CHILLER } from '#core/review/rules/example/equipment';
import {
  type Change,
  example,
  withEquipment,
  withMore,
  withoutAlarms,
  withPlan,
  withSystem,
} from '#core/review/rules/example/example';
import { describe, expect, test } from 'vitest';
import { faultCase, judgement, outcome } from '../build-outcome';
import { causes, finds, findsIn, shown } from './finds';

/** Heater 1 with its thermostat changed. */
const thermostat = (given: Partial<Thermostat>, key = 'heater-1'): Change =>
  withPlan(key, ({ regulation }) =>
    regulation.kind === 'thermostat' ? { regulation: { ...regulation, ...given } } : {},
  );
const plan = (given: Partial<Plan>): Change => withPlan('heater-1', () => given);
const TWO = ['sump-temperature', 'display-temperature'];

describe('a heater alone', () => {
  const voting = (vote: Thermostat['vote'], sensors: string[]): string[] =>
    causes('heater-alone', plan({ cutOuts: [] }), thermostat({ vote, sensors }));

  test('is one whose other sensors cannot overrule one that reads too low', () => {
    expect(voting('lowest', TWO)).toEqual(['Heater 1']);
    expect(voting('median', TWO)).toEqual(['Heater 1']);
    expect(voting('highest', TWO)).toEqual([]);
    expect(voting('median', [...TWO, 'third'])).toEqual([]);
  });

  test('is said to have one control, or several that do not help', () => {
    const said = (...changes: Change[]) => finds('heater-alone', plan({ cutOuts: [] }), ...changes)[0]?.consequence;
    expect(said()).toContain('its one control');
    expect(said(thermostat({ vote: 'lowest', sensors: TWO }))).toContain('Of its 2 sensors (lowest)');
  });

  test('is not helped by a cut-out against cold or against low water', () => {
    const cutOut = { tank: 'sump', below: 20, reset: 'manual', safeguard: 'heater-1-cut-out' } as const;
    expect(causes('heater-alone', plan({ cutOuts: [{ ...cutOut, quantity: 'temperature' }] }))).toEqual(['Heater 1']);
    expect(causes('heater-alone', plan({ cutOuts: [{ ...cutOut, quantity: 'level' }] }))).toEqual(['Heater 1']);
  });

  test('is grave unless it harms nothing though welded on, whatever is untested and wherever the figures lie', () => {
    const grade = (found?: FaultCase) => {
      const context = example(plan({ cutOuts: [] }));
      if (found) context.judged.set(found.id, found);
      return findsIn('heater-alone', context)[0]?.grade;
    };
    const harmless = judgement([]);
    const harmful = judgement([outcome()]);
    expect(grade()).toBe('high');
    expect(grade(faultCase(harmful))).toBe('high');
    expect(grade(faultCase(harmless))).toBe('low');
    expect(grade(faultCase(harmless, { tested: harmful }))).toBe('high');
    expect(grade(faultCase(harmless, { unsure: true }))).toBe('high');
  });

  test('is one without any control as well', () => {
    const always: Plan['regulation'] = { kind: 'always', by: 'hard-wired' };
    expect(causes('heater-alone', plan({ cutOuts: [], regulation: always }))).toEqual(['Heater 1']);
  });
});

describe('a heater that has lost its sensor', () => {
  test('must be switched off, by a device', () => {
    const blind = (lostSensing: Plan['lostSensing']) => causes('heater-on-when-blind', plan({ lostSensing }));
    expect(blind({ action: 'off', by: 'hard-wired' })).toEqual([]);
    expect(blind({ action: 'off', by: 'person' })).toEqual(['Heater 1']);
    expect(blind({ action: 'on', by: 'controller' })).toEqual(['Heater 1']);
    expect(blind(undefined)).toEqual(['Heater 1']);
    const said = (lostSensing: Plan['lostSensing']) =>
      finds('heater-on-when-blind', plan({ lostSensing }))[0]?.consequence;
    expect(said({ action: 'off', by: 'person' })).toContain('to a person');
    expect(said({ action: 'hold', by: 'person' })).toContain('go on heating');
  });
});

describe('an interlock on return or level', () => {
  const lock = (interlocks: Plan['interlocks']): string[] =>
    causes('sump-heater-without-interlock', plan({ interlocks }));
  const when = { kind: 'return-lost', provedBy: 'flow' } as const;

  test('counts when a device carries it out, by whatever sensor of flow or level', () => {
    expect(lock([{ when, then: 'off', by: 'hard-wired' }])).toEqual([]);
    expect(lock([{ when: { kind: 'sensor', sensor: 'flow', below: 500 }, then: 'off', by: 'controller' }])).toEqual([]);
    expect(lock([{ when, then: 'off', by: 'person' }])).toEqual(['Heater 1']);
    expect(lock([{ when, then: 'on', by: 'controller' }])).toEqual(['Heater 1']);
    const warm = { kind: 'sensor', sensor: 'display-temperature', above: 26 } as const;
    expect(lock([{ when: warm, then: 'off', by: 'controller' }])).toEqual(['Heater 1']);
  });

  test('left to a person is said to be so', () => {
    const said = (interlocks: Plan['interlocks']) =>
      finds('sump-heater-without-interlock', plan({ interlocks }))[0]?.consequence;
    expect(said([{ when, then: 'off', by: 'person' }])).toContain('has a person do it');
    expect(said([{ when, then: 'on', by: 'controller' }])).toContain('goes on heating');
    expect(said([])).toContain('goes on heating');
  });

  test('may be a hard-wired contact on the level', () => {
    const low = {
      quantity: 'level',
      tank: 'sump',
      below: -60,
      reset: 'automatic',
      safeguard: 'heater-1-cut-out',
    } as const;
    expect(causes('sump-heater-without-interlock', plan({ interlocks: [], cutOuts: [low] }))).toEqual([]);
  });

  test('is not asked of a heater that stands in the tank itself', () => {
    const moved = withEquipment('heater-1', { tank: 'display' });
    expect(causes('sump-heater-without-interlock', plan({ interlocks: [] }), moved)).toEqual([]);
  });

  test('is never asked of air, circulation or a filter in the sump', () => {
    const inSump = ['blower', 'circulation'].map((key) => withEquipment(key, { tank: 'sump' }));
    const filter = { ...CHILLER, key: 'filter', name: 'Filter', type: 'filter', coolingW: undefined } as const;
    const bare: Plan = { cutOuts: [], interlocks: [], states: [], regulation: { kind: 'always', by: 'hard-wired' } };
    const context = example(...inSump, withMore({ ...filter, plan: bare }));
    const asked = ['sump-heater-without-interlock', 'sump-skimmer-without-interlock'];
    expect(asked.flatMap((id) => findsIn(id, context))).toEqual([]);
  });
});

describe('dead bands', () => {
  test('of one degree Fahrenheit pass for every kind of system', () => {
    expect(SYSTEM_KINDS.length).toBeGreaterThan(5);
    for (const kind of SYSTEM_KINDS) {
      expect(
        causes(
          'band-too-wide',
          withSystem(() => ({ kind })),
        ),
      ).toEqual([]);
      expect(
        causes(
          'short-cycling',
          withSystem(() => ({ kind })),
        ),
      ).toEqual([]);
    }
  });

  test('may be as wide as the animals are usually kept at, and no wider', () => {
    expect(causes('band-too-wide', thermostat({ lowC: 24, highC: 26 }))).toEqual([]);
    const [breach] = finds('band-too-wide', thermostat({ lowC: 23.9, highC: 26 }));
    expect(shown(breach, 'dead band')).toBe('2.1 K');
    expect(shown(breach, 'usual band')).toBe('2 K');
  });

  test('are measured by the animals that stand least', () => {
    const profile = (key: string, high: number) => ({
      key,
      name: key,
      usual: { temperatureC: [24, high] as [number, number], salinity: [34, 35] as [number, number], oxygenMgL: 5 },
      limits: [],
      source: 'entered',
      confidence: 'low' as const,
    });
    const kept: Change = (facility) => ({
      ...facility,
      profiles: [profile('tough', 28), profile('tender', 25)],
      systems: facility.systems.map((one) => ({
        ...one,
        stock: one.stock.flatMap((group) => ['tough', 'tender'].map((key) => ({ ...group, key, profile: key }))),
      })),
    });
    expect(causes('band-too-wide', kept, thermostat({ lowC: 24.7, highC: 25.7 }))).toEqual([]);
    expect(causes('band-too-wide', kept, thermostat({ lowC: 24.6, highC: 25.7 }))).toEqual(['Heater 1']);
  });
});

describe('heater and chiller', () => {
  const gap = (lowC: number): Change[] => [withMore(CHILLER), thermostat({ lowC, highC: 28 }, 'chiller')];

  test('fight when the chiller cools below where a heater stops, and are near up to one kelvin above it', () => {
    expect(causes('heater-fights-chiller', ...gap(25.8))).toEqual(['Heater 1 and Chiller', 'Heater 2 and Chiller']);
    expect(causes('heater-near-chiller', ...gap(25.8))).toEqual([]);
    expect(causes('heater-fights-chiller', ...gap(25.83))).toEqual([]);
    expect(causes('heater-near-chiller', ...gap(25.83))).toHaveLength(2);
    expect(causes('heater-near-chiller', ...gap(26.82))).toHaveLength(2);
    expect(causes('heater-near-chiller', ...gap(26.83))).toEqual([]);
  });

  test('without a band of their own are left alone', () => {
    const always: Plan['regulation'] = { kind: 'always', by: 'hard-wired' };
    expect(causes('heater-fights-chiller', ...gap(25), plan({ regulation: always }))).toEqual(['Heater 2 and Chiller']);
  });

  test('of different water have nothing to do with each other', () => {
    const apart = withSystem(({ equipment, states }) => ({
      equipment: equipment
        .filter(({ type }) => type !== 'return-pump')
        .map((one) => (one.type === 'chiller' ? { ...one, tank: 'display' } : one)),
      states,
    }));
    expect(causes('heater-fights-chiller', ...gap(25), apart)).toEqual([]);
  });
});

test('a person as thermostat is named with the band', () => {
  const [breach] = finds('thermostat-by-person', thermostat({ by: 'person' }), withoutAlarms());
  expect(breach?.cause).toBe('Heater 1');
  expect([shown(breach, 'band from'), shown(breach, 'band to')]).toEqual(['25.28 °C', '25.83 °C']);
});
