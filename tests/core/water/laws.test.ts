import { existsSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Argument, Law } from '#core/water/law';
import { lawFiles, WATER } from './catalogue';

const files = await lawFiles();
const laws = files.flatMap((file) => file.laws);
const named = laws.map((law): [string, Law<number[]>] => [law.id, law]);

function span({ low, high }: Argument) {
  return fc.double({ min: low, max: high, noNaN: true });
}

/** Arguments inside the law's range, those that break a relation between them left out. */
function inside(law: Law<number[]>) {
  return fc.tuple(...law.arguments.map(span)).filter((values) => law.inRange(...values));
}

/** Any finite number of a size that a broken description could still hold. */
const anything = fc.oneof(fc.double({ min: -1e12, max: 1e12, noNaN: true }), fc.integer({ min: -300, max: 300 }));

test('the catalogue sees the whole room', () => {
  expect(files.length).toBeGreaterThan(20);
  expect(laws.length).toBeGreaterThanOrEqual(files.length);
  expect(new Set(laws.map((law) => law.id)).size).toBe(laws.length);
});

describe.each(named)('%s at the edge', (_id, law) => {
  test('computes what the plain function computes, while every argument is in range', () => {
    fc.assert(fc.property(inside(law), (values) => Object.is(law.checked(...values), law.compute(...values))));
  });

  test('is never NaN in range, and Infinity means never', () => {
    fc.assert(fc.property(inside(law), (values) => law.compute(...values) > Number.NEGATIVE_INFINITY));
  });

  test('refuses what is not a number or out of range, and names the argument', () => {
    const bad = ({ low, high }: Argument) => [
      Number.NaN,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      low - Math.max(1e-9, Math.abs(low) / 1e6),
      high + Math.abs(high) / 1e6,
      -1e300,
      1e300,
    ];
    const [good] = fc.sample(inside(law), { numRuns: 1, seed: 7 });
    if (good === undefined) throw new Error('no arguments in range');
    for (const [i, argument] of law.arguments.entries()) {
      for (const value of bad(argument)) {
        const values = good.with(i, value);
        expect(law.inRange(...values)).toBe(false);
        expect(() => law.checked(...values)).toThrow(RangeError);
        expect(() => law.checked(...values)).toThrow(`${law.id}: ${argument.name} is `);
      }
    }
  });

  test('goes on outside its range without ever yielding NaN', () => {
    const wild = fc.tuple(...law.arguments.map(() => anything));
    fc.assert(
      fc.property(wild, (values) => !Number.isNaN(law.compute(...values))),
      { numRuns: 1000 },
    );
  });

  test('passes a NaN on, wherever it stands, and never turns it into a number', () => {
    const place = fc.nat({ max: law.arguments.length - 1 });
    fc.assert(fc.property(inside(law), place, (values, i) => Number.isNaN(law.compute(...values.with(i, Number.NaN)))));
  });
});

describe.each(files.map((file): [string, (typeof files)[number]] => [file.name, file]))('%s', (_name, file) => {
  test('exports a law object, and says beyond which range and by what it goes on', () => {
    expect(file.laws.length).toBeGreaterThan(0);
    expect(file.text).toMatch(/Beyond/);
  });

  test('says what holds, what is left out, the source, and where it is checked', () => {
    for (const line of ['Holds', 'Leaves out', 'Source', 'Checked']) expect(file.text).toMatch(` * ${line} `);
    const cited = [...file.text.matchAll(/tests\/(?:core|reference)\/[\w/-]+\.(?:test\.ts|json)/g)].map(
      ([path]) => path,
    );
    expect(cited.length).toBeGreaterThan(0);
    for (const path of cited) expect(existsSync(new URL(`../../../${path}`, import.meta.url)), path).toBe(true);
  });
});

interface SourceEntry {
  law: string;
  title: string;
  equation: string;
  unit: string;
  source: string;
  values: string;
  range: { argument: string; low: number; high: number; unit: string }[];
}

describe('the list of sources', () => {
  const entries = JSON.parse(readFileSync(new URL('sources.json', WATER), 'utf8')) as SourceEntry[];

  test('names every law once and nothing else', () => {
    expect(entries.map((entry) => entry.law).sort()).toEqual(laws.map((law) => law.id).sort());
  });

  test('prints the range and the unit that the code holds to', () => {
    for (const law of laws) {
      const entry = entries.find((candidate) => candidate.law === law.id);
      expect(entry?.unit).toBe(law.unit);
      const range = law.arguments.map(({ name, low, high, unit }) => ({ argument: name, low, high, unit }));
      expect(entry?.range, law.id).toEqual(range);
    }
  });

  test('gives each a title, an equation, a source, and whether its values were read or recalled', () => {
    for (const entry of entries) {
      expect(entry.title && entry.equation && entry.source, entry.law).toBeTruthy();
      expect(['seen', 'from memory'], entry.law).toContain(entry.values);
    }
  });
});
