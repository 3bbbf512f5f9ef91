import { taker } from '#core/equipment/take';
import { DAYS, type Day } from '#core/facility/site';
import { coverOf } from '#core/rota/cover';
import { type Aspect, ASPECTS, type RoundSlot } from '#core/rounds/slot';
import { firstSeen, walksOf } from '#core/rounds/walks';
import { HOUR, WEEK, weekSecond } from '#core/time/week';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { facility, round, shift } from '../../_support/build-facility';
import { anyTimeOfDay } from '../rota/any-rota';

const always = shift({ days: [...DAYS], from: '00:00', to: '00:00' });

/** Rounds of a site where somebody is always there to walk them. */
const walks = (rounds: RoundSlot[], shifts = [always]) => {
  const site = facility({ rounds, shifts });
  return walksOf(site, 'reef-1', coverOf(site, taker('nominal')));
};
const at = (day: Day, time: string) => weekSecond(day, time);
const seen = (...signs: [Aspect, number][]) => new Map<Aspect, number>(signs);

describe('the next round', () => {
  const daily = walks([round({ at: '08:30', sees: ['animals', 'floor'] })]);

  test('sees what shows from the beginning', () => {
    expect(firstSeen(daily, at('mon', '08:00'), seen(['animals', 0]), WEEK)).toEqual({
      afterS: HOUR / 2,
      key: 'morning',
    });
  });

  test('that falls on the very onset has gone past: the one after it counts', () => {
    expect(firstSeen(daily, at('mon', '08:30'), seen(['animals', 0]), WEEK)?.afterS).toBe(24 * HOUR);
  });

  test('before the sign begins sees nothing: the one after it does', () => {
    expect(firstSeen(daily, at('mon', '08:00'), seen(['animals', HOUR]), WEEK)?.afterS).toBe(24.5 * HOUR);
  });

  test('at the moment the sign begins sees it', () => {
    expect(firstSeen(daily, at('mon', '08:00'), seen(['animals', HOUR / 2]), WEEK)?.afterS).toBe(HOUR / 2);
  });

  test('does not see what it does not look at', () => {
    expect(firstSeen(daily, at('mon', '08:00'), seen(['salinity', 0], ['level', 0]), WEEK)).toBeNull();
  });

  test('sees the earliest of the signs it looks at', () => {
    const signs = seen(['salinity', 0], ['floor', 30 * HOUR], ['animals', 50 * HOUR]);
    expect(firstSeen(daily, at('mon', '08:00'), signs, WEEK)?.afterS).toBe(48.5 * HOUR);
  });

  test('after the time within which to look is no use', () => {
    const late = (untilS: number) => firstSeen(daily, at('mon', '08:00'), seen(['animals', HOUR]), untilS);
    expect(late(24.5 * HOUR)).not.toBeNull();
    expect(late(24.5 * HOUR - 1)).toBeNull();
  });
});

test('a weekly round is met across the end of the week, or a week later when its sign comes just after it', () => {
  const mondays = walks([round({ days: ['mon'], at: '09:00' })]);
  expect(firstSeen(mondays, at('sun', '21:00'), seen(['oxygen', 0]), WEEK)?.afterS).toBe(12 * HOUR);
  expect(firstSeen(mondays, at('mon', '08:00'), seen(['oxygen', 2 * HOUR]), 2 * WEEK)?.afterS).toBe(WEEK + HOUR);
});

test('of two rounds the one that comes by first with its sign already there counts, whatever the order they are listed in', () => {
  const both = [round({ at: '08:30', sees: ['oxygen'] }), round({ key: 'evening', at: '17:00', sees: ['floor'] })];
  const signs = seen(['oxygen', 10 * HOUR], ['floor', 2 * HOUR]);
  for (const listed of [both, both.toReversed()]) {
    expect(firstSeen(walks(listed), at('mon', '08:00'), signs, WEEK)).toEqual({ afterS: 9 * HOUR, key: 'evening' });
  }
});

describe('a round is credited', () => {
  test('only where somebody is on site to walk it', () => {
    const days = [
      shift({ from: '08:00', to: '18:00' }),
      shift({ key: 'c', kind: 'on-call', from: '18:00', to: '08:00' }),
    ];
    const times = ['07:59', '08:00', '17:59', '18:00'];
    const listed = times.map((time) => round({ key: time, days: ['wed'], at: time }));
    expect(walks(listed, days).map(({ key }) => key)).toEqual(['08:00', '17:59']);
    expect(walks(listed, [])).toEqual([]);
  });

  test('only on the days that somebody is on site', () => {
    const weekdays = shift({ days: ['mon', 'tue', 'wed', 'thu', 'fri'] });
    expect(walks([round()], [weekdays])).toHaveLength(5);
  });

  test('only for the systems it passes; without a list it passes all', () => {
    expect(
      walks([round({ systems: ['other'] }), round({ key: 'b', systems: ['reef-1'] }), round({ key: 'c' })]),
    ).toHaveLength(14);
  });
});

describe('against every minute tried one by one', () => {
  const anyRound = (key: string) =>
    fc
      .record({
        days: fc.subarray([...DAYS], { minLength: 1 }),
        at: anyTimeOfDay(),
        sees: fc.subarray([...ASPECTS], { minLength: 1 }),
      })
      .map((given) => round({ key, ...given }));
  const anyRounds = fc
    .integer({ min: 0, max: 3 })
    .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => anyRound(`r${i}`))));
  const anySigns = fc
    .uniqueArray(fc.tuple(fc.constantFrom(...ASPECTS), fc.integer({ min: 0, max: 9000 })), { selector: ([a]) => a })
    .map((list) => new Map<Aspect, number>(list.map(([aspect, minute]) => [aspect, minute * 60])));
  const anyOnset = fc.integer({ min: 0, max: 10_079 });

  /** First minute after the onset at which a round comes by and sees one of the signs. */
  const byTheMinute = (rounds: RoundSlot[], onset: number, signs: Map<Aspect, number>): number | null => {
    const starts = rounds.flatMap((one) => one.days.map((day) => ({ one, minute: weekSecond(day, one.at) / 60 })));
    for (let after = 1; after <= 10_080; after++) {
      const passing = starts.filter(({ minute }) => minute === (onset + after) % 10_080);
      const shows = [...signs].filter(([, s]) => s <= after * 60).map(([aspect]) => aspect);
      if (passing.some(({ one }) => one.sees.some((aspect) => shows.includes(aspect)))) return after * 60;
    }
    return null;
  };

  test('the first round that sees a sign is the same', () => {
    fc.assert(
      fc.property(anyRounds, anyOnset, anySigns, (rounds, onset, signs) => {
        const first = firstSeen(walks(rounds), onset * 60, signs, WEEK);
        expect(first?.afterS ?? null).toBe(byTheMinute(rounds, onset, signs));
      }),
      { numRuns: 60 },
    );
  });

  test('one more round or one more sign never makes it later', () => {
    const later = (s: number | undefined) => s ?? Number.POSITIVE_INFINITY;
    fc.assert(
      fc.property(anyRounds, anyRound('more'), anyOnset, anySigns, anySigns, (rounds, more, onset, signs, others) => {
        const before = later(firstSeen(walks(rounds), onset * 60, signs, WEEK)?.afterS);
        expect(later(firstSeen(walks([...rounds, more]), onset * 60, signs, WEEK)?.afterS)).toBeLessThanOrEqual(before);
        const added = new Map([...others, ...signs]);
        expect(later(firstSeen(walks(rounds), onset * 60, added, WEEK)?.afterS)).toBeLessThanOrEqual(before);
      }),
    );
  });
});
