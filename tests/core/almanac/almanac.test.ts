import { describe, expect, test } from 'vitest';
import { CHAPTERS, tableOf } from '#core/almanac/catalogue';
import { figure, written } from '#core/almanac/table';
import type { Custom } from '#core/units/shown';
import { oxygenSaturationLaw } from '#core/water/oxygen-saturation';
import sources from '#core/water/sources.json';

const tables = CHAPTERS.flatMap((chapter) => chapter.tables);
const CUSTOMS: Custom[] = ['metric', 'us'];

/** A cell by the heads it stands under. */
function cell(id: string, sheet: string, row: string, column: string, custom: Custom = 'metric'): string {
  const found = tableOf(id)
    ?.sheets(custom)
    .find((one) => one.id === sheet);
  const at = found?.columns.indexOf(column) ?? -1;
  const said = found?.rows.find(({ head }) => head === row)?.cells[at];
  if (said === undefined) throw new Error(`no cell ${id} ${sheet} ${row} ${column}`);
  return said;
}

describe('the almanac as a whole', () => {
  test('has an entry for every law, and names none that is not there', () => {
    const named = new Set(tables.flatMap((table) => table.laws));
    expect([...named].sort()).toEqual(sources.map(({ law }) => law).sort());
  });

  test('has each address once, and says of each table what it is for and what it leaves out', () => {
    expect(tables.length).toBeGreaterThan(20);
    expect(new Set(tables.map(({ id }) => id)).size).toBe(tables.length);
    for (const { id, use, leavesOut, title } of tables) {
      expect(`${use} ${leavesOut}`, id).toMatch(/^To .+\. .+\.$/);
      expect(tableOf(id)?.title).toBe(title);
    }
    expect(tableOf('no-such-table')).toBeUndefined();
  });
});

describe.each(tables.map((table): [string, typeof table] => [table.id, table]))('%s', (_id, table) => {
  test.each(CUSTOMS)('is ruled whole in %s units, narrow enough for a sheet and a phone', (custom) => {
    const sheets = table.sheets(custom);
    expect(sheets.length).toBeGreaterThan(0);
    expect(new Set(sheets.map(({ id }) => id)).size).toBe(sheets.length);
    for (const { caption, columns, rows, words } of sheets) {
      expect(caption.length).toBeGreaterThan(10);
      expect(columns.length).toBeLessThanOrEqual(7);
      expect(rows.length).toBeGreaterThan(3);
      for (const { head, cells } of rows) {
        expect(head).not.toMatch(/NaN|undefined/);
        expect(cells.length).toBe(columns.length);
        for (const said of cells) expect(said).toMatch(words ? /./ : /^(−?\d+(\.\d+)?|never|–)$/);
      }
    }
  });

  test.each(CUSTOMS)('has more figures than blanks in %s units', (custom) => {
    for (const { rows, id } of table.sheets(custom)) {
      const cells = rows.flatMap((row) => row.cells);
      expect(cells.filter((said) => said !== '–').length, id).toBeGreaterThan(0.4 * cells.length);
    }
  });
});

describe('cells stand in published tables', () => {
  const published: [string, string, string, string, string, string][] = [
    ['oxygen-saturation', 'by-salinity', '20', '0', '9.09', 'EN 25814, manualslib.es/manual/67236 p. 52'],
    ['oxygen-saturation', 'by-salinity', '26', '0', '8.11', 'EN 25814'],
    ['oxygen-saturation', 'by-salinity', '28', '0', '7.83', 'EN 25814'],
    ['oxygen-saturation', 'by-salinity', '24', '35', '6.89', 'R package wq 0.4.8, run'],
    ['ammonia-share', 'fresh', '24', '8.0', '5.02', 'edis.ifas.ufl.edu FA031/FA16: 0.0502'],
    ['ammonia-share', 'fresh', '10', '8.2', '2.86', 'the same: 0.0286'],
    ['ammonia-share', 'fresh', '30', '7.0', '0.80', 'the same: 0.0080'],
    ['ammonia-share', 'sea-total', '20', '8.0', '3.80', 'R package wq 0.2-8, run: 3.8011 %'],
    ['ammonia-share', 'sea-free', '28', '8.0', '5.41', 'R package wq 0.2-8, run: 5.4067 %'],
    ['salinity', 'conductivity', '35', '25', '53.07', 'TEOS-10 GSW, run: 53.0710'],
    ['salinity', 'conductivity', '33', '20', '45.47', 'TEOS-10 GSW, run: 45.4670'],
    ['salinity', 'gravity', '35', '25/25 °C', '1.0264', '1023.343 over 997.047 kg/m³, UNESCO 44 p. 19'],
    ['salinity', 'gravity', '35', 'Freezes', '−1.92', 'UNESCO 44 p. 29: −1.922'],
    ['alkalinity', 'units', '1', 'mg/L CaCO₃ (ppm)', '18', 'encnc.com/d515195.html: 17.848'],
    ['alkalinity', 'units', '7', 'mmol/L (meq/L)', '2.50', 'forums.reefcentral.com 799678: 7 dKH are 2.5 meq/L'],
    ['gas-pressure', 'percent', '76', '760', '110.0', 'env.gov.bc.ca tgptextonly-08'],
    ['circuits', 'trips', '20', 'Class A GFCI', '1.000', 'UL 943, forums.mikeholt.com 42382'],
    ['circuits', 'trips', '4', 'Class A GFCI', 'never', 'profengineering.com: does not trip below 4 mA'],
    ['circuits', 'load', '20', '120', '1920', '80 % of 20 A at 120 V, manhattanreefs.com'],
    ['oxidants', 'mains', '1', 'Thiosulphate, g', '7.0', 'two to one by weights of the atoms'],
    ['water-changes', 'changes', '20', '3', '51.2', 'closed form'],
  ];

  test.each(published)('%s, %s, at %s and %s: %s (%s)', (id, sheet, row, column, said) => {
    expect(cell(id, sheet, row, column)).toBe(said);
  });

  test('Bower & Bidwell’s table for salinity 34 lies within 5 % of that for a meter in the usual buffers', () => {
    // azmanual.top/manuals/596720, p. 5: 2.98 % at 20 °C and pH 8, 4.65 at 8.2, 8.87 at 8.5.
    for (const [at, percent] of [
      ['8.0', 2.98],
      ['8.2', 4.65],
      ['8.5', 8.87],
    ] as const) {
      expect(Math.abs(Number(cell('ammonia-share', 'sea-nbs', '20', at)) / percent - 1)).toBeLessThan(0.05);
    }
  });
});

describe('cells are the law at the precision printed', () => {
  test('in both customs: 68 °F is 20 °C, 50 °F is 10 °C', () => {
    expect(cell('oxygen-saturation', 'by-salinity', '50', '35', 'us')).toBe(
      cell('oxygen-saturation', 'by-salinity', '10', '35'),
    );
    expect(cell('salinity', 'conductivity', '35', '68', 'us')).toBe(cell('salinity', 'conductivity', '35', '20'));
  });

  test('every one of the first table', () => {
    for (const { head, cells } of tableOf('oxygen-saturation')?.sheets('metric')[0]?.rows ?? []) {
      for (const [i, salinity] of [0, 10, 20, 30, 33, 35, 40].entries()) {
        const whole = oxygenSaturationLaw.checked(Number(head), salinity, 1);
        expect(Math.abs(Number(cells[i]) - whole)).toBeLessThanOrEqual(0.005 + 1e-9);
      }
    }
  });

  test('total ammonia allowed, times its share, is 0.02 mg/L within the two figures printed', () => {
    for (const t of ['10', '20', '28']) {
      for (const at of ['8.0', '8.2', '8.5']) {
        const product =
          Number(cell('ammonia-allowed', 'sea-nbs', t, at)) * Number(cell('ammonia-share', 'sea-nbs', t, at));
        expect(Math.abs(product / 100 / 0.02 - 1)).toBeLessThan(0.05);
      }
    }
  });

  test('beyond the published range there is a dash and no figure; never is a word', () => {
    expect(figure(oxygenSaturationLaw, 2, 1, 41, 0, 1)).toBe('–');
    expect(cell('pipes', 'friction', '5000', '20')).toBe('–');
    expect(written(Number.POSITIVE_INFINITY, 1)).toBe('never');
    expect([written(-0.001, 1), written(-1.26, 1)]).toEqual(['0.0', '−1.3']);
  });
});
