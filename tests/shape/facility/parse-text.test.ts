import { LONGEST, parseText } from '#shape/facility/parse-text';
import { describe, expect, test } from 'vitest';

/** The data of a text, or its faults as `line:column message`. */
function parsed(text: string, format?: 'json' | 'yaml'): unknown {
  const read = parseText(text, format);
  return read.ok ? read.value.data : read.reason.map(({ line, column, message }) => `${line}:${column} ${message}`);
}

describe('YAML', () => {
  test('leaves times, dates, yes and no as text', () => {
    expect(parsed('{a: 07:30, b: 2026-03-02, c: no, d: yes, e: on, f: 1_000, g: 12:30:45}')).toEqual({
      a: '07:30',
      b: '2026-03-02',
      c: 'no',
      d: 'yes',
      e: 'on',
      f: '1_000',
      g: '12:30:45',
    });
  });

  test('cannot be told to read as an older version', () => {
    expect(parsed('%YAML 1.1\n---\na: 07:30\nb: no')).toEqual({ a: '07:30', b: 'no' });
  });

  test('says so when a tab indents', () => {
    expect(parsed('a:\n\tb: 1')).toContain('2:1 a tab is used to indent; YAML takes spaces only');
  });

  test('refuses the same field twice', () => {
    expect(parsed('a: 1\nb: 2\na: 3')).toEqual(['3:1 the same field stands twice in one place']);
  });

  test.each(['a: !!binary aGk=', 'a: !!timestamp 2026-03-02', 'a: !own x', 'a: !!set {b, c}'])(
    'refuses the tag of %s',
    (text) => {
      expect(parsed(text)).toEqual([expect.stringMatching(/^1:4 a tag is used, which a facility file may not have/)]);
    },
  );

  test('refuses a second document', () => {
    expect(parsed('a: 1\n---\nb: 2')).toEqual(['2:1 a second document begins here; a facility file holds one']);
  });

  test('takes an alias within bounds, and says where what it stands for is', () => {
    const read = parseText('a: &x\n  b: 1\nc: *x');
    expect(read.ok && read.value.data).toEqual({ a: { b: 1 }, c: { b: 1 } });
    expect(read.ok && read.value.placeOf(['c', 'b'])).toEqual({ line: 2, column: 3 });
  });

  test('refuses aliases that multiply, lead nowhere or into themselves', () => {
    const ten = (name: string) => `[${Array.from({ length: 10 }, () => name).join(', ')}]`;
    const bomb = `a: &a ${ten('x')}\nb: &b ${ten('*a')}\nc: &c ${ten('*b')}\nd: ${ten('*c')}`;
    expect(parsed(bomb)).toEqual(['1:1 the file uses aliases that are missing or multiply beyond 100']);
    expect(parsed('a: *b')).toEqual(['1:1 the file uses aliases that are missing or multiply beyond 100']);
    expect(parsed('a: &a [*a]')).toEqual(['1:1 the file is nested too deeply']);
  });

  test('has no merging of fields: << is a field like any other', () => {
    expect(parsed('<<: {a: 1}')).toEqual({ '<<': { a: 1 } });
  });

  test('says where a bracket is missing', () => {
    expect(parsed('a: [1, 2\nb: 3')).toEqual(
      expect.arrayContaining([expect.stringMatching(/^2:\d+ cannot be read here/)]),
    );
  });
});

describe('JSON', () => {
  test('may be indented by tabs and holds every escape', () => {
    const value = { a: [1, -2.5e-3, true, null, ''], b: { c: 'é\n\t"\\/🐟' } };
    expect(parsed(JSON.stringify(value, null, '\t'), 'json')).toEqual(value);
    expect(parsed('{"a": "\\ud83d\\udc1f\\/"}', 'json')).toEqual({ a: '🐟/' });
  });

  test('is held to the letter', () => {
    expect(parsed('{\n  "a": 1,\n}', 'json')).toEqual(['3:1 the file is not JSON from here on']);
    expect(parsed('{"a": 1, # no\n "b": 2}', 'json')).toEqual(['1:10 the file is not JSON from here on']);
  });

  test('refuses the same field twice', () => {
    expect(parsed('{"a": 1,\n "a": 2}', 'json')).toEqual(['2:2 the same field stands twice in one place']);
  });

  test('keeps __proto__ a field, so that it is seen and refused', () => {
    const read = parseText('{"__proto__": {"x": 1}}', 'json');
    expect(read.ok && Object.keys(read.value.data as object)).toEqual(['__proto__']);
  });
});

describe('any file', () => {
  test('that is empty says so', () => {
    for (const text of ['', ' \n', '\uFEFF', '# only a comment'])
      expect(parsed(text), text).toEqual(text.startsWith('#') ? null : ['1:1 the file is empty']);
  });

  test('that is too long or nested too deeply is refused before it does harm', () => {
    expect(parsed(' '.repeat(LONGEST + 1))).toEqual([`1:1 the file is longer than ${LONGEST} characters`]);
    expect(parsed('['.repeat(50_000))).toEqual(['1:1 the file is nested too deeply']);
    expect(parsed(`${'['.repeat(41)}${']'.repeat(41)}`)).toEqual(['1:1 the file is nested too deeply']);
  });

  test.each(['{', '{ a: '])('of nothing but %s is refused as well', (opening) => {
    expect(parsed(opening.repeat(50_000))).toEqual(['1:1 the file is nested too deeply']);
  });

  test('with more fields in one place than any noun has is refused before they are compared', () => {
    const fields = Array.from({ length: 200_000 }, (_, at) => `a${at}: 1`);
    expect(parsed(fields.join('\n'))).toEqual(['1:1 the file has more than 200 fields in one place']);
    expect(parsed(`{${fields.join(', ')}}`)).toEqual(['1:1 the file has more than 200 fields in one place']);
    expect(parsed(`a: [${Array(1000).fill('1').join(', ')}]`)).toEqual({ a: Array(1000).fill(1) });
  });

  test('tells where each part stands, and where it would', () => {
    const read = parseText('a: 1\nb:\n  - c: 2\n  - d: 3\n');
    const place = (...path: (string | number)[]) => (read.ok ? read.value.placeOf(path) : null);
    expect(place('b', 1, 'd')).toEqual({ line: 4, column: 5 });
    expect(place('b', 1)).toEqual({ line: 4, column: 5 });
    expect(place('b', 1, 'missing')).toEqual({ line: 4, column: 5 });
    expect(place('missing')).toEqual({ line: 1, column: 1 });
    expect(place()).toEqual({ line: 1, column: 1 });
  });
});
