import { describe, expect, test } from 'vitest';
import { listCode, readText } from './inspect/files';
import { countLines, functionLengths, quantile } from './inspect/measure';
import { parse } from './inspect/source';

const FILE_LINES = { median: 80, ninthTenth: 200, most: 300 };
const FUNCTION_LINES = 50;

/** Functions longer than the budget, one line of words each. */
const longFunctions = (path: string, text?: string): string[] =>
  functionLengths(parse(path, text))
    .filter((entry) => entry.lines > FUNCTION_LINES)
    .map((entry) => `${path}:${entry.line} ${entry.name} has ${entry.lines} lines`);

describe('files stay small', () => {
  const sizes = listCode().map((path) => ({ path, lines: countLines(readText(path)) }));
  const lines = sizes.map((size) => size.lines);

  test('no file is longer than 300 lines', () => {
    expect(sizes.length).toBeGreaterThan(0);
    const offenders = sizes.filter((size) => size.lines > FILE_LINES.most);
    expect(offenders.map((size) => `${size.path} has ${size.lines} lines`)).toEqual([]);
  });

  test('half of all files have at most 80 lines and nine tenths at most 200', () => {
    expect(quantile(lines, 0.5)).toBeLessThanOrEqual(FILE_LINES.median);
    expect(quantile(lines, 0.9)).toBeLessThanOrEqual(FILE_LINES.ninthTenth);
  });
});

describe('functions stay small', () => {
  test('no function is longer than 50 lines', () => {
    expect(listCode().flatMap((path) => longFunctions(path))).toEqual([]);
  });

  test('a function of 51 lines is reported by name, and the heading over tests is not', () => {
    const body = '  step();\n'.repeat(49);
    expect(longFunctions('a.ts', `export function flood() {\n${body}}\n`)).toEqual(['a.ts:1 flood has 51 lines']);
    expect(longFunctions('a.ts', `const flood = () => {\n${body}};\n`)).toEqual(['a.ts:1 flood has 51 lines']);
    expect(longFunctions('a.ts', `describe('levels', () => {\n${body}});\n`)).toEqual([]);
  });

  test('lines are counted as a reader counts them', () => {
    expect(countLines('one\ntwo\n')).toBe(2);
    expect(quantile([5, 1, 4, 2, 3, 6, 8, 7, 10, 9], 0.9)).toBe(9);
  });
});
