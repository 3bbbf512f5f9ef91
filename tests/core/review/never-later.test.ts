import { taker } from '#core/equipment/take';
import type { AnsweredBy } from '#core/facility/site';
import type { View } from '#core/review/context';
import { type Call, respond } from '#core/review/notice';
import { coverOf } from '#core/rota/cover';
import { type Aspect, ASPECTS } from '#core/rounds/slot';
import { walksOf } from '#core/rounds/walks';
import { DAYS } from '#core/facility/site';
import type { Facility } from '#core/facility/facility';
import { HOUR, WEEK } from '#core/time/week';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { facility, round } from '../../_support/build-facility';
import { anyPeople, anyShift, anyShifts, anyTimeOfDay } from '../rota/any-rota';

type Around = Pick<View, 'cover' | 'walks'>;

const around = (site: Facility): Around => {
  const cover = coverOf(site, taker('nominal'));
  return { cover, walks: walksOf(site, 'reef-1', cover) };
};

const anyAnswerer: fc.Arbitrary<AnsweredBy> = fc.oneof(
  fc.constant<AnsweredBy>('rota'),
  fc.subarray(['ada', 'ben', 'cleo'], { minLength: 1 }),
);
const anyCall: fc.Arbitrary<Call> = fc.record({
  key: fc.constantFrom('too-warm', 'return-lost'),
  atS: fc.integer({ min: 0, max: WEEK }),
  answeredBy: anyAnswerer,
});
const anyRound = fc
  .record({
    days: fc.subarray([...DAYS], { minLength: 1 }),
    at: anyTimeOfDay(),
    sees: fc.subarray([...ASPECTS], { minLength: 1 }),
  })
  .map((given) => round(given));
const anySigns = fc
  .uniqueArray(fc.tuple(fc.constantFrom(...ASPECTS), fc.integer({ min: 0, max: WEEK })), { selector: ([a]) => a })
  .map((list) => new Map<Aspect, number>(list));
const anySite = fc
  .record({ people: anyPeople(), shifts: anyShifts(), rounds: fc.array(anyRound, { maxLength: 2 }) })
  .map((given) => facility(given));
const anyWay = fc.record({
  site: anySite,
  calls: fc.array(anyCall, { maxLength: 3 }),
  signs: anySigns,
  able: fc.option(fc.subarray(['ada', 'ben', 'cleo'])),
  workS: fc.oneof(fc.integer({ min: 0, max: 7200 }), fc.constant(Number.POSITIVE_INFINITY)),
});
type Way = typeof anyWay extends fc.Arbitrary<infer T> ? T : never;

/** Notice and time to put right at every hour of the week; Infinity for never. */
const week = ({ site, calls, signs, workS, able }: Way): number[][] => {
  const view = around(site);
  return Array.from({ length: 168 }, (_, h) => {
    const { noticeS, putRightS } = respond(view, calls, signs, h * HOUR, workS, able && ((one) => able.includes(one)));
    return [noticeS ?? Number.POSITIVE_INFINITY, putRightS ?? Number.POSITIVE_INFINITY];
  });
};

const neverLater = (before: Way, after: Way): void => {
  const [was, is] = [week(before), week(after)];
  for (const [h, times] of is.entries()) {
    for (const [i, time] of times.entries()) expect(time).toBeLessThanOrEqual(was[h]?.[i] ?? Number.NaN);
  }
};

const runs = { numRuns: 60 };

test('one more alarm never makes the notice, or what follows it, later at any hour', () => {
  fc.assert(
    fc.property(anyWay, anyCall, (way, more) => neverLater(way, { ...way, calls: [...way.calls, more] })),
    runs,
  );
});

test('one more person to answer an alarm never makes anything later', () => {
  fc.assert(
    fc.property(anyWay, anyCall, fc.constantFrom('ada', 'ben', 'cleo'), (way, call, more) => {
      const named = Array.isArray(call.answeredBy) ? call.answeredBy : ['ada'];
      const asked = (answeredBy: AnsweredBy) => ({ ...way, calls: [...way.calls, { ...call, answeredBy }] });
      neverLater(asked(named), asked([...named, more]));
    }),
    runs,
  );
});

test('one more round never makes anything later', () => {
  fc.assert(
    fc.property(anyWay, anyRound, (way, more) =>
      neverLater(way, { ...way, site: { ...way.site, rounds: [...way.site.rounds, more] } }),
    ),
    runs,
  );
});

test('one more shift never makes anything later', () => {
  fc.assert(
    fc.property(anyWay, anyShift('more'), (way, more) =>
      neverLater(way, { ...way, site: { ...way.site, shifts: [...way.site.shifts, more] } }),
    ),
    runs,
  );
});

test('one more sign, or a sign that shows sooner, never makes anything later', () => {
  fc.assert(
    fc.property(anyWay, anySigns, (way, others) => {
      const signs = new Map(way.signs);
      for (const [aspect, s] of others) signs.set(aspect, Math.min(s, signs.get(aspect) ?? s));
      neverLater(way, { ...way, signs });
    }),
    runs,
  );
});

test('a longer way to the site, or longer work, never puts anything right sooner', () => {
  fc.assert(
    fc.property(anyWay, fc.integer({ min: 1, max: 600 }), (way, moreMin) => {
      const people = way.site.people.map((one) => ({
        ...one,
        travelMin: { value: (one.travelMin?.value ?? 0) + moreMin, origin: 'entered' as const },
      }));
      neverLater({ ...way, site: { ...way.site, people } }, way);
      neverLater({ ...way, workS: way.workS + 60 * moreMin }, way);
    }),
    runs,
  );
});

test('nothing is put right before it is noticed, or noticed before it begins', () => {
  fc.assert(
    fc.property(anyWay, (way) => {
      for (const [notice = 0, right = 0] of week(way)) {
        expect(notice).toBeGreaterThanOrEqual(0);
        expect(right).toBeGreaterThanOrEqual(notice);
      }
    }),
    runs,
  );
});
