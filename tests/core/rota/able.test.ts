import { taker } from '#core/equipment/take';
import { ableTo, takenAsAble } from '#core/rota/able';
import { coverOf, reachedAfter } from '#core/rota/cover';
import { shiftsInForce } from '#core/rota/in-force';
import { HOUR } from '#core/time/week';
import { expect, test } from 'vitest';
import { facility, shift, site } from '../../_support/build-facility';
import { heater } from '../../_support/build-equipment';

const OZONE = { key: 'ozone', name: 'Put the ozone back', types: ['ozone' as const] };

test('where no competence asks for it everybody may put a thing right, and what usually only trained people do is named', () => {
  const plain = facility();
  expect(ableTo(plain, 'ozone', '2026-06-01')).toBeNull();
  expect(ableTo(plain, null, '2026-06-01')).toBeNull();
  const [system] = plain.systems;
  const withOzone = {
    ...plain,
    systems: system ? [{ ...system, equipment: [{ ...heater(), type: 'ozone' as const }] }] : [],
  };
  expect(takenAsAble(withOzone).map(({ type }) => type)).toEqual(['ozone']);
  expect(takenAsAble({ ...withOzone, site: site({ competences: [OZONE] }) })).toEqual([]);
});

test('a shift that is over or has not begun is no cover of the usual week', () => {
  const dated = facility({ shifts: [shift({ ends: '2026-05-31' }), shift({ key: 'new', starts: '2026-06-02' })] });
  const on = (day: string) => shiftsInForce(dated, day).shifts.map(({ key }) => key);
  expect(['2026-05-31', '2026-06-01', '2026-06-02'].map(on)).toEqual([['day'], [], ['new']]);
});

test('only those who hold it on the day are waited for, however near the others are', () => {
  const people = facility().people.map((one) =>
    one.key === 'sam' ? { ...one, competences: [{ competence: 'ozone', until: '2026-06-01' }] } : one,
  );
  const of = facility({ people, site: site({ competences: [OZONE] }) });
  const cover = coverOf(of, taker('nominal'));
  const ten = 10 * HOUR;
  // Robin is on site from 08:00 to 18:00 and may not; Sam is on call from 18:00.
  expect(reachedAfter(cover, ten, 'rota')).toBe(10 * 60);
  const there = reachedAfter(cover, ten, 'rota', ableTo(of, 'ozone', '2026-06-01')) ?? 0;
  expect(there).toBe(8 * HOUR + (cover.fromHome.get('sam') ?? Number.NaN));
  expect(reachedAfter(cover, ten, 'rota', ableTo(of, 'ozone', '2026-06-02'))).toBeNull();
  expect(reachedAfter(cover, ten, 'rota', ableTo(of, 'heater', '2026-06-02'))).toBe(10 * 60);
});
