import { DAYS } from '#core/facility/site';
import type { RoundSlot } from '#core/rounds/slot';
import { type BegunRound, overdueBySystem, standings } from '#core/rounds/standings';
import { describe, expect, test } from 'vitest';

const at = (time: string) => Date.parse(`${time}:00Z`);
const slots: RoundSlot[] = [
  { key: 'morning', name: 'Morning', days: [...DAYS], at: '08:00', sees: ['animals'] },
  { key: 'evening', name: 'Evening', days: [...DAYS], at: '18:00', sees: ['animals'], systems: ['reef'] },
];
const given = (now: string, rounds: BegunRound[] = []) =>
  standings({ slots, shifts: [], zone: 'UTC', rounds, now: at(now), since: at('2026-06-01T12:00') });
const told = (now: string, rounds?: BegunRound[]) =>
  given(now, rounds).map((walk) => `${walk.date.slice(8)} ${walk.slot.key} ${walk.standing}`);

describe('how the walks of a site stand', () => {
  test('those from the beginning of its walking to the end of today are told of, and no earlier one', () => {
    expect(told('2026-06-02T09:00')).toEqual(['01 evening missed', '02 morning due', '02 evening ahead']);
  });

  test('a round that was begun and one that was signed stand as such, found by slot and when they were due', () => {
    const begun = { slot: 'morning', dueAt: at('2026-06-02T08:00'), begunAt: at('2026-06-02T08:05'), signedAt: null };
    expect(told('2026-06-02T09:00', [begun])[1]).toBe('02 morning begun');
    expect(told('2026-06-03T09:00', [begun])[1]).toBe('02 morning late');
    expect(told('2026-06-02T09:00', [{ ...begun, signedAt: at('2026-06-02T08:40') }])[1]).toBe('02 morning done');
    expect(told('2026-06-02T09:00', [{ ...begun, dueAt: at('2026-06-01T08:00') }])[1]).toBe('02 morning due');
  });

  test('late and missed ones are counted for each system they pass, the missed ones for as long as they matter', () => {
    const walks = given('2026-06-02T11:00');
    const count = (since: string) => [...overdueBySystem(walks, ['reef', 'shop'], at(since))];
    expect(count('2026-06-01T11:00')).toEqual([
      ['reef', { late: 1, missed: 1 }],
      ['shop', { late: 1, missed: 0 }],
    ]);
    expect(count('2026-06-02T10:00')[0]).toEqual(['reef', { late: 1, missed: 0 }]);
  });
});
