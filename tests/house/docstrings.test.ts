import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { type ArgumentUnits, docstringFaults, lawFaults, opensRoom } from './inspect/docstring';
import { exportedFunctions } from './inspect/exported-functions';
import { listFiles, ROOT, readText } from './inspect/files';
import { parse } from './inspect/source';

const WATER = 'app/_core/water/';
/** What laws are made of, and no law itself. */
const NO_LAW = [`${WATER}law.ts`, `${WATER}carbonate-balance.ts`];

const core = listFiles(['app/_core'], /\.ts$/);
const laws = core.filter((path) => path.startsWith(WATER) && !NO_LAW.includes(path));

const LawObject = z.object({
  compute: z.custom<(...values: number[]) => number>((value) => typeof value === 'function'),
  arguments: z.array(z.object({ name: z.string(), unit: z.string() })),
});

/** What the law objects of a file say of the arguments of each function. */
async function unitsIn(path: string): Promise<Record<string, ArgumentUnits>> {
  const exported: Record<string, unknown> = await import(join(ROOT, path));
  const objects = Object.values(exported).flatMap((value) => LawObject.safeParse(value).data ?? []);
  return Object.fromEntries(
    objects.map((law) => [law.compute.name, Object.fromEntries(law.arguments.map(({ name, unit }) => [name, unit]))]),
  );
}

/** Faults of the docstrings of one file, each with its place. */
function faultsOf(path: string, text?: string, units?: Record<string, ArgumentUnits>): string[] {
  const file = exportedFunctions(parse(path, text));
  return file.flatMap((one) => {
    const faults = [...docstringFaults(one), ...(units ? lawFaults(one, file, units[one.name]) : [])];
    return faults.map((fault) => `${path}:${one.line} ${fault}`);
  });
}

describe('the core says what it does', () => {
  test('every exported function has a docstring', () => {
    expect(core.flatMap((path) => exportedFunctions(parse(path))).length).toBeGreaterThan(20);
    expect(core.flatMap((path) => faultsOf(path))).toEqual([]);
  });

  test('every law of water names a unit for each number, its source and its check', async () => {
    expect(laws.length).toBeGreaterThan(5);
    const faults = await Promise.all(laws.map(async (path) => faultsOf(path, readText(path), await unitsIn(path))));
    expect(faults.flat()).toEqual([]);
  });

  test('every room of the core has one file that opens with what it knows, leaves out, and takes its numbers from', () => {
    const rooms = [...new Set(core.map((path) => path.split('/')[2] ?? ''))].filter((name) => !name.includes('.'));
    expect(rooms.length).toBeGreaterThan(5);
    const openings = rooms.map((room) => ({
      room,
      files: core.filter((path) => path.startsWith(`app/_core/${room}/`) && opensRoom(readText(path))),
    }));
    expect(openings.filter(({ files }) => files.length !== 1)).toEqual([]);
  });
});

const LAW = [
  '/**',
  ' * Heat lost through a wall.',
  ' *',
  ' * @param area   m²        0 to 100',
  ' * @param share  part of it that is wet; 0 to 1',
  ' * @param drop   °C        −50 to 50',
  ' * @returns      W/(m²·K)',
  ' *',
  ' * Source     Geometry.',
  ' * Checked    tests/core/water/wall.test.ts.',
  ' */',
  'export function wall(area: number, share: number, drop: number): number {',
  '  return area * share * drop;',
  '}',
  '',
];

describe('the rule about docstrings', () => {
  const faults = (lines: string[]): string[] => faultsOf('wall.ts', lines.join('\n'), {});
  const without = (words: string): string[] => faults(LAW.filter((line) => !line.includes(words)));

  test('passes a law that says everything', () => {
    expect(faults(LAW)).toEqual([]);
  });

  test('reports a function without a docstring, declared or held by a constant', () => {
    expect(faults(LAW.slice(11))).toEqual(['wall.ts:1 wall has no docstring']);
    expect(faults(['export const wall = (area: number): number => area;'])).toEqual([
      'wall.ts:1 wall has no docstring',
    ]);
    expect(faults(['/* a label */', ...LAW.slice(11)])).toEqual(['wall.ts:2 wall has no docstring']);
  });

  test('reports a law without a unit, without a source or without a check', () => {
    expect(without('@param area')).toEqual(['wall.ts:11 wall gives no unit for area']);
    expect(without('@returns')).toEqual(['wall.ts:11 wall gives no unit for what it returns']);
    expect(without('Source')).toEqual(['wall.ts:11 wall has no line "Source"']);
    expect(without('Checked')).toEqual(['wall.ts:11 wall has no line "Checked"']);
    const wordy = LAW.map((line) => line.replace('m²        0 to 100', 'the area of the wall'));
    expect(faults(wordy)).toEqual(['wall.ts:12 wall gives no unit for area']);
  });

  test('reports a unit that differs from the one in the law object', () => {
    const units = { wall: { area: 'cm²', share: '', drop: '°C' } };
    expect(faultsOf('wall.ts', LAW.join('\n'), units)).toEqual(['wall.ts:12 wall gives no unit for area']);
  });

  test('lets a law refer to its neighbour, but not to nobody', () => {
    const other = (name: string): string[] => [
      ...LAW,
      `/** The same, doubled. Source, checked: as \`${name}\`. */`,
      'export const double = (): string => String(2);',
    ];
    expect(faults(other('wall'))).toEqual([]);
    expect(faults(other('roof')).length).toBe(2);
  });

  test('sees whether a room is opened', () => {
    const lines = ['What this room knows: heat.', 'What it leaves out: light.', 'Where the numbers come from: books.'];
    expect(opensRoom(`/**\n${lines.map((line) => ` * ${line}\n`).join('')} */\n`)).toBe(true);
    expect(
      opensRoom(
        `/**\n${lines
          .slice(1)
          .map((line) => ` * ${line}\n`)
          .join('')} */\n`,
      ),
    ).toBe(false);
  });
});
