import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { DEFAULT_PROFILES } from '#core/facility/profiles';
import { facilityShape } from '#shape/facility/facility';
import { unitOf } from '#shape/facility/field-unit';
import { facilityJsonSchema } from '#shape/facility/json-schema';
import { toleranceProfileShape } from '#shape/facility/tolerance-profile';
import { writeFacility } from '#shape/facility/write-facility';
import { Ajv2020 } from 'ajv/dist/2020';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { anyFacility } from '../../_support/any-facility';
import { facility } from '../../_support/build-facility';

type Schema = {
  description?: string;
  properties?: Record<string, Schema>;
  $defs?: Record<string, Schema>;
  $ref?: string;
};

const schema = facilityJsonSchema();
const validates = new Ajv2020({ strict: true, formats: { date: /^\d{4}-\d{2}-\d{2}$/ } }).compile(schema);

/** Every property of every object in a schema, as `noun.field`. */
function propertiesOf(value: unknown, noun = ''): [string, Schema][] {
  if (typeof value !== 'object' || value === null) return [];
  const { properties = {}, $defs = {}, ...rest } = value as Schema;
  return [
    ...Object.entries(properties).flatMap(([name, part]): [string, Schema][] => [
      [`${noun}.${name}`, part],
      ...propertiesOf(part, `${noun}.${name}`),
    ]),
    ...Object.entries($defs).flatMap(([name, part]) => propertiesOf(part, name)),
    ...Object.values(rest).flatMap((part) => propertiesOf(part, noun)),
  ];
}

const PROPERTIES = propertiesOf(schema);

describe('the published JSON Schema', () => {
  test('is named holdfast.facility/1 and is of draft 2020-12', () => {
    expect(schema).toMatchObject({
      $id: 'holdfast.facility/1',
      $schema: 'https://json-schema.org/draft/2020-12/schema',
    });
  });

  test('describes every field', () => {
    expect(PROPERTIES.length).toBeGreaterThan(150);
    expect(PROPERTIES.filter(([, { description = '' }]) => !/\w.*\.$/.test(description)).map(([name]) => name)).toEqual(
      [],
    );
  });

  test('says the unit of every field that is named by one', () => {
    const units = [
      'LPerHPerMm',
      'LPerH',
      'GPerH',
      'WPerK',
      'GPerDay',
      'MgPerKgH',
      'MgL',
      'Days',
      'Min',
      'Pct',
      'M2',
      'Mm',
    ] as const;
    // Alkalinity is told by the chemist's unit, whose name ends like that of litres.
    const mmol = { MmolPerL: 'mmolLSigned', MmolL: 'mmolL' } as const;
    const single = ['C', 'L', 'M', 'S', 'H', 'W', 'A', 'G'] as const;
    const unitIn = (name: string) =>
      Object.entries(mmol).find(([end]) => name.endsWith(end))?.[1] ??
      units.find((unit) => name.endsWith(unit)) ??
      single.find((unit) => new RegExp(`[a-z]${unit}$`).test(name));
    const named = PROPERTIES.flatMap(([name, { description = '' }]) => {
      const unit = unitIn(name);
      return unit ? [{ name, description, symbol: unitOf(unit).symbol }] : [];
    });
    expect(named.length).toBeGreaterThan(45);
    expect(
      named.filter(({ description, symbol }) => !description.includes(`(${symbol})`)).map(({ name }) => name),
    ).toEqual([]);
  });

  test('takes every file that is written', () => {
    fc.assert(
      fc.property(anyFacility(), (given) => {
        expect(validates(JSON.parse(writeFacility(given)))).toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  test('takes a file with units, omissions and a schema of its own', () => {
    const small = parse(readFileSync(new URL('small-file.yaml', import.meta.url), 'utf8'));
    expect(validates({ $schema: './facility.json', ...small })).toBe(true);
  });

  test('is printed by the command line', async () => {
    const { stdout } = await promisify(execFile)('npm', ['run', '-s', 'schema'], { maxBuffer: 10_000_000 });
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(schema)));
  });
});

describe('the schema and the reader refuse the same', () => {
  const good = JSON.parse(writeFacility(facility()));

  test.each([
    ['no format', ['format'], undefined],
    ['another format', ['format'], 'holdfast.facility/2'],
    ['an unknown field', ['site', 'nam'], 'x'],
    ['an unknown field deep down', ['systems', 0, 'equipment', 0, 'plan', 'regulation', 'lowF'], 77],
    ['a number as a name', ['site', 'name'], 12],
    ['a key with capitals', ['rooms', 0, 'key'], 'Gallery'],
    ['a time without its zero', ['shifts', 0, 'from'], '8:00'],
    ['a date of another order', ['safeguards', 0, 'tests', 0, 'on'], '02-03-2026'],
    ['a negative volume', ['systems', 0, 'tanks', 0, 'volumeL'], -1],
    ['an empty tank', ['systems', 0, 'tanks', 0, 'volumeL'], 0],
    ['water that boils', ['systems', 0, 'equipment', 0, 'plan', 'regulation', 'highC'], 99],
    ['a share of two', ['systems', 0, 'equipment', 0, 'heatToWater'], 2],
    ['more than damp air', ['rooms', 0, 'humidityPct'], 101],
    ['23 hours', ['rooms', 0, 'temperatureC'], Array(23).fill(20)],
    ['a figure without a value', ['rooms', 0, 'temperatureC'], { from: 'measured' }],
    ['a figure from nowhere', ['rooms', 0, 'temperatureC'], { value: 20, from: 'guessed' }],
    ['a figure that is text', ['rooms', 0, 'temperatureC'], 'warm'],
    ['a kind that is none', ['systems', 0, 'kind'], 'pond'],
    ['a regulation that is none', ['systems', 0, 'equipment', 0, 'plan', 'regulation', 'kind'], 'fuzzy'],
    ['no regulation', ['systems', 0, 'equipment', 0, 'plan', 'regulation'], undefined],
    ['half an animal', ['systems', 0, 'stock', 0, 'count'], 0.5],
    ['a shift of nobody', ['shifts', 0, 'people'], []],
    ['a day twice', ['shifts', 0, 'days'], ['mon', 'mon']],
    ['a list that is none', ['people'], { robin: {} }],
    ['answered by anybody', ['site', 'watchdog', 'answeredBy'], 'anybody'],
    ['answered by an empty list', ['site', 'watchdog', 'answeredBy'], []],
  ])('%s', (_, path, value) => {
    const bad = changed(good, path, value);
    expect(validates(good)).toBe(true);
    expect(facilityShape.safeParse(good).success).toBe(true);
    expect(validates(bad)).toBe(false);
    expect(facilityShape.safeParse(bad).success).toBe(false);
  });
});

describe('the random facilities of these tests', () => {
  test('have every field of the file now and then, so that no field goes untested', () => {
    const seen = new Set<string>();
    const note = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      for (const [name, part] of Object.entries(value)) {
        seen.add(name);
        note(part);
      }
    };
    for (const given of fc.sample(anyFacility(), { numRuns: 200, seed: 4 })) note(JSON.parse(writeFacility(given)));
    const missing = PROPERTIES.map(([path]) => path.split('.').at(-1) ?? '').filter((name) => !seen.has(name));
    expect(missing).toEqual(['$schema']);
  });
});

test('every default tolerance profile is one that a file could hold', () => {
  for (const profile of DEFAULT_PROFILES) expect(toleranceProfileShape.parse(profile)).toEqual(profile);
});

function changed(value: unknown, [step, ...rest]: readonly (string | number)[], to: unknown): unknown {
  if (step === undefined) return to;
  const copy = structuredClone(value) as Record<string | number, unknown>;
  copy[step] = changed(copy[step], rest, to);
  if (copy[step] === undefined) delete copy[step];
  return copy;
}
