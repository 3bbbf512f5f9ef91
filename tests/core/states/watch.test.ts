import { describe, expect, test } from 'vitest';
import { signaturesAsked } from '#core/states/signing';
import { nextLookMs, type Watch, watchedUntil, watchesAfter } from '#core/states/watch';
import { heater, plan } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { system } from '../../_support/build-system';

const HOUR = 3_600_000;
const ozone = heater({
  key: 'ozone',
  type: 'ozone',
  plan: plan({ states: [{ state: 'water-change', then: 'off', by: 'person' }] }),
});
const of = system({ equipment: [ozone] });
const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const base = facility();
const [person] = base.people;
if (!person) throw new Error('no person');
const rota = {
  exceptions: [],
  site: { zone: 'Europe/London' },
  people: base.people,
  shifts: [
    { key: 'early', kind: 'on-site' as const, people: [person.key], days: [...DAYS], from: '07:00', to: '15:00' },
    { key: 'late', kind: 'on-site' as const, people: [person.key], days: [...DAYS], from: '15:00', to: '22:00' },
  ],
};
const keys = (list: Watch[]) => list.map(({ key }) => key);
const of1 = (key: string): Watch => {
  const watch = watchesAfter(of, 'ozone-work').find((one) => one.key === key);
  if (!watch) throw new Error(`no watch ${key}`);
  return watch;
};

describe('what is watched after a state', () => {
  test('is ozone wherever a plan had it off, or hands were on it', () => {
    expect(keys(watchesAfter(of, 'water-change'))).toEqual(['ozone', 'new-water']);
    expect(keys(watchesAfter(of, 'ozone-work'))).toEqual(['ozone']);
    expect(keys(watchesAfter(system({ equipment: [] }), 'water-change'))).toEqual(['new-water']);
    expect(watchesAfter(of, 'feeding')).toEqual([]);
  });

  // The published case: ozone came back at 13:00, animals in distress at 19:00 (forums.reefcentral.com, thread 900281).
  test('covers the six hours of the published case, and goes on through the next two shifts', () => {
    const ended = Date.UTC(2026, 0, 19, 13);
    const until = watchedUntil(rota, of1('ozone'), ended);
    expect(until).toBe(Date.UTC(2026, 0, 20, 15));
    expect(until - ended).toBeGreaterThan(6 * HOUR);
  });

  test('lasts its hours where nobody is on any rota', () => {
    expect(watchedUntil({ ...rota, shifts: [] }, of1('ozone'), 0)).toBe(12 * HOUR);
  });

  test('asks for a look every so often, and for none once it is over', () => {
    const until = 12 * HOUR;
    expect(nextLookMs(of1('ozone'), until, 0, [])).toBe(2 * HOUR);
    expect(nextLookMs(of1('ozone'), until, 0, [5 * HOUR])).toBe(7 * HOUR);
    expect(nextLookMs(of1('ozone'), until, 0, [11 * HOUR])).toBeNull();
  });
});

describe('what is signed by two', () => {
  test('is asked where the work is: ozone at its return, new water and medicine before, valves after', () => {
    expect(signaturesAsked(of, 'water-change', 'begun')).toEqual(['water-release']);
    expect(signaturesAsked(of, 'water-change', 'ended')).toEqual(['ozone-return']);
    expect(signaturesAsked(of, 'treatment', 'begun')).toEqual(['medicine-dosing']);
    expect(signaturesAsked(system({ equipment: [] }), 'backwash', 'ended')).toEqual(['valve-line-up']);
    expect(signaturesAsked(of, 'feeding', 'ended')).toEqual([]);
  });
});
