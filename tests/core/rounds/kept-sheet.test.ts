import { isTested } from '#core/plans/credit';
import { standingOf } from '#core/plans/due';
import { withMissedTests } from '#core/plans/missed';
import { describedPlaces } from '#core/rounds/described';
import { frequencyOf } from '#core/rounds/frequency';
import { sheetOfKept } from '#core/rounds/kept-sheet';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { readSchedule } from '#core/rounds/schedule';
import { checksOf } from '#core/rounds/sheet';
import { sheetStandings } from '#core/rounds/sheet-standings';
import { startingSheets } from '#core/rounds/starting-sheets';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { safeguard } from '../../_support/build-system';

const DAY = '2026-06-01';
const SITE = (() => {
  const base = facility();
  const [system] = base.systems;
  if (!system) throw new Error('no system');
  const tested = safeguard({
    key: 'cut-out',
    name: 'Cut-out',
    testEveryDays: 45,
    tests: [{ on: '2026-05-20', result: 'worked' }],
  });
  return { ...base, systems: [{ ...system, safeguards: [tested] }] };
})();
const SYSTEM = SITE.systems[0]?.key ?? '';
const sheet = (lines: RoundSheet['lines']): Pick<RoundSheet, 'key' | 'lines'> => ({ key: 'own-sheet', lines });

describe('the sheets that a system starts with', () => {
  const starts = startingSheets(SITE, SYSTEM, DAY);
  const keys = starts.flatMap(({ lines }) => lines.map(({ key }) => key));

  test('hold each line that follows from its description, and none twice', () => {
    const described = describedPlaces(SITE, DAY)
      .filter(({ system }) => system?.key === SYSTEM)
      .flatMap(({ checks }) => checks.map(({ key }) => key));
    expect(described.length).toBeGreaterThan(10);
    expect([...keys].sort()).toEqual([...described].sort());
  });

  test('come round as often as such things are looked at, from a day of their own rule', () => {
    const found = new Map(starts.map((one) => [one.key.slice(SYSTEM.length + 1), frequencyOf(one.schedule)]));
    expect(found.get('plant')).toBe('shift');
    expect(found.get('readings')).toBe('day');
    expect(found.get('water')).toBe('week');
    expect(found.get('month')).toBe('month');
    for (const { schedule } of starts) {
      expect(readSchedule(schedule).ok).toBe(true);
      expect(schedule.from >= DAY).toBe(true);
    }
  });

  test('ask the water for what poisons in it, with what is known of it besides', () => {
    const water = describedPlaces(SITE, DAY)
      .flatMap(({ checks }) => checks)
      .find(({ kind }) => kind === 'water-test');
    expect(water?.kind === 'water-test' && water.asks.map(({ quantity }) => quantity)).toEqual(
      expect.arrayContaining(['temperature', 'ph', 'ammonia', 'nitrite', 'nitrate']),
    );
  });
});

describe('a kept sheet as it is walked', () => {
  const floor = `${SYSTEM}/system/floor`;

  test('has its lines in its order, in its words, and tells of those whose thing is gone', () => {
    const made = sheetOfKept(
      SITE,
      sheet([
        { kind: 'text', key: 'note', what: 'Note', system: SYSTEM },
        { kind: 'described', key: floor, what: 'Floor dry', secondSignature: true },
        { kind: 'described', key: `${SYSTEM}/equipment/gone/usual` },
      ]),
      DAY,
    );
    expect(checksOf(made.sheet)).toMatchObject([
      { kind: 'text', key: 'own/own-sheet/note' },
      { kind: 'yes-no', key: floor, what: 'Floor dry', secondSignature: true },
    ]);
    expect(made.gone).toEqual([`${SYSTEM}/equipment/gone/usual`]);
  });

  test('says what is usual where the sheet does, and its own lines stand with the whole site where they name no place', () => {
    const made = sheetOfKept(
      SITE,
      sheet([{ kind: 'figure', key: 'main', what: 'Mains', unit: 'bar', usual: { from: 2, to: 4 } }]),
      DAY,
    );
    expect(made.sheet.places).toMatchObject([
      { system: null, checks: [{ kind: 'figure', usual: { from: 2, to: 4 } }] },
    ]);
  });
});

describe('a test that was missed', () => {
  const key = 'month';
  const kept = {
    ...SITE,
    sheets: [{ ...startingSheets(SITE, SYSTEM, DAY).find((one) => one.key.endsWith('month')), key } as RoundSheet],
  };
  const own = (on: ReturnType<typeof withMissedTests>) => {
    const [found] = on.systems[0]?.safeguards ?? [];
    if (!found) throw new Error('no safeguard');
    return found;
  };
  const missed = new Map([[key, { opened: '2026-05-31', since: '2026-06-20' }]]);

  test('makes its safeguard untested from the day it was missed, though its interval runs on, and due now', () => {
    const judged = own(withMissedTests(kept, missed));
    expect(isTested(own(kept), '2026-06-20')).toBe(true);
    expect(isTested(judged, '2026-06-19')).toBe(true);
    expect(isTested(judged, '2026-06-20')).toBe(false);
    expect(standingOf(judged, '2026-06-20')).toMatchObject({ state: 'untested', due: null });
  });

  test('is made good by one that worked since it might be made', () => {
    const again = { ...own(kept), tests: [{ on: '2026-05-31', result: 'worked' as const }] };
    const [system] = kept.systems;
    if (!system) throw new Error('no system');
    const site = { ...kept, systems: [{ ...system, safeguards: [again] }] };
    expect(isTested(own(withMissedTests(site, missed)), '2026-06-20')).toBe(true);
  });

  test('of a sheet that holds no test changes nothing', () => {
    expect(withMissedTests(kept, new Map([['other', { opened: DAY, since: DAY }]]))).toBe(kept);
  });
});

describe('how due times stand', () => {
  const due = (dueAt: number, lateAt = dueAt + 10) => ({
    ...{ sheet: 'a', date: DAY, dueAt, opensAt: dueAt - 5 },
    ...{ lateAt, closesAt: dueAt + 100 },
  });

  test('what was kept when it came counts before what would follow now, and what is to come follows from now', () => {
    const stand = sheetStandings([due(50, 90), due(500)], [due(50), due(300)], [], 70);
    expect(stand.map(({ dueAt, standing }) => [dueAt, standing])).toEqual([
      [50, 'due'],
      [300, 'ahead'],
    ]);
  });

  test('one that was begun is never missed, and is done once it is signed', () => {
    const round = { sheet: 'a', dueAt: 50, begunAt: 60, signedAt: null };
    const stands = (signedAt: number | null) =>
      sheetStandings([due(50)], [], [{ ...round, signedAt }], 900)[0]?.standing;
    expect([stands(null), stands(70)]).toEqual(['late', 'done']);
    expect(sheetStandings([due(50)], [], [], 900)[0]?.standing).toBe('missed');
  });
});
