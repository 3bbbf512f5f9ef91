import { describe, expect, test } from 'vitest';
import { type CallMade, callRuns } from '#core/alarms/call-runs';

const MINUTE = 60_000;

function call(minute: number, given: Partial<CallMade> = {}): CallMade {
  return {
    accountId: 'robin',
    channel: 'mail',
    why: 'lead',
    again: 0,
    madeMs: minute * MINUTE,
    attempts: [],
    ...given,
  };
}
const ended = (result: 'taken' | 'failed', detail: string | null = null) => [{ atMs: 0, result, detail }];
const taken = { attempts: ended('taken') };
const failed = (detail: string) => ({ attempts: ended('failed', detail) });
const told = (calls: CallMade[]) =>
  callRuns(calls, false).map(({ state, detail, fromMs, toMs, times, isCalledSince }) => ({
    how: detail ?? state,
    from: fromMs / MINUTE,
    to: toMs / MINUTE,
    times,
    isCalledSince,
  }));

describe('who was told of an alarm', () => {
  test('is as long after a night of repeats as after two of them', () => {
    const night = [0, 15, 30, 45, 60].map((minute) => call(minute, taken));
    expect(told(night)).toEqual([{ how: 'taken', from: 0, to: 60, times: 5, isCalledSince: false }]);
  });

  test('shows each failure apart from what went before and after it, with what was said of it', () => {
    const calls = [call(0, taken), call(15, failed('refused')), call(30, failed('no such host')), call(45, taken)];
    expect(told(calls)).toEqual([
      { how: 'taken', from: 45, to: 45, times: 1, isCalledSince: false },
      { how: 'no such host', from: 30, to: 30, times: 1, isCalledSince: true },
      { how: 'refused', from: 15, to: 15, times: 1, isCalledSince: true },
      { how: 'taken', from: 0, to: 0, times: 1, isCalledSince: true },
    ]);
  });

  test('folds failures that say the same, and never one person, one way, one reason or one call anew with another', () => {
    expect(told([call(0, failed('refused')), call(15, failed('refused'))])).toMatchObject([
      { how: 'refused', times: 2 },
    ]);
    const others = [{ accountId: 'kit' }, { channel: 'push' as const }, { why: 'on-call' as const }, { again: 1 }];
    for (const other of others) {
      const runs = callRuns([call(0, taken), call(15, { ...taken, ...other })], false);
      expect(runs.map(({ times }) => times)).toEqual([1, 1]);
    }
  });

  test('tells people together where all of it is the same, and apart where one of them could not be told', () => {
    const all = ['robin', 'kit', 'lee'].map((accountId) => call(0, { accountId, ...taken }));
    expect(callRuns(all, false).map(({ accountIds }) => accountIds)).toEqual([['robin', 'kit', 'lee']]);
    const [robin, kit, lee] = all;
    const one = [robin, { ...kit, ...failed('no such box') }, lee] as CallMade[];
    expect(callRuns(one, false).map(({ accountIds }) => accountIds)).toEqual([['robin', 'lee'], ['kit']]);
  });

  test('stands newest first, in whatever order it is asked', () => {
    const calls = [call(30, { accountId: 'kit', ...taken }), call(0, taken), call(15, { channel: 'push', ...taken })];
    for (const given of [calls, calls.toReversed()]) expect(told(given).map(({ to }) => to)).toEqual([30, 15, 0]);
  });
});
