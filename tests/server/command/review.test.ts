import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Facility } from '#core/facility/facility';
import { type FacilityReview, VERDICTS } from '#core/review/result';
import { writeFacility } from '#shape/facility/write-facility';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../app/_start/places.mjs';
import { airBlower, cutOut, heater, plan, thermostat } from '../../_support/build-equipment';
import { facility, room, shift } from '../../_support/build-facility';
import { safeguard, stock, system, tank } from '../../_support/build-system';
import { type Ended, runProgram } from '../../_support/run-program';
import { temporaryFolder } from '../../_support/temporary-folder';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const ON = ['--on', '2026-06-01'];

/** The command as package.json writes it, without any database. */
function review(...words: string[]): Promise<Ended> {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const [tsx, ...args] = String(scripts.review).split(' ');
  expect(tsx).toBe('tsx');
  return runProgram(['node_modules/tsx/dist/cli.mjs', ...args, ...words], {
    DATABASE_URL: undefined,
    HOLDFAST_DATA: at('no-data'),
  });
}

/** A small warm tank, well guarded, unless its heater is given another size and no cut-out. */
const calm = (key: string, watts = 60, cutOuts = [cutOut({ tank: 'display' })]) =>
  system({
    key,
    name: `Tank ${key}`,
    kind: 'tropical-fresh',
    salinity: 0,
    tanks: [
      tank({
        volumeL: 200,
        surfaceM2: 0.4,
        lossWPerK: 8,
        rimMm: 60,
        siphonBreakMm: undefined,
        siphonSafeguard: undefined,
      }),
    ],
    equipment: [
      heater({
        tank: 'display',
        ratedW: watts,
        plan: plan({
          cutOuts,
          lostSensing: { action: 'off', by: 'controller' },
          regulation: thermostat({ sensors: ['display-temperature'], lowC: 24.75, highC: 25.25 }),
        }),
      }),
      airBlower(),
    ],
    sensors: system().sensors.filter(({ key: of }) =>
      ['display-temperature', 'display-oxygen', 'floor', 'heater-1-watts'].includes(of),
    ),
    stock: [stock({ count: 4 })],
    safeguards: [
      safeguard({ key: 'alarm-path', name: 'Alarms reach a person', kind: 'alarm' }),
      safeguard({ key: 'heater-1-cut-out', name: 'Heater 1 high cut-out' }),
    ],
    alarms: system().alarms.filter(({ key: of }) => ['too-warm', 'too-cold', 'oxygen-low', 'floor-wet'].includes(of)),
    states: [],
  });

/** Two systems in a warm room; the second can boil its fish. */
const two: Facility = facility({
  rooms: [room({ temperatureC: 23.5 })],
  systems: [calm('calm'), calm('hot', 900, [])],
});

beforeAll(() => {
  writeFileSync(at('two.json'), writeFacility(two));
  writeFileSync(at('two.yaml'), writeFacility(two, { format: 'yaml' }));
  writeFileSync(at('gap.json'), writeFacility({ ...two, shifts: [shift()] }));
});

describe('a file that can be read', () => {
  let both: Ended;
  let calmAlone: Ended;

  beforeAll(async () => {
    [both, calmAlone] = await Promise.all([
      review(at('two.json'), ...ON),
      review(at('two.json'), '--system', 'calm', ...ON),
    ]);
  });

  test('is reviewed with the worst system first, its worst case, and what to do', () => {
    const { code, stdout, stderr } = both;
    expect(stderr).toBe('');
    expect(code).toBe(1);
    expect(stdout).toContain('Harbour Aquarium: review as of 2026-06-01');
    expect(stdout).toContain('Holdfast switches nothing and is not a protective device.');
    expect(stdout.indexOf('Tank hot (hot)')).toBeGreaterThan(0);
    expect(stdout.indexOf('Tank hot (hot)')).toBeLessThan(stdout.indexOf('Tank calm (calm)'));
    expect(stdout).toMatch(
      /Worst case: Display temperature: control probe (?:frozen|out of the water)\. Harm after .* \(Display warmer by 5 K within a day, for \d+ min\)/,
    );
    expect(stdout).toMatch(/\[high\] Fit an independent high cut-out/);
    expect(stdout).toMatch(/\d+ fault cases judged: /);
    expect(stdout).not.toMatch(/NaN|Infinity|undefined|null|\(\)/);
  });

  test('reads the same as YAML', async () => {
    expect(await review(at('two.yaml'), ...ON)).toEqual(both);
  });

  test('is reviewed for one system alone when asked', () => {
    expect(calmAlone.stdout).toContain('Tank calm (calm)');
    expect(calmAlone.stdout).not.toContain('Tank hot');
  });

  test('ends with 0 when nothing is more urgent than low, and with 1 when something of the site is', async () => {
    expect(calmAlone.stdout).not.toMatch(/\[(high|medium)\]/);
    expect(calmAlone.code).toBe(0);
    const gap = await review(at('gap.json'), '--system', 'calm', ...ON);
    expect(gap.stdout).toContain('[medium] Put somebody on call in the hours when nobody is');
    expect(gap.code).toBe(1);
  });

  test('is judged by its tests as of the day that is given', async () => {
    const stale = await review(at('two.json'), '--system', 'calm', '--on', '2027-06-01');
    expect(calmAlone.stdout).not.toContain('Test the safeguards');
    expect(stale.stdout).toContain('Test the safeguards that are counted on');
  });
});

describe('as JSON', () => {
  let said: FacilityReview;
  let ended: Ended;

  beforeAll(async () => {
    ended = await review(at('two.json'), '--json', ...ON);
    said = JSON.parse(ended.stdout);
  });

  test('is the review and nothing else', () => {
    expect(ended.stderr).toBe('');
    expect(ended.code).toBe(1);
    expect(said).toMatchObject({ site: 'harbour', name: 'Harbour Aquarium', on: '2026-06-01', findings: [] });
    expect(said.systems.map((one) => one.system)).toEqual(['hot', 'calm']);
  });

  test('has every case in both columns, by unique ids, with 168 hours each', () => {
    for (const { cases, worst } of said.systems) {
      expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
      expect(cases.length).toBeGreaterThan(4);
      for (const c of cases) {
        expect(c.id).toBe(`${c.fault}:${c.thing.key}:${c.state}`);
        for (const { verdict, outcomes } of [c.claimed, c.tested]) {
          expect(VERDICTS).toContain(verdict);
          if (outcomes[0]) expect(outcomes[0].verdict).toBe(verdict);
          for (const one of outcomes) {
            const lists = [one.harmS, one.lastChanceS, one.noticeS, one.noticeBy, one.putRightS, one.spareS];
            expect(lists.map((list) => list.length)).toEqual([168, 168, 168, 168, 168, 168]);
          }
        }
      }
      for (const { case: id } of [worst.claimed, worst.tested])
        if (id !== null) expect(cases.some((c) => c.id === id)).toBe(true);
    }
  });

  test('holds null only where a time is never, and where the types allow it', () => {
    const nulls = new Set<string>();
    const walk = (value: unknown, path: string): void => {
      if (value === null) nulls.add(path);
      else if (Array.isArray(value)) for (const part of value) walk(part, `${path}[]`);
      else if (typeof value === 'object')
        for (const [name, part] of Object.entries(value)) walk(part, `${path}.${name}`);
    };
    walk(said, '');
    const fields = [...nulls].map((path) => path.split('.').at(-1));
    const times = ['lastChanceS[]', 'harmS[]', 'noticeS[]', 'putRightS[]', 'spareS[]', 'spareS'];
    const ofAlarms = ['afterS', 'leftS', 'availableS', 'neededS', 'proposed', 'proposedBy'];
    const allowed = [...times, ...ofAlarms, 'case', 'askNext'];
    expect(fields.filter((field) => !allowed.includes(field ?? ''))).toEqual([]);
  });

  test('names findings whose lines point at cases that are there', () => {
    for (const { findings, cases } of said.systems) {
      const ids = cases.map(({ id }) => id);
      const pointed = findings.flatMap(({ lines }) => lines.flatMap(({ from }) => ('case' in from ? [from.case] : [])));
      expect(pointed.filter((id) => !ids.includes(id))).toEqual([]);
      expect(new Set(findings.map(({ remedy }) => remedy)).size).toBe(findings.length);
    }
    expect(said.systems[0]?.findings.length).toBeGreaterThan(0);
  });
});

describe('what cannot be reviewed', () => {
  test('names every error of a file with its line, reviews nothing, and ends with 2', async () => {
    const broken = writeFacility(two)
      .replace('"zone": "Europe/London"', '"zone": "Nowhere/Land"')
      .replace('"at": "08:30"', '"at": "25:00"');
    writeFileSync(at('broken.json'), broken);
    const { code, stdout, stderr } = await review(at('broken.json'), ...ON);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    const lines = stderr.trim().split('\n');
    const lineOf = (text: string) => broken.slice(0, broken.indexOf(text)).split('\n').length;
    expect(lines).toHaveLength(3);
    expect(lines.some((l) => l.startsWith(`${at('broken.json')}:${lineOf('Nowhere/Land')}:`))).toBe(true);
    expect(lines.some((l) => l.startsWith(`${at('broken.json')}:${lineOf('25:00')}:`))).toBe(true);
    expect(lines[2]).toBe(`${at('broken.json')}: 2 errors; nothing was reviewed`);
  });

  test.each<[string, () => string[], RegExp]>([
    ['no file', () => [], /Give one facility file: npm run -s review/],
    ['a file that is not there', () => [at('none.json')], /none\.json cannot be read/],
    ['a folder', () => [folder], /cannot be read/],
    [
      'a system that is not there',
      () => [at('two.json'), '--system', 'cold'],
      /there is no system "cold"; there are calm, hot/,
    ],
    ['a day that no calendar has', () => [at('two.json'), '--on', '2026-02-30'], /--on: "2026-02-30" is not a date/],
    ['an option that there is not', () => [at('two.json'), '--fast'], /--fast[\s\S]*npm run -s review/],
    ['an option without its value', () => [at('two.json'), '--on'], /--on[\s\S]*npm run -s review/],
  ])('%s: said in words on the error stream, and ends with 2', async (_, words, message) => {
    const { code, stdout, stderr } = await review(...words());
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/\bat .*:\d+:\d+/);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });
});
