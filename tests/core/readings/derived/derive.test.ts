import { describe, expect, test } from 'vitest';
import { derive } from '#core/readings/derived/derive';
import { derivedKey, isDerivedKey, readDerivedKey } from '#core/readings/derived/series';
import { derivedSeriesOf } from '#core/readings/derived/series-of';
import { argument, cases, miss } from '../../water/reference';
import { facility } from '../../../_support/build-facility';
import { reservoir, sensor, system } from '../../../_support/build-system';

describe('a derived series', () => {
  test.each(cases('oxygen-saturation'))('of water in balance with air is 100 %%: %s', (_name, row) => {
    // Published solubilities: see the sources of the table.
    const [temperature, salinity, pressureAtm] = [argument(row, 0), argument(row, 1), argument(row, 2)];
    const found = derive('oxygen-saturation', { lead: row.value, temperature, salinity }, { pressureAtm });
    expect(Math.abs((found ?? Number.NaN) - 100)).toBeLessThan((100 * (row.tolerance ?? 0)) / row.value + 0.02);
  });

  test.each(cases('unionised-share'))('gives un-ionised ammonia as published for fresh water: %s', (_name, row) => {
    const values = { lead: 2, ph: argument(row, 0), temperature: argument(row, 1) };
    const found = derive('unionised-ammonia', values, { salinity: 0, phScale: 'nbs' });
    expect(
      miss({ ...row, value: 2 * row.value, tolerance: 2 * (row.tolerance ?? 0) }, found ?? Number.NaN),
    ).toBeLessThanOrEqual(1);
  });

  test('reads a pH on the scale its probe is calibrated on', () => {
    const values = { lead: 1, temperature: 25, ph: 8.2, salinity: 35 };
    const nbs = derive('unionised-ammonia', values, { phScale: 'nbs' }) ?? Number.NaN;
    const total = derive('unionised-ammonia', values, { phScale: 'total' }) ?? Number.NaN;
    expect(total / nbs).toBeGreaterThan(1.2);
  });

  test('gives the salinity that defines the scale', () => {
    // PSS-78: 42.914 mS/cm at 15 °C is salinity 35, by definition (UNESCO 1981; temperature there on the scale of 1968).
    expect(derive('salinity', { lead: 42.914, temperature: 15 }, {})).toBeCloseTo(35, 2);
  });

  test('gives the salinity of what a meter has brought to 25 °C, whatever the water is', () => {
    // TEOS-10 GSW 3.6.16: sea water of 35 has 53.071 mS/cm at 25 °C; tests/reference/compensated-conductivity.json.
    const given = { compensatedToC: 25 };
    expect(derive('salinity', { lead: 53.071 }, given)).toBeCloseTo(35, 2);
    expect(derive('salinity', { lead: 53.071, temperature: 20 }, given)).toBeCloseTo(35, 2);
    expect(derive('salinity', { lead: 53.071, temperature: 20 }, {})).toBeGreaterThan(39);
  });

  test('of watts is nothing in the range and while nothing is drawn', () => {
    const range = { minW: 90, maxW: 110 };
    const beyond = (lead: number) => derive('watts-beyond', { lead }, range);
    expect([0, 1, 50, 90, 110, 130].map(beyond)).toEqual([0, 0, -40, 0, 0, 20]);
  });

  test('is nothing where an input is missing or the law does not hold', () => {
    expect(derive('difference', { lead: 25 }, {})).toBeNull();
    expect(derive('salinity', { lead: 42, temperature: 60 }, {})).toBeNull();
    expect(derive('oxygen-saturation', { lead: 7, temperature: 25 }, { pressureAtm: 1 })).toBeNull();
  });
});

describe('the series of a system', () => {
  const place = { tank: 'sump' };
  const sensors = [
    sensor({ key: 'one', name: 'One', ...place }),
    sensor({ key: 'two', name: 'Two', ...place }),
    sensor({ key: 'three', name: 'Three', ...place }),
    sensor({ key: 'elsewhere', name: 'Elsewhere', tank: 'display' }),
    sensor({ key: 'do', name: 'Oxygen', quantity: 'oxygen', tank: 'display' }),
    sensor({ key: 'nh', name: 'Ammonia', quantity: 'ammonia', ...place }),
    sensor({ key: 'acid', name: 'pH', quantity: 'ph', phScale: 'total', ...place }),
    sensor({ key: 'cond', name: 'Conductivity', quantity: 'conductivity', ...place }),
    sensor({ key: 'res', name: 'Reservoir', quantity: 'level', tank: 'reservoir' }),
  ];
  const base = system();
  const series = derivedSeriesOf(facility(), {
    ...base,
    tanks: [...base.tanks.filter(({ key }) => key !== 'reservoir'), reservoir()],
    sensors,
  });
  const brought = {
    ...sensor({ key: 'cond-25', name: 'Brought', quantity: 'conductivity', ...place }),
    compensatedToC: 25,
  };
  const find = (key: string) => series.find((one) => one.key === key);

  test('of a conductivity brought to a temperature needs no thermometer, and makes no pair with one as the water has it', () => {
    const raw = sensor({ key: 'cond', name: 'Conductivity', quantity: 'conductivity', ...place });
    const found = derivedSeriesOf(facility(), { ...base, sensors: [raw, brought] });
    expect(found.map(({ key }) => key)).toEqual(['derived:salinity:cond-25']);
    expect(found[0]).toMatchObject({ inputs: [{ role: 'lead', sensor: 'cond-25' }], given: { compensatedToC: 25 } });
  });

  test('are those whose inputs are there, each pair once and in one tank alone', () => {
    expect(series.map(({ key }) => key)).toEqual([
      'derived:oxygen-saturation:do',
      'derived:unionised-ammonia:nh',
      'derived:salinity:cond',
      'derived:difference:one:two',
      'derived:difference:one:three',
      'derived:top-off:res',
    ]);
  });

  test('take a probe of the same tank before one elsewhere, and its own scale', () => {
    expect(find('derived:oxygen-saturation:do')?.inputs.map(({ sensor: key }) => key)).toEqual(['do', 'elsewhere']);
    expect(find('derived:unionised-ammonia:nh')?.inputs.map(({ sensor: key }) => key)).toEqual(['nh', 'one', 'acid']);
    expect(find('derived:unionised-ammonia:nh')?.given.phScale).toBe('total');
  });

  test('of fresh water know no salinity from conductivity', () => {
    const fresh = { ...base, salinity: { value: 0, origin: 'entered' as const }, sensors };
    expect(derivedSeriesOf(facility(), fresh).map(({ kind }) => kind)).not.toContain('salinity');
  });
});

test('a key of a derived series is read back, and that of a sensor is none', () => {
  expect(readDerivedKey(derivedKey('difference', 'a', 'b'))).toEqual({ kind: 'difference', sensors: ['a', 'b'] });
  expect(readDerivedKey('derived:difference:a')).toBeNull();
  expect(readDerivedKey('derived:else:a')).toBeNull();
  expect(isDerivedKey('display-temperature')).toBe(false);
});
