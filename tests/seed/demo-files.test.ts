import { SYSTEM_KINDS } from '#core/facility/system';
import { isOff, isTested, safeguardsOf } from '#core/plans/credit';
import { readFacility } from '#shape/facility/read-facility';
import { writeFacility } from '#shape/facility/write-facility';
import { describe, expect, test } from 'vitest';
import { DEMO_DATE, DEMO_FILES } from '../../seed/demo';
import { demoSite, demoText } from './demo-site';

const SITES = DEMO_FILES.map(({ key }) => demoSite(key));
const SYSTEMS = SITES.flatMap(({ systems }) => systems);

describe.each([...DEMO_FILES])('the demonstration file $path', ({ key, path }) => {
  test('is read without any fault, and is the site it is listed as', () => {
    const read = readFacility(demoText(path));
    expect(read).toMatchObject({ ok: true, value: { site: { key } } });
  });

  test.each(['json', 'yaml'] as const)('loses nothing when it is written as %s and read again', (format) => {
    const given = demoSite(key);
    expect(readFacility(writeFacility(given, { format }), { format })).toEqual({ ok: true, value: given });
  });

  test('tells the story of every system in a comment above it', () => {
    const lines = demoText(path).split('\n');
    for (const system of demoSite(key).systems) {
      const at = lines.indexOf(`  - key: ${system.key}`, lines.indexOf('systems:'));
      expect(at, system.key).toBeGreaterThan(0);
      expect([lines[at - 1], lines[at - 2]], system.key).toEqual([
        expect.stringMatching(/^ {2}# \S/),
        expect.stringMatching(/^ {2}# \S/),
      ]);
    }
  });

  test('holds no test of a safeguard later than the day of the demonstration', () => {
    const { safeguards, systems } = demoSite(key);
    const dates = [...safeguards, ...systems.flatMap((system) => system.safeguards)].flatMap(({ tests }) =>
      tests.map(({ on }) => on),
    );
    expect(dates.length).toBeGreaterThan(0);
    expect(dates.filter((on) => on > DEMO_DATE)).toEqual([]);
  });
});

describe('the three sites together', () => {
  test('hold twenty-four systems, twelve, six and six', () => {
    expect(SITES.map(({ systems }) => systems.length)).toEqual([12, 6, 6]);
  });

  test('show every kind of system', () => {
    expect(new Set(SYSTEMS.map(({ kind }) => kind))).toEqual(new Set(SYSTEM_KINDS));
  });

  test('show twelve shop tanks on one sump, single tanks without one, and a tank that nobody has measured', () => {
    const sumps = (at: number) => SYSTEMS[at]?.tanks.filter(({ role }) => role === 'sump').length;
    const holding = SYSTEMS.map(({ tanks }) => tanks.filter(({ role }) => role === 'holding').length);
    expect(sumps(holding.indexOf(12))).toBe(1);
    expect(SYSTEMS.filter(({ tanks }) => tanks.length === 1).length).toBeGreaterThanOrEqual(5);
    expect(SYSTEMS.flatMap(({ tanks }) => tanks).filter(({ volumeL }) => volumeL.value === null).length).toBe(1);
  });

  test('show safeguards that are tested, overdue, never tested, and off', () => {
    const all = SITES.flatMap((site) => site.systems.flatMap((system) => safeguardsOf(site, system)));
    const of = (is: (one: (typeof all)[number]) => boolean) => new Set(all.filter(is).map(({ key }) => key));
    expect(of((one) => isTested(one, DEMO_DATE)).size).toBeGreaterThan(30);
    expect(of((one) => one.tests.length > 0 && !isTested(one, DEMO_DATE) && !isOff(one, DEMO_DATE))).toEqual(
      new Set(['battery-air', 'window-cut-out']),
    );
    expect(of((one) => one.tests.length === 0)).toEqual(new Set(['ocean-level-trip', 'fresh-siphon-breaks']));
    expect(of((one) => isOff(one, DEMO_DATE))).toEqual(new Set(['lagoon-skimmer-float']));
  });

  test('use feeding, water change, treatment and backwash, and alarms that nobody answers', () => {
    expect(new Set(SYSTEMS.flatMap(({ states }) => states.map(({ name }) => name)))).toEqual(
      new Set(['feeding', 'water-change', 'treatment', 'backwash']),
    );
    expect(SYSTEMS.flatMap(({ alarms }) => alarms).some(({ answeredBy }) => answeredBy === 'nobody')).toBe(true);
  });
});
