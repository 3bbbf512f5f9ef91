import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { FAULTS as FAULT_MODES, groupOf, UNCARRIED } from '#core/faults/catalogue';
import { PAPER_KINDS } from '#core/facility/paper';
import { RULES as RULES_LISTED } from '#core/review/rules/catalogue';
import { listOf, modeNames } from '../_support/list-faults.mjs';
import { catalogueFaults, type Entry, type EntryFile } from './inspect/catalogue';
import { listFiles, ROOT, readText } from './inspect/files';

const words = z.string().trim().min(3);
const call = z.custom<(...given: unknown[]) => unknown>((value) => typeof value === 'function');
const FaultEntry = z.object({ id: words, title: words, effect: words, source: words });
const RuleEntry = z.object({
  id: words,
  title: words,
  why: words,
  source: words,
  check: call,
  passing: call,
  failing: call,
});

const FAULTS = 'app/_core/faults/modes';
const RULES = 'app/_core/review/rules';
/** Where the entries of a folder are listed. */
const LISTS: Record<string, string> = { [FAULTS]: 'app/_core/faults/mode-list.ts', [RULES]: `${RULES}/catalogue.ts` };
/** Files of the folders that are no entry: what an entry is, and the list itself. */
const SUPPORT: Record<string, string[]> = { [RULES]: ['catalogue', 'rule'] };

const load = async (path: string): Promise<Record<string, unknown>> => import(join(ROOT, path));

async function entryFiles(folder: string, exported: string): Promise<EntryFile[]> {
  const direct = listFiles([folder], /\.ts$/).filter((path) => path.split('/').length === folder.split('/').length + 1);
  const names = direct.map((path) => basename(path, '.ts')).filter((name) => !SUPPORT[folder]?.includes(name));
  return Promise.all(
    names.map(async (name) => {
      const entry = (await load(`${folder}/${name}.ts`))[exported];
      return { name, entry: z.object({ id: z.string() }).safeParse(entry).success ? (entry as Entry) : undefined };
    }),
  );
}

/** The one array a catalogue exports. */
async function listed(folder: string): Promise<Entry[]> {
  const lists = Object.values(await load(LISTS[folder] ?? '')).filter((value) => Array.isArray(value));
  expect(lists.length).toBe(1);
  return lists[0] ?? [];
}

describe.each([
  { folder: FAULTS, exported: 'fault', shape: FaultEntry },
  { folder: RULES, exported: 'rule', shape: RuleEntry },
])('the catalogue of $folder', ({ folder, exported, shape }) => {
  test('lists every file of its folder exactly once, each with an id equal to its file name', async () => {
    expect(catalogueFaults(await entryFiles(folder, exported), await listed(folder))).toEqual([]);
  });

  test('says of every entry what it is about and where it comes from', async () => {
    const entries = await listed(folder);
    expect(entries.length).toBeGreaterThan(0);
    const lacking = entries.flatMap((entry) => {
      const problems = shape.safeParse(entry).error?.issues ?? [];
      return problems.map(({ path, message }) => `${entry.id} ${path.join('.')}: ${message}`);
    });
    expect(lacking).toEqual([]);
  });
});

test('the list of failure modes is as `npm run list-faults` writes it: run that after adding a file', () => {
  expect(modeNames().length).toBeGreaterThan(100);
  expect(readText('app/_core/faults/mode-list.ts')).toBe(listOf(modeNames()));
});

test('every failure mode stands in a row that belongs somewhere, and shares its water with one that is there', () => {
  const modes = [...FAULT_MODES, ...UNCARRIED];
  expect(modes.filter((mode) => groupOf(mode) === '').map(({ id }) => id)).toEqual([]);
  const primary = new Set(FAULT_MODES.filter(({ sameAs }) => sameAs === undefined).map(({ id }) => id));
  expect(FAULT_MODES.filter(({ sameAs }) => sameAs !== undefined && !primary.has(sameAs))).toEqual([]);
});

test('what a failure mode that is not carried asks for is there to be asked', () => {
  const rules = new Set(RULES_LISTED.map(({ id }) => id));
  const kinds: readonly string[] = PAPER_KINDS;
  const asked = UNCARRIED.flatMap(({ id, asks }) => (asks ? [{ id, asks }] : []));
  expect(asked.length).toBeGreaterThan(20);
  const lacking = asked.filter(({ asks }) => ('rule' in asks ? !rules.has(asks.rule) : !kinds.includes(asks.paper)));
  expect(lacking).toEqual([]);
});

describe('every rule is tried on its own two examples', () => {
  test('it finds nothing in the passing one and something in the failing one', async () => {
    const rules = z.array(RuleEntry).parse(await listed(RULES));
    expect(rules.length).toBeGreaterThan(0);
    const findings = (found: unknown): number => z.array(z.unknown()).parse(found).length;
    const wrong = rules.flatMap((rule) => [
      ...(findings(rule.check(rule.passing())) === 0 ? [] : [`${rule.id} objects to its passing example`]),
      ...(findings(rule.check(rule.failing())) > 0 ? [] : [`${rule.id} says nothing of its failing example`]),
    ]);
    expect(wrong).toEqual([]);
  });
});

describe('the rule about catalogues', () => {
  const heater = { id: 'heater-on' };
  const files = [{ name: 'heater-on', entry: heater }];

  test('passes a folder whose one file is listed once', () => {
    expect(catalogueFaults(files, [heater])).toEqual([]);
  });

  test('reports an entry left out, listed twice, misnamed, missing, and an empty folder', () => {
    expect(catalogueFaults(files, [])).toEqual(['heater-on is listed 0 times']);
    expect(catalogueFaults(files, [heater, heater])).toEqual(['heater-on is listed 2 times']);
    expect(catalogueFaults([{ name: 'heater-dead', entry: heater }], [heater])).toEqual([
      'heater-dead calls itself heater-on',
    ]);
    expect(catalogueFaults([...files, { name: 'pump', entry: undefined }], [heater])).toEqual([
      'pump exports no entry',
    ]);
    expect(catalogueFaults(files, [heater, { id: 'ghost' }])).toEqual(['ghost is listed and has no file']);
    expect(catalogueFaults([], [])).toEqual(['the folder holds nothing']);
  });
});
