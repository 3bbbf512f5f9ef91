import { taker } from '#core/equipment/take';
import type { AnsweredBy } from '#core/facility/site';
import { answering, comesAfter } from '#core/rota/answering';
import { coverOf, reachedAfter } from '#core/rota/cover';
import { usualLine } from '#core/rota/line';
import { WEEK } from '#core/time/week';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { anyPeople, anyShift, anyShifts } from './any-rota';

const anyAnswerer: fc.Arbitrary<AnsweredBy> = fc.oneof(
  fc.constant<AnsweredBy>('rota'),
  fc.constant<AnsweredBy>('nobody'),
  fc.subarray(['ada', 'ben', 'cleo'], { minLength: 1 }),
);
const anySite = fc.record({ people: anyPeople(), shifts: anyShifts() }).map((given) => facility(given));
const anyCall = fc.integer({ min: 0, max: 2 * WEEK - 1 });
const runs = { numRuns: 150 };

/** s after a call; Infinity when nobody ever comes. */
const soonest = (site: ReturnType<typeof facility>, answeredBy: AnsweredBy, able?: (person: string) => boolean) => {
  const { stretches, homes } = usualLine(coverOf(site, taker('nominal')));
  const comes = answering(stretches, homes, answeredBy, able);
  return (atS: number) => {
    const come = comes(atS);
    return come ? comesAfter(come) : Number.POSITIVE_INFINITY;
  };
};

test('whoever comes first on the line of the usual week comes when the cover of the week says, to the second', () => {
  fc.assert(
    fc.property(anySite, anyAnswerer, fc.array(anyCall, { maxLength: 20 }), (site, answeredBy, calls) => {
      const comes = soonest(site, answeredBy);
      const cover = coverOf(site, taker('nominal'));
      for (const atS of calls)
        expect(comes(atS)).toBe(reachedAfter(cover, atS % WEEK, answeredBy) ?? Number.POSITIVE_INFINITY);
    }),
    runs,
  );
});

test('a call that is made later is never answered by somebody who is there sooner', () => {
  fc.assert(
    fc.property(anySite, anyAnswerer, anyCall, fc.integer({ min: 0, max: WEEK }), (site, answeredBy, atS, moreS) => {
      const comes = soonest(site, answeredBy);
      expect(moreS + comes(atS + moreS)).toBeGreaterThanOrEqual(comes(atS));
    }),
    runs,
  );
});

test('one more shift, or one more who is able, never makes anybody come later', () => {
  fc.assert(
    fc.property(anySite, anyShift('more'), anyAnswerer, anyCall, (site, more, answeredBy, atS) => {
      const without = soonest(site, answeredBy)(atS);
      expect(soonest({ ...site, shifts: [...site.shifts, more] }, answeredBy)(atS)).toBeLessThanOrEqual(without);
      const alone = soonest(site, answeredBy, (person) => person === 'ada')(atS);
      expect(soonest(site, answeredBy, (person) => person !== 'cleo')(atS)).toBeLessThanOrEqual(alone);
      expect(without).toBeLessThanOrEqual(alone);
    }),
    runs,
  );
});
