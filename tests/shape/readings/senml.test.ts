import { describe, expect, test } from 'vitest';
import type { Arrived } from '#core/readings/arrived';
import { duplicateLabel } from '#shape/readings/duplicate-label';
import { parseSenml } from '#shape/readings/parse-senml';

/** The instant of the example in RFC 8428, 5.1.3: 2010-06-08T18:01:16.001Z. */
const NOW = 1_276_020_076_001;

function read(pack: unknown, nowMs = NOW) {
  return parseSenml(typeof pack === 'string' ? pack : JSON.stringify(pack), nowMs);
}

/** What the records of a pack say, each understood. */
function understood(pack: unknown): Arrived[] {
  const answer = read(pack);
  if (!answer.ok) throw new Error(answer.reason.why);
  return answer.value.map((record) => {
    if (!record.ok) throw new Error(record.reason.why);
    return record.value;
  });
}

const fault = (pack: unknown) => {
  const answer = read(pack);
  return answer.ok ? null : `${answer.reason.field}: ${answer.reason.why}`;
};
const faults = (pack: unknown) => {
  const answer = read(pack);
  if (!answer.ok) throw new Error(answer.reason.why);
  return answer.value.map((record) => (record.ok ? null : `${record.reason.field}: ${record.reason.why}`));
};

// The examples of RFC 8428, sections 5.1.1 to 5.1.5.
describe('a pack of RFC 8428', () => {
  test('5.1.1: one reading, taken now', () => {
    expect(understood([{ n: 'urn:dev:ow:10e2073a01080063', u: 'Cel', v: 23.1 }])).toEqual([
      { name: 'urn:dev:ow:10e2073a01080063', unit: 'Cel', value: 23.1, atMs: NOW },
    ]);
  });

  test('5.1.2: two readings under one base name', () => {
    const pack = [
      { bn: 'urn:dev:ow:10e2073a01080063:', n: 'voltage', u: 'V', v: 120.1 },
      { n: 'current', u: 'A', v: 1.2 },
    ];
    expect(understood(pack)).toMatchObject([
      { name: 'urn:dev:ow:10e2073a01080063:voltage', unit: 'V', value: 120.1 },
      { name: 'urn:dev:ow:10e2073a01080063:current', unit: 'A', value: 1.2 },
    ]);
  });

  test('5.1.2: a base time, a base unit and a version of old', () => {
    const pack = [
      { bn: 'urn:dev:ow:10e2073a0108006:', bt: 1.276020076001e9, bu: 'A', bver: 5, n: 'voltage', u: 'V', v: 120.1 },
      ...[1.2, 1.3, 1.4, 1.5, 1.6].map((v, i) => ({ n: 'current', t: i - 5, v })),
      { n: 'current', v: 1.7 },
    ];
    const [voltage, ...current] = understood(pack);
    expect(voltage).toMatchObject({ unit: 'V', value: 120.1, atMs: 1_276_020_076_001 });
    expect(current.map(({ atMs, value, unit }) => [atMs, value, unit])).toEqual([
      [1_276_020_071_001, 1.2, 'A'],
      [1_276_020_072_001, 1.3, 'A'],
      [1_276_020_073_001, 1.4, 'A'],
      [1_276_020_074_001, 1.5, 'A'],
      [1_276_020_075_001, 1.6, 'A'],
      [1_276_020_076_001, 1.7, 'A'],
    ]);
  });

  test('5.1.3: many readings of two kinds, with times after the base', () => {
    const pack = [
      { bn: 'urn:dev:ow:10e2073a01080063', bt: 1.320067464e9, bu: '%RH', v: 20 },
      { v: 20.3, t: 60 },
      { v: 20.7, t: 120 },
      { u: '%EL', v: 98, t: 150 },
      { v: 21.2, t: 180 },
    ];
    expect(understood(pack).map(({ atMs, value, unit }) => [atMs / 1000, value, unit])).toEqual([
      [1_320_067_464, 20, '%RH'],
      [1_320_067_524, 20.3, '%RH'],
      [1_320_067_584, 20.7, '%RH'],
      [1_320_067_614, 98, '%EL'],
      [1_320_067_644, 21.2, '%RH'],
    ]);
  });

  test('5.1.5: texts and data are no readings, a switch is', () => {
    const pack = [
      { bn: 'urn:dev:ow:10e2073a01080063:', n: 'temp', u: 'Cel', v: 23.1 },
      { n: 'label', vs: 'Machine Room' },
      { n: 'open', vb: false },
      { n: 'nfc-reader', vd: 'aGkgCg' },
    ];
    const only = 'is no number: only v and vb are readings';
    expect(faults(pack)).toEqual([null, `vs: ${only}`, null, `vd: ${only}`]);
  });
});

describe('a time', () => {
  test('below 2^28 s is counted from now, also forward, and is an instant from there on (4.5.3)', () => {
    const at = (t: number) => understood([{ n: 'a', v: 1, t }])[0]?.atMs;
    expect(at(-5)).toBe(NOW - 5000);
    expect(at(268_435_455)).toBe(NOW + 268_435_455_000);
    expect(at(268_435_456)).toBe(Date.parse('1978-07-04T21:24:16Z'));
  });

  test('is held against the sum of base and own', () => {
    expect(understood([{ bt: 1.5e9, n: 'a', v: 1, t: -1 }])[0]?.atMs).toBe(1_499_999_999_000);
  });
});

describe('a record', () => {
  test('has its base value added until there is another, and keeps a unit of its own', () => {
    const pack = [{ bn: 'a', bv: 20, bu: 'Cel', v: 1.5 }, { v: 2 }, { bv: 0, v: 2, u: 'K' }];
    expect(understood(pack).map(({ value, unit }) => [value, unit])).toEqual([
      [21.5, 'Cel'],
      [22, 'Cel'],
      [2, 'K'],
    ]);
  });

  test.each([
    [{ v: 1 }, 'n: there is no name, neither in n nor in bn'],
    [{ n: 'a' }, 'v: there is no value'],
    [{ n: 'a', v: 1, vb: true }, 'vb: there is a value already, in v'],
    [{ n: 'a', v: '23.1' }, 'v: must be a number that is not endless'],
    [{ n: 'a', v: null }, 'v: must be a number that is not endless'],
    [{ n: 'a', vb: 1 }, 'vb: must be true or false'],
    [{ n: 'a', s: 12 }, 's: sums are not kept: send the readings themselves'],
    [{ n: 'a', bs: 12 }, 'bs: sums are not kept: send the readings themselves'],
    [{ n: 'a', v: 1, ut: -1 }, 'ut: must not be below 0'],
    [
      { n: 'a', v: 95, u: '%' },
      'u: in SenML % is a ratio of which 1 is all: write /100 for hundredths, or / for the ratio',
    ],
    [{ n: 'a', v: 1, t: 'now' }, 't: must be a number that is not endless'],
  ])('%j is refused by itself, and says why', (record, why) => {
    expect(faults([{ n: 'good', v: 1 }, record])).toEqual([null, why]);
  });

  test.each([[' a'], ['-a'], ['a b'], ['a\u0000'], ['\ud800'], ['é'], ['x'.repeat(201)]])(
    'named %j is refused',
    (n) => {
      expect(faults([{ n, v: 1 }])[0]).toContain('n: a name has letters');
    },
  );

  test('may hold labels nobody knows, and `ut`', () => {
    expect(understood([{ n: 'a', v: 1, ut: 60, foo: { deep: [1] } }])).toHaveLength(1);
  });

  test('with a number that is endless is refused, and one that is next to nothing is zero', () => {
    expect(faults('[{"n":"a","v":1e999}]')).toEqual(['v: must be a number that is not endless']);
    expect(faults('[{"bv":1e308,"n":"a","v":1e308}]')).toEqual(['v: is too large a number']);
    expect(understood('[{"n":"a","v":1e-999}]')[0]?.value).toBe(0);
  });
});

describe('a pack', () => {
  test.each([
    ['', ': is not well-formed JSON'],
    ['[{"n":"a","v":NaN}]', ': is not well-formed JSON'],
    ['{"n":"a","v":1}', ': must be a list of records in [ ]'],
    ['[]', ': must hold a record'],
    ['null', ': must be a list of records in [ ]'],
    ['[1]', '[0]: must be a record in { }'],
    ['[{"bver":11,"n":"a","v":1}]', '[0].bver: must be at most 10: a later version is not understood'],
    ['[{"bver":1.5,"n":"a","v":1}]', '[0].bver: must be a whole number'],
    ['[{"n":"a","v":1},{"bt":"x"}]', '[1].bt: must be a number that is not endless'],
    ['[{"bv":1e999}]', '[0].bv: must be a number that is not endless'],
    ['[{"n":"a","v":1,"must_":1}]', '[0].must_: must be understood, and is not'],
    ['[{"n":"a","v":1},{"n":"a","v":1,"v":2}]', '[1].v: is there twice'],
    [`${'['.repeat(200_000)}`, ': is not well-formed JSON'],
  ])('%.60s is refused as a whole', (body, why) => {
    expect(fault(body)).toBe(why);
  });

  test('that is nested without end is refused, and does no harm', () => {
    expect(fault(`${'['.repeat(200_000)}${']'.repeat(200_000)}`)).toBe('[0]: must be a record in { }');
    const deep = `[{"n":"a","v":1,"x":${'['.repeat(200_000)}${']'.repeat(200_000)}}]`;
    expect(understood(deep)).toHaveLength(1);
  });

  test('of more than 20,000 records is too large', () => {
    const answer = read(`[${'{"n":"a","v":1},'.repeat(20_000)}{"n":"a","v":1}]`);
    expect(answer).toMatchObject({ ok: false, reason: { kind: 'too-large' } });
    expect(understood(`[${'{"n":"a","v":1},'.repeat(19_999)}{"n":"a","v":1}]`)).toHaveLength(20_000);
  });
});

describe('a label that is there twice', () => {
  test.each([
    ['[{"a":1,"a":2}]', { record: 0, label: 'a' }],
    ['[{"a":"\\"a\\":,{"},{"b":1, "a" : 2 ,"\\u0062":3}]', { record: 1, label: 'b' }],
    ['[{"a":{"b":1,"b":2},"c":["c","c"]},{"a":1}]', null],
    ['[{"a":"a","b":"a"}]', null],
    ['[]', null],
  ])('of %s is %j', (text, expected) => {
    expect(duplicateLabel(text)).toEqual(expected);
  });
});
