import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { resolveSystem } from '#core/equipment/resolve';
import { badSaid, originSaid } from '#core/review/input-words';
import type { OpenInput } from '#core/review/result';
import { InputsTable } from '#ui/system/inputs-table';
import { expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { system, tank } from '../../_support/build-system';

const measured = { value: 380, origin: 'measured' as const, low: 370, high: 390, source: 'counted in while filling' };
const base = system();
const given = {
  ...base,
  tanks: base.tanks.map((one) => (one.key === 'display' ? tank({ ...one, volumeL: measured }) : one)),
};
const notes = resolveSystem(facility({ systems: [given] }), given, 'nominal').notes;
const inputs: OpenInput[] = notes.map((note) => ({ ...note, changes: [] }));
const at = (end: string) => inputs.find(({ path }) => path.endsWith(end)) as OpenInput;

test('every figure with a range says where it comes from, and which end of it is the bad one for which harm', () => {
  const volume = at('/display/volumeL');
  expect([originSaid(volume), badSaid(volume)]).toEqual(['measured', 'the low end, for any harm']);
  const damp = at('/display/evaporationActivity');
  expect([originSaid(damp), badSaid(damp)]).toEqual([
    'default',
    'low for warmth and want of oxygen, high for cold and salt',
  ]);
  expect(inputs.every(({ origin, bad }) => origin !== undefined && bad !== undefined)).toBe(true);
});

test('the table shows value, range, bad end, origin, source and what it would change, in the person’s units', () => {
  const changed = inputs.map((input) =>
    input.path.endsWith('/display/volumeL') ? { ...input, changes: ['a', 'b'] } : input,
  );
  const shown = (units: 'metric' | 'us') =>
    renderToStaticMarkup(createElement(InputsTable, { inputs: changed, askNext: null, units }));
  expect(shown('metric')).toMatch(
    /380\u00a0L.*370\u00a0L to 390\u00a0L.*low end.*measured.*counted in while filling.*2 verdicts/s,
  );
  expect(shown('us')).toMatch(/100\u00a0US gal/);
});

test('a review that was kept before origins were told still says who gave a figure', () => {
  const { origin: _origin, bad: _bad, ...old } = at('/display/evaporationActivity');
  expect([originSaid(old), badSaid(old)]).toEqual(['default', '']);
  expect(originSaid({ ...old, source: 'entered' })).toBe('entered');
});
