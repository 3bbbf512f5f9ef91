import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ALARM_CHANGES, ALARM_STATES, stateAfter } from '#core/alarms/life/machine';
import { after, isOpen, raised, stateOf } from '#core/alarms/known';
import { anyLife, normal } from './commands';
import { alarmInMemory } from './run-life';

describe('the life of an alarm', () => {
  test.each([false, true])(
    'is that of the standard, whatever happens in whatever order (latching: %s)',
    async (latching) => {
      const reached = new Set<string>();
      await fc.assert(
        fc.asyncProperty(anyLife(60), async (commands) => {
          const model = normal(latching);
          const real = alarmInMemory(latching);
          await fc.asyncModelRun(
            () => ({
              model,
              real: {
                ...real,
                state: async () => {
                  const state = await real.state();
                  reached.add(state);
                  return state;
                },
              },
            }),
            commands,
          );
        }),
        { numRuns: 300 },
      );
      const wanted = latching ? ['LUNACK', 'LACK'] : ['RTN'];
      for (const state of ['NORM', 'UNACK', 'ACK', 'SHLV', 'SUPR', 'OOS', ...wanted]) expect(reached).toContain(state);
    },
  );

  test('has the illegal ways of the standard nowhere', () => {
    // NORM to ACK or RTN, ACK to RTN, RTN to ACK, LACK to NORM by acknowledging, a suppressed one acknowledged.
    for (const latched of [false, true]) {
      expect(stateAfter(null, 'acknowledged', latched)).toBeNull();
      expect(stateAfter(null, 'returned', latched)).toBeNull();
      expect(stateAfter('acknowledged', 'returned', latched)).not.toBe('returned');
      expect(stateAfter('returned', 'acknowledged', latched)).not.toBe('acknowledged');
      expect(stateAfter('latched-acknowledged', 'acknowledged', latched)).toBeNull();
      expect(stateAfter('suppressed', 'acknowledged', latched)).toBeNull();
      for (const active of ['unacknowledged', 'acknowledged', 'suppressed'] as const)
        expect(stateAfter(active, 'reset', latched)).toBeNull();
      for (const change of ALARM_CHANGES) expect(stateAfter('over', change, latched)).toBeNull();
    }
  });

  test('has every state but the first and the last left by something, and none by itself', () => {
    for (const state of ALARM_STATES.filter((one) => one !== 'over')) {
      const ways = ALARM_CHANGES.flatMap((change) => [true, false].map((is) => stateAfter(state, change, is)));
      expect(ways.some((to) => to !== null)).toBe(true);
      expect(ways).not.toContain(state);
    }
  });

  test('follows from its facts, and they from it', () => {
    for (const latched of [false, true]) {
      const seen = new Set([stateOf(raised(latched))]);
      const wait = [raised(latched)];
      for (let known = wait.pop(); known; known = wait.pop())
        for (const change of ALARM_CHANGES) {
          const next = after(known, change);
          if (next === null) continue;
          expect(stateOf(next)).toBe(stateAfter(stateOf(known), change, known.latched));
          expect(isOpen(next)).toBe(stateOf(next) !== 'over');
          if (!seen.has(stateOf(next))) wait.push(next);
          seen.add(stateOf(next));
        }
      expect(seen.size).toBe(latched ? 8 : 5);
    }
  });
});
