import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CallOutEvent, callOutAt, SEEN_TO_MIN, STEP_MIN } from '#core/call-outs/call-out';

const MIN = 60_000;
const until = 30 * MIN;

describe('somebody who went in alone', () => {
  test('is out until the time they said, and overdue from that moment on', () => {
    expect(callOutAt(until, [], until - 1)).toMatchObject({ state: 'out', nextMs: until, step: 0 });
    expect(callOutAt(until, [], until)).toMatchObject({ state: 'overdue', nextMs: until });
  });

  test('is looked for step after step, and never given up', () => {
    const steps = Array.from(
      { length: 9 },
      (_, at): CallOutEvent => ({
        kind: 'overdue',
        step: at + 1,
        atMs: until + at * STEP_MIN * MIN,
      }),
    );
    const standing = callOutAt(until, steps, until + 200 * MIN);
    expect(standing).toMatchObject({ state: 'overdue', step: 9, nextMs: until + 9 * STEP_MIN * MIN });
  });

  test('takes more time, which ends the looking and begins it anew', () => {
    const called: CallOutEvent = { kind: 'overdue', step: 1, atMs: until };
    const more: CallOutEvent = { kind: 'extended', atMs: until + MIN, untilMs: until + 16 * MIN };
    expect(callOutAt(until, [called, more], until + 2 * MIN)).toEqual({
      state: 'out',
      untilMs: until + 16 * MIN,
      again: 1,
      step: 0,
      isSeenTo: false,
      nextMs: until + 16 * MIN,
    });
  });

  test('is left to whoever looks after it for a while, and no longer', () => {
    const called: CallOutEvent = { kind: 'overdue', step: 1, atMs: until };
    const seen: CallOutEvent = { kind: 'seen-to', atMs: until + MIN };
    const standing = callOutAt(until, [called, seen], until + 2 * MIN);
    expect(standing).toMatchObject({ isSeenTo: true, nextMs: until + (1 + SEEN_TO_MIN) * MIN });
    const next: CallOutEvent = { kind: 'overdue', step: 2, atMs: standing.nextMs ?? 0 };
    expect(callOutAt(until, [called, seen, next], next.atMs)).toMatchObject({ step: 2, isSeenTo: false });
  });

  test('whatever happened, somebody is called in the end unless a person said that they are back', () => {
    const event = fc.oneof(
      fc.record({ kind: fc.constant('extended' as const), untilMs: fc.nat(1e7) }),
      fc.record({ kind: fc.constant('overdue' as const), step: fc.integer({ min: 1, max: 5 }) }),
      fc.record({ kind: fc.constant('seen-to' as const) }),
      fc.record({ kind: fc.constant('back' as const) }),
    );
    fc.assert(
      fc.property(fc.array(event, { maxLength: 8 }), (made) => {
        const events = made.map((one, at) => ({ ...one, atMs: at * MIN })) as CallOutEvent[];
        const standing = callOutAt(until, events, 1e9);
        const isBack = events.some(({ kind }) => kind === 'back');
        expect(standing.nextMs === null).toBe(isBack);
        expect(standing.state).toBe(isBack ? 'back' : 'overdue');
      }),
      { numRuns: 200 },
    );
  });
});
