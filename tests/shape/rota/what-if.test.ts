import { readWhatIf, whatIfAsked } from '#shape/rota/what-if';
import { DAYS } from '#core/facility/site';
import { expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';

const site = facility();

test('a question is read from its address, empty fields left out and anything unknown passed over', () => {
  const read = whatIfAsked.parse({ site: 'harbour', check: '02:00', way: '', column: 'later', other: 'x' });
  expect(read).toEqual({ site: 'harbour', column: 'claimed', asked: { check: '02:00' } });
  expect(whatIfAsked.parse({ site: 'harbour', column: 'tested', check: ['a', 'b'] })).toEqual({
    site: 'harbour',
    column: 'tested',
    asked: {},
  });
});

test('every part of a question is understood', () => {
  const given = {
    ...{ check: '02:00', checkDays: 'weekend', shift: 'night', shiftFrom: '20:00', shiftTo: '06:30' },
    ...{ person: 'robin', way: '12', more: 'on-call', moreFrom: '18:00', moreTo: '08:00', moreWay: '5' },
  };
  expect(readWhatIf(given, site)).toEqual({
    wrong: {},
    what: {
      check: { at: '02:00', days: ['sat', 'sun'] },
      shift: { key: 'night', from: '20:00', to: '06:30' },
      way: { person: 'robin', travelMin: 12 },
      more: { kind: 'on-call', days: DAYS, from: '18:00', to: '08:00', travelMin: 5 },
    },
  });
});

test('what is wrong is named by its field, and that part is not asked while the others are', () => {
  const given = { check: '25:00', shift: 'gone', shiftFrom: '8', shiftTo: '10:00', person: 'robin', way: '-3' };
  const { what, wrong } = readWhatIf({ ...given, more: 'on-site', moreFrom: '06:00', moreTo: '08:00' }, site);
  expect(Object.keys(wrong).sort()).toEqual(['check', 'shift', 'shiftFrom', 'way']);
  expect(Object.keys(what)).toEqual(['more']);
});
