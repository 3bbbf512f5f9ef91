import type { CalibrationCheck, ChoiceCheck, FigureCheck, WaterTestCheck } from '#core/rounds/check';
import { isAbnormal } from '#core/rounds/abnormal';
import { impliedBy } from '#core/rounds/implied';
import { readCalibration } from '#core/rounds/read/calibration';
import { readChoice, readFigure, readPhotos } from '#core/rounds/read/plain';
import type { TypedLine } from '#core/rounds/read/typed';
import { readWaterTest } from '#core/rounds/read/water-test';
import { describe, expect, test } from 'vitest';
import oxygen from '../../reference/oxygen-saturation.json';
import shares from '../../reference/unionised-share.json';

const line = { key: 'x', about: { noun: 'tank' as const, system: 'reef', key: 'x' }, what: 'X', why: 'it matters' };
const typed = (more: Partial<TypedLine>): TypedLine => ({ units: 'metric', figures: {}, ...more });
const fresh = { phScale: 'nbs' as const, pressureAtm: 1, salinity: 0 };

describe('what a water test implies', () => {
  test.each(
    shares.rows.map(({ at, value, tolerance }) => ({ ph: at[0] ?? 0, temperature: at[1] ?? 0, value, tolerance })),
  )(
    'un-ionised ammonia at pH $ph and $temperature °C is that of the published table',
    ({ ph, temperature, value, tolerance }) => {
      const [implied] = impliedBy({ ammonia: 1, ph, temperature }, fresh);
      // The tables give the part that is un-ionised; of 1 mg/L it is the same number.
      expect(Math.abs((implied?.value ?? Number.NaN) - value)).toBeLessThanOrEqual(tolerance * 1.001);
      expect(implied?.taken).toEqual(['salinity']);
    },
  );

  test('water that holds as much oxygen as the published table has for it is saturated', () => {
    for (const { at, value } of oxygen.rows.slice(0, 40)) {
      const [temperature = 0, salinity = 0, pressureAtm = 1] = at;
      const [implied] = impliedBy({ oxygen: value, temperature, salinity }, { ...fresh, pressureAtm });
      expect(implied?.is).toBe('oxygen-saturation');
      expect(implied?.value).toBeCloseTo(100, 0);
    }
  });

  test('no pH stands in for one that was not measured, and a temperature only where the system has one', () => {
    expect(impliedBy({ ammonia: 1, temperature: 25 }, fresh)).toEqual([]);
    expect(impliedBy({ ammonia: 1, ph: 8 }, fresh)).toEqual([]);
    expect(impliedBy({ ammonia: 1, ph: 8 }, { ...fresh, temperature: 25 })).toMatchObject([
      { taken: ['salinity', 'temperature'] },
    ]);
  });

  test('a figure beyond the law implies nothing rather than something wrong', () => {
    expect(impliedBy({ ammonia: 1, ph: 3, temperature: 25 }, fresh)).toEqual([]);
  });
});

describe('a water test as it is typed', () => {
  const check: WaterTestCheck = {
    ...line,
    kind: 'water-test',
    given: fresh,
    asks: [
      { quantity: 'ammonia', sensor: null, alarm: { above: 0.5 } },
      { quantity: 'temperature', sensor: 't' },
    ],
  };

  test('keeps what was measured, in the description’s units, and asks about a limit that is passed', () => {
    const read = readWaterTest(check, typed({ units: 'us', figures: { ammonia: '0,6', temperature: '77' } }));
    expect(read).toMatchObject({
      ok: true,
      value: { value: { figures: { ammonia: { value: 0.6 }, temperature: { value: 25 } } } },
    });
    expect(read.ok && read.value.question).toContain('above the limit');
    expect(read.ok && read.value.value && isAbnormal(check, read.value.value)).toBe(true);
  });

  test('names the field of each figure that is none, and refuses one with nothing measured', () => {
    const read = readWaterTest(check, typed({ figures: { ammonia: 'low', temperature: 'warm' } }));
    expect(read).toMatchObject({ reason: [{ path: 'figure.ammonia' }, { path: 'figure.temperature' }] });
    expect(readWaterTest(check, typed({}))).toMatchObject({ reason: [{ path: 'figure' }] });
  });

  test('a slip of the point is asked about by the last figure', () => {
    const read = readWaterTest(check, typed({ figures: { temperature: '25' } }), { temperature: 2.5 });
    expect(read.ok && read.value.question).toContain('The last one');
  });
});

describe('lines of other kinds', () => {
  const meter: FigureCheck = { ...line, kind: 'figure', unit: 'bar', usual: { from: 0.8, to: 1.2 } };
  const weir: ChoiceCheck = {
    ...line,
    kind: 'choice',
    options: [
      { key: 'clear', name: 'clear', usual: true },
      { key: 'blocked', name: 'blocked', usual: false },
    ],
  };

  test('a number outside what is usual is asked about and kept', () => {
    expect(readFigure(meter, typed({ number: '1.2' }))).toMatchObject({ value: { question: null } });
    const read = readFigure(meter, typed({ number: '1.3' }));
    expect(read).toMatchObject({ value: { value: { kind: 'figure', value: 1.3 } } });
    expect(read.ok && read.value.question).toContain('0.8 to 1.2 bar');
  });

  test('a word that is not usual needs a note and counts as abnormal', () => {
    expect(readChoice(weir, typed({ option: 'blocked' }))).toMatchObject({ reason: [{ path: 'note' }] });
    expect(readChoice(weir, { ...typed({ option: 'blocked' }), note: 'cleared it' })).toMatchObject({ ok: true });
    expect(readChoice(weir, typed({ option: 'gone' }))).toMatchObject({ reason: [{ path: 'option' }] });
    expect(isAbnormal(weir, { kind: 'choice', option: 'blocked' })).toBe(true);
    expect(isAbnormal(weir, { kind: 'choice', option: 'clear' })).toBe(false);
  });

  test('photos are named by ids', () => {
    expect(readPhotos(typed({ photos: '' })).ok).toBe(false);
    expect(readPhotos(typed({ photos: '../etc' })).ok).toBe(false);
    const id = '01a2119e-3a5a-773f-ac5d-188c0fd166eb';
    expect(readPhotos(typed({ photos: `${id},${id}` }))).toMatchObject({ value: { value: { photos: [id] } } });
  });
});

describe('a calibration as it is typed', () => {
  const check: CalibrationCheck = { ...line, kind: 'calibration', quantity: 'ph', within: 0.1, slope: true };
  const points = { 'standard-1': '7', 'before-1': '7.2', 'after-1': '7', 'standard-2': '10', 'before-2': '9.8' };

  test('keeps each point, and asks about one that is still out and a worn slope', () => {
    const read = readCalibration(check, typed({ seen: 'worked', figures: { ...points, slope: '80' } }));
    expect(read).toMatchObject({
      value: { value: { points: [{ after: 7 }, { before: 9.8, after: null }], slope: 80, fit: true } },
    });
    expect(read.ok && read.value.question).toMatch(/still reads 9\.8.*below 85/);
  });

  test('names what is missing of a point that was begun', () => {
    expect(readCalibration(check, typed({ seen: 'worked', figures: { 'after-1': '7' } }))).toMatchObject({
      reason: [{ path: 'figure.standard-1' }],
    });
    expect(readCalibration(check, typed({ figures: points }))).toMatchObject({ reason: [{ path: 'seen' }] });
  });
});
