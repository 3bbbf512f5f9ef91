import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ESLint } from 'eslint';
import ts from 'typescript';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { STEPS } from '../steps.mjs';
import { biome } from './breach/biome';
import { COMMANDS } from './breach/commands';
import { type Graph, readGraph } from './breach/cruiser';
import { knip } from './breach/knip';
import { waysToServer } from './inspect/client';
import { listCode, ROOT } from './inspect/files';
import { firstStatement, parse } from './inspect/source';

// Whole programs are run; on a busy machine that takes its time.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

// A checker that reads nothing finds nothing and says that all is well. So each is asked what it has read of this very tree.
const code = listCode().filter((path) => !path.startsWith('prisma/'));

/** Colours change how a finding looks, not what is found. */
const isWork = (word: string) => !word.startsWith('--colors=');

test('npm test runs the very commands that are tried on planted breaches, and leaves none out when in a hurry', () => {
  for (const command of Object.values(COMMANDS)) {
    const step = STEPS.find((one) => one.command.filter(isWork).join(' ') === command.join(' '));
    expect(step, command.join(' ')).toBeDefined();
    expect(step?.isSlow).toBeUndefined();
  }
});

describe('the checkers read the tree', () => {
  let graph: Graph;

  beforeAll(async () => {
    graph = await readGraph(ROOT);
  });

  test('the compiler is one that dependency-cruiser and typescript-eslint can use: with 7 they read nothing', () => {
    expect(ts.version).toMatch(/^6\.0\./);
  });

  test('there is code to read', () => {
    expect(code.length).toBeGreaterThan(20);
  });

  test('dependency-cruiser reads every file of code', () => {
    const seen = new Set(graph.map(({ source }) => source));
    expect(code.filter((path) => !seen.has(path))).toEqual([]);
  });

  test('Biome reads every file of code', async () => {
    const report = await biome(ROOT);
    expect(report.filesRead).toBeGreaterThanOrEqual(listCode().length);
  });

  test('knip reads every file of code', async () => {
    const report = await knip(ROOT);
    expect(report.filesRead).toBeGreaterThanOrEqual(listCode().length);
  });

  test('typescript-eslint asks its three questions of every file of code', async () => {
    const linter = new ESLint({ cwd: ROOT, overrideConfigFile: join(ROOT, '.config/eslint.config.mjs') });
    const asked = await Promise.all(code.map((path) => linter.calculateConfigForFile(join(ROOT, path))));
    const unasked = code.filter((_, index) => Object.keys(asked[index]?.rules ?? {}).length !== 3);
    expect(unasked).toEqual([]);
  });

  test('no client component has a way to the server side but through an actions file', () => {
    const directive = (file: string): string =>
      /^app\/.*\.tsx?$/.test(file) && existsSync(join(ROOT, file)) ? openingOf(file) : '';
    expect(waysToServer(graph, directive)).toEqual([]);
  });
});

/** The directive a file opens with, without its quotes. */
const openingOf = (file: string): string =>
  firstStatement(parse(file)).match(/^['"](use client|use server)['"]/)?.[1] ?? '';

test('a client component that reaches the server side by a detour is seen, and one that goes through actions is not', () => {
  const from = (source: string, ...resolved: string[]): Graph[number] => ({
    source,
    dependencies: resolved.map((to) => ({ resolved: to, dependencyTypes: ['local'] })),
  });
  const opening: Record<string, string> = { 'app/form.tsx': 'use client', 'app/actions.ts': 'use server' };
  const ways = (...graph: Graph): string[] => waysToServer(graph, (file) => opening[file] ?? '');
  const server = from('app/actions.ts', 'app/_server/list.ts');
  expect(ways(from('app/form.tsx', 'app/words.ts'), from('app/words.ts', 'app/_server/list.ts'))).toEqual([
    'app/form.tsx → app/words.ts → app/_server/list.ts',
  ]);
  expect(ways(from('app/form.tsx', 'app/actions.ts'), server)).toEqual([]);
});
