import { describe, expect, test } from 'vitest';
import { borrowed, isClient } from './inspect/client-functions';
import { listCode, listFiles, readText } from './inspect/files';
import { badComments, leftOut } from './inspect/habits';
import { firstStatement, parse } from './inspect/source';

describe('nothing is left out and nothing is hushed up', () => {
  const code = listCode();

  test('no test is skipped, and none is run alone', () => {
    const tests = code.filter((path) => /^(tests|e2e)\//.test(path));
    expect(tests.length).toBeGreaterThan(5);
    expect(tests.flatMap((path) => leftOut(parse(path)))).toEqual([]);
  });

  test('no comment puts work off or tells a checker to look away', () => {
    expect(code.length).toBeGreaterThan(20);
    expect(code.flatMap((path) => badComments(parse(path)))).toEqual([]);
  });

  test('a skipped test is seen, and a string that speaks of one is not', () => {
    const seen = (text: string): string[] => leftOut(parse('a.test.ts', text));
    expect(seen("test.skip('holds', () => {});")).toEqual(['a.test.ts:1 test.skip']);
    expect(seen("describe.only('holds', () => {});")).toEqual(['a.test.ts:1 describe.only']);
    expect(seen("test.describe.skip('holds', () => {});")).toEqual(['a.test.ts:1 test.describe.skip']);
    expect(seen("xit('holds', () => {});")).toEqual(['a.test.ts:1 xit']);
    expect(seen(`const text = "test.skip('holds')"; list.only(text);`)).toEqual([]);
  });

  test('a comment that puts off or hushes up is seen, and a string that looks like one is not', () => {
    const seen = (text: string): number => badComments(parse('a.ts', text)).length;
    expect(seen(`// ${'TO'}DO later\nconst a = 1;`)).toBe(1);
    expect(seen(`const a = 1; // ${'biome'}-ignore lint: because`)).toBe(1);
    expect(seen(`/* ${'eslint'}-disable */`)).toBe(1);
    expect(seen(`/** @${'ts'}-expect-error */\nconst a = 1;`)).toBe(1);
    expect(seen(`const a = '// ${'TO'}DO later';`)).toBe(0);
    expect(seen('// What is to do comes from the core.\nconst a = 1;')).toBe(0);
  });
});

/** The line that keeps a file out of a browser's bundle; `next build` refuses a client component that reaches one. */
const MARK = "import 'server-only';";

describe('the server side says that it is', () => {
  test("every file of _data and _server begins with import 'server-only'", () => {
    const files = listFiles(['app/_data', 'app/_server'], /\.(ts|tsx)$/);
    expect(files.length).toBeGreaterThan(0);
    expect(files.filter((path) => firstStatement(parse(path)) !== MARK)).toEqual([]);
  });

  test('a file that begins otherwise is seen', () => {
    const first = (text: string): string => firstStatement(parse('a.ts', text));
    expect(first(`/** Lists systems. */\n${MARK}\nimport { list } from './list';\n`)).toBe(MARK);
    expect(first(`import { list } from './list';\n${MARK}\n`)).not.toBe(MARK);
    expect(first(`// ${MARK}\nexport const a = 1;\n`)).not.toBe(MARK);
  });
});

describe('the core keeps out of the machine', () => {
  test('the library list of the core holds the language and nothing else', () => {
    const { compilerOptions } = JSON.parse(readText('app/_core/tsconfig.json'));
    expect(compilerOptions.lib).toEqual(['ES2023']);
    expect(compilerOptions.types).toEqual([]);
  });
});

describe('what runs in a browser alone stays there', () => {
  test('no file that may run on the server calls a function out of a file of the browser', () => {
    const sources = listFiles(['app'], /\.(ts|tsx)$/).map((path) => parse(path));
    expect(sources.filter(isClient).length).toBeGreaterThan(20);
    expect(borrowed(sources)).toEqual([]);
  });

  test('such a call is seen, and a component or a type that is borrowed is not', () => {
    const client = parse('app/_ui/a/fields.tsx', "'use client';\nexport function pick() {}");
    const seen = (text: string) => borrowed([client, parse('app/_ui/a/body.tsx', text)]).length;
    expect(seen("import { Fields, pick } from './fields';")).toBe(1);
    expect(seen("import { pick } from '#ui/a/fields';")).toBe(1);
    expect(seen("import { pick } from '../b/fields';")).toBe(0);
    expect(seen("import { Fields, type Given } from './fields';")).toBe(0);
    expect(seen("'use client';\nimport { pick } from './fields';")).toBe(0);
  });
});
