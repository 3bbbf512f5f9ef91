import { DAYS } from '#core/facility/site';
import { type ChangeEvent, changeState, effectOf, mayCome } from '#core/rota/change';
import { mayPutRight } from '#core/rota/competence';
import { lackingOn } from '#core/rota/lacking';
import { nobodyOn, type Span, spansWithout } from '#core/rota/nobody';
import type { DutyException } from '#core/rota/rota';
import type { Rota } from '#core/rota/turns';
import { atTwoSites } from '#core/rota/two-sites';
import { instantOf } from '#core/time/zone';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { person, shift } from '../../_support/build-facility';

const ZONE = 'Europe/London';
const at = (date: string, time = '00:00') => instantOf(ZONE, date, time);
const OZONE = { key: 'ozone', name: 'Put the ozone back', types: ['ozone' as const] };
const ada = person({ key: 'ada', competences: [{ competence: 'ozone', until: '2026-06-10' }] });
const ben = person({ key: 'ben' });
const days = (key: string, who: string, from = '06:00', to = '18:00') =>
  shift({ key, people: [who], days: [...DAYS], from, to });
const rota: Rota = {
  site: { zone: ZONE },
  people: [ada, ben],
  shifts: [days('day', 'ada'), days('late', 'ben', '18:00', '22:00')],
  exceptions: [],
};
const leave = (who: string, from: string, to: string): DutyException => ({
  kind: 'leave',
  person: who,
  from: at(from),
  to: at(to),
});
const said = ({ from, to }: Span) => `${(from - at('2026-06-01')) / 3_600_000}-${(to - at('2026-06-01')) / 3_600_000}`;

describe('leave before it is approved', () => {
  const effect = effectOf(
    rota,
    [leave('ada', '2026-06-02', '2026-06-03')],
    [OZONE],
    at('2026-06-01'),
    at('2026-06-04'),
  );

  test('says which hours nobody would answer any more, and not those that nobody answers anyway', () => {
    expect(effect.nobody.map(said)).toEqual(['30-42']);
  });

  test('of the only person with a competence says when it is lacking then', () => {
    expect(effect.lacking.map(({ competence, spans }) => [competence, spans.map(said)])).toEqual([
      ['ozone', ['30-42']],
    ]);
    const two = {
      ...rota,
      people: [ada, { ...ben, competences: ada.competences }],
      shifts: [days('day', 'ada'), days('same', 'ben')],
    };
    expect(
      effectOf(two, [leave('ada', '2026-06-02', '2026-06-03')], [OZONE], at('2026-06-01'), at('2026-06-04')),
    ).toEqual({ nobody: [], lacking: [], rest: [] });
  });
});

test('a swap that leaves ten hours of rest says so, one that leaves eleven does not', () => {
  // Source: Working Time Directive 2003/88/EC, article 3, eleven hours in every 24.
  const swapped = (from: string) => {
    const given: Rota = { ...rota, shifts: [days('day', 'ada', from, '18:00'), days('late', 'ben', '18:00', '22:00')] };
    const swap: DutyException = { kind: 'swap', shift: 'late', date: '2026-06-02', gives: 'ben', takes: 'ada' };
    return effectOf(given, [swap], [], at('2026-06-02'), at('2026-06-03')).rest.map(({ rule, comesTo }) => [
      rule,
      comesTo,
    ]);
  };
  expect(swapped('08:00')).toContainEqual(['daily-rest', 10]);
  expect(swapped('09:00')).not.toContainEqual(expect.arrayContaining(['daily-rest']));
});

test('a competence that has run out is lacking from the next day on, whoever is on', () => {
  const [lacking] = lackingOn(rota, [OZONE], at('2026-06-10', '06:00'), at('2026-06-12'));
  expect(lacking?.spans.map(said)).toEqual([`${9 * 24 + 18}-${11 * 24}`]);
  expect(mayPutRight(ada, 'ozone', [OZONE], '2026-06-10')).toBe(true);
  expect(mayPutRight(ada, 'ozone', [OZONE], '2026-06-11')).toBe(false);
  expect(mayPutRight(ben, 'ozone', [OZONE], '2026-06-01')).toBe(false);
  expect(mayPutRight(ben, 'heater', [OZONE], '2026-06-01')).toBe(true);
});

test('one person on call at two sites is told for the hours that both have', () => {
  const night = (key: string, from: string, to: string) => ({
    ...days(key, 'ada', from, to),
    kind: 'on-call' as const,
  });
  const other: Rota = {
    site: { zone: 'Europe/Berlin' },
    people: [ada],
    shifts: [night('night', '22:00', '06:00')],
    exceptions: [],
  };
  const here = { rota: { ...rota, shifts: [night('night', '20:00', '04:00')] }, person: 'ada' };
  const there = [{ site: 'inland', person: 'ada', rota: other, wayMin: 45 }];
  // 22:00 in Berlin is 21:00 in London, and 06:00 there is 05:00.
  const found = atTwoSites(here, there, at('2026-06-01', '12:00'), at('2026-06-02', '12:00'));
  expect(found).toEqual([
    {
      from: at('2026-06-01', '21:00'),
      to: at('2026-06-02', '04:00'),
      site: 'inland',
      here: 'on-call',
      there: 'on-call',
      wayMin: 45,
      isBetween: false,
    },
  ]);
  const away = [{ kind: 'leave' as const, person: 'ada', from: at('2026-06-01'), to: at('2026-06-03') }];
  expect(
    atTwoSites(
      here,
      [{ site: 'inland', person: 'ada', rota: { ...other, exceptions: away }, wayMin: 45 }],
      at('2026-06-01'),
      at('2026-06-02'),
    ),
  ).toEqual([]);
});

describe('what may come of a change', () => {
  test('leave is approved at once, a swap only once it is agreed, and each thing comes once', () => {
    expect(mayCome('leave', 'asked')).toContain('approved');
    expect(mayCome('swap', 'asked')).not.toContain('approved');
    expect(mayCome('swap', changeState(['agreed']))).toContain('approved');
    expect(mayCome('leave', 'approved')).toEqual(['taken-back']);
    for (const over of ['declined', 'refused', 'withdrawn', 'taken-back'] as ChangeEvent[])
      expect([...mayCome('swap', over), ...mayCome('leave', over)]).toEqual([]);
  });
});

test('spans without others are what lies in the first alone', () => {
  const any = fc
    .uniqueArray(fc.integer({ min: 0, max: 60 }), { maxLength: 8 })
    .map((ends) => ends.sort((a, b) => a - b))
    .map((ends) =>
      ends.flatMap((from, place) =>
        place % 2 === 0 && ends[place + 1] !== undefined ? [{ from, to: ends[place + 1] ?? from }] : [],
      ),
    );
  const has = (spans: Span[], moment: number) => spans.some(({ from, to }) => from <= moment && moment < to);
  fc.assert(
    fc.property(any, any, (spans, others) => {
      const left = spansWithout(spans, others);
      for (let moment = 0; moment <= 60; moment++)
        expect(has(left, moment)).toBe(has(spans, moment) && !has(others, moment));
    }),
  );
  expect(nobodyOn({ ...rota, people: [] }, 0, 10)).toEqual([{ from: 0, to: 10 }]);
});
