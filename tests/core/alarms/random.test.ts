import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Condition, Worked } from '#core/alarms/condition';
import { QUALITIES } from '#core/readings/reading';
import { acknowledge, type Followed, follow, limits, open, reading, see, silence, still, tick } from './run-alarm';

/** What may happen, one after another. */
const happening = fc.oneof(
  fc.record({
    what: fc.constant('reading' as const),
    afterS: fc.integer({ min: 0, max: 200 }),
    /** How late it comes. */
    lateS: fc.constantFrom(0, 0, 0, 5, 500),
    value: fc.constantFrom(24, 26.2, 26.3, 26.5, 26.6, 30),
    quality: fc.constantFrom('good' as const, ...QUALITIES),
    isByHand: fc.constantFrom(false, false, true),
  }),
  fc.record({ what: fc.constant('tick' as const), afterS: fc.integer({ min: 0, max: 400 }) }),
  fc.record({ what: fc.constant('acknowledge' as const), which: fc.nat(5) }),
);
type Happening = typeof happening extends fc.Arbitrary<infer T> ? T : never;

const condition: fc.Arbitrary<Condition> = fc.oneof(
  fc.record({ delayS: fc.constantFrom(0, 60), offDelayS: fc.constantFrom(0, 90), isCarried: fc.boolean() }).map(limits),
  fc.record({ anyWord: fc.boolean(), offDelayS: fc.constantFrom(0, 90) }).map(silence),
  fc
    .constantFrom<Worked>(
      { kind: 'rate', meanS: 300 },
      { kind: 'starts', runsAbove: 26 },
      { kind: 'difference', other: 'probe' },
    )
    .map((of) => limits({ of, above: 1, delayS: 60 })),
  fc.record({ offDelayS: fc.constantFrom(0, 90), isCarried: fc.boolean() }).map(still),
);

/** Runs what happens, and looks after each. */
function play(held: Condition, happenings: readonly Happening[], look: (now: Followed, was: Followed) => void): void {
  const alarm = follow(held);
  let nowS = 0;
  for (const one of happenings) {
    const was: Followed = structuredClone(alarm);
    if (one.what === 'acknowledge') acknowledge(alarm, one.which);
    else {
      nowS += one.afterS;
      if (one.what === 'tick') tick(held, alarm, nowS);
      else {
        const { value, quality, isByHand } = one;
        see(held, alarm, reading(nowS - one.lateS, value, { quality, isByHand, cameMs: nowS * 1000 }));
      }
    }
    look(alarm, was);
  }
}

describe('whatever happens to an alarm', () => {
  const always = (look: (now: Followed, was: Followed) => void) =>
    fc.assert(
      fc.property(condition, fc.array(happening, { maxLength: 60 }), (held, all) => play(held, all, look)),
      { numRuns: 500 },
    );

  test('what was acknowledged stays so, and what returned is raised anew only as another one', () => {
    always((now, was) => {
      for (const [i, { known }] of was.raised.entries()) {
        const then = now.raised[i]?.known;
        expect(then).toBeDefined();
        if (known.acknowledged) expect(then?.acknowledged).toBe(true);
        if (!known.active) expect(then?.active).toBe(false);
      }
    });
  });

  test('at most one is active, and that is the newest; its phase says so', () => {
    always(({ raised, watch }) => {
      const active = raised.filter(({ known }) => known.active);
      expect(active.length).toBe(watch.phase === 'active' || watch.phase === 'clearing' ? 1 : 0);
      if (active.length > 0) expect(active[0]).toBe(raised.at(-1));
    });
  });

  test('what nobody acknowledged stays listed, also once it has returned and is raised again', () => {
    always((now) => {
      const unseen = now.raised.filter(({ known }) => !known.acknowledged);
      expect(open(now)).toEqual(expect.arrayContaining(unseen));
    });
  });

  test('a bad reading of a sensor turns no limit alarm, and a suspect one ends nothing', () => {
    fc.assert(
      fc.property(
        fc.array(happening, { maxLength: 60 }),
        fc.constantFrom('bad' as const, 'suspect' as const),
        (all, quality) => {
          const held = limits({ delayS: 60 });
          const spoilt = all.map((one) => (one.what === 'reading' ? { ...one, quality } : one));
          play(held, spoilt, ({ raised }) => {
            if (quality === 'bad') expect(raised).toEqual([]);
            expect(raised.every(({ known }) => known.active)).toBe(true);
          });
        },
      ),
    );
  });
});
