import { describe, expect, test } from 'vitest';
import { callState, nextAttempt } from '#core/alarms/told';
import { calledNextMs, dueAfterMin, isQuiet, isRepeat, USUAL_STEPS } from '#core/alarms/steps';
import { type Member, type Roster, type Telling, tellFirst, tellNext } from '#core/alarms/to-tell';
import type { AnsweredBy } from '#core/facility/site';

const MEMBERS: Member[] = [
  { account: 'viewer', role: 'viewer', person: null },
  { account: 'kim', role: 'aquarist', person: 'kim' },
  { account: 'lee', role: 'lead', person: 'lee' },
  { account: 'max', role: 'manager', person: null },
  { account: 'set-up', role: 'admin', person: null, isElsewhere: true },
];
const LEADS = ['lee', 'max'];
const kim = { person: 'kim', kind: 'on-site' as const };
const onCall = { person: 'lee', kind: 'on-call' as const };
const tell = (answeredBy: AnsweredBy, roster: Partial<Roster>) =>
  tellFirst(answeredBy, { on: [], members: MEMBERS, ...roster });
const names = ({ whom }: Telling) => whom.map(({ account }) => account);

describe('who is told at first', () => {
  test('whoever is on, each once, and why', () => {
    const on = [kim, { ...kim, kind: 'on-call' as const }, onCall];
    expect(tell('rota', { on })).toEqual({
      step: 1,
      whom: [
        { account: 'kim', why: 'on-site' },
        { account: 'lee', why: 'on-call' },
      ],
    });
  });

  test('the people named, on or not', () => {
    expect(tell(['lee'], {}).whom).toEqual([{ account: 'lee', why: 'named' }]);
  });

  test.each([
    ['nobody is on', [], 'nobody-on'],
    ['nobody who is on has an account', [{ person: 'sam', kind: 'on-site' as const }], 'no-account'],
  ] as const)('everyone of the last step at once where %s', (_, on, why) => {
    const { step, whom } = tell('rota', { on });
    expect(step).toBe(3);
    expect(whom).toEqual(LEADS.map((account) => ({ account, why })));
  });

  test('nobody, now or later, where nobody is to answer', () => {
    expect(tell('nobody', {})).toEqual({ step: 1, whom: [] });
  });

  test('the step that calls whoever is on in the other way, where nobody is on in the first', () => {
    const steps = [
      { whom: 'on-site', afterMin: 0 },
      { whom: 'on-call', afterMin: 5 },
      { whom: 'everyone', afterMin: 20 },
    ] as const;
    expect([tell('rota', { on: [onCall], steps }).step, names(tell('rota', { on: [onCall], steps }))]).toEqual([
      2,
      ['lee'],
    ]);
    expect([tell('rota', { on: [kim], steps }).step, names(tell('rota', { on: [kim], steps }))]).toEqual([1, ['kim']]);
  });
});

describe('who is told next', () => {
  const roster: Roster = { on: [kim], members: MEMBERS };
  const next = (step: number, more: Partial<Roster> = {}) => tellNext(step, { ...roster, ...more });

  test('leads, then everyone: whoever is on, leads and managers', () => {
    expect(next(1)).toEqual({ step: 2, whom: [{ account: 'lee', why: 'lead' }] });
    expect(next(2)).toEqual({
      step: 3,
      whom: [
        { account: 'kim', why: 'on-site' },
        { account: 'lee', why: 'lead' },
        { account: 'max', why: 'lead' },
      ],
    });
  });

  test('after the last step its people again, under a number of its own each time', () => {
    const { whom } = next(2);
    expect([next(3), next(4), next(9)]).toEqual([4, 5, 10].map((step) => ({ step, whom })));
    expect(next(4, { steps: [{ whom: 'lead', afterMin: 0 }] })).toMatchObject({ step: 5, whom: [{ account: 'lee' }] });
  });

  test('a step that finds nobody is passed over at once', () => {
    const members = MEMBERS.filter(({ account }) => account !== 'lee');
    expect(next(1, { members })).toMatchObject({ step: 3 });
  });

  test('whoever is above every site is told only where the site has nobody of its own', () => {
    const members = MEMBERS.filter(({ account }) => !LEADS.includes(account));
    expect(names(next(2, { members }))).toEqual(['kim', 'set-up']);
  });

  test('who sleeps is passed over while others can be told, unless they are on, and never by the last step', () => {
    const quiet = new Set(['lee', 'kim']);
    expect(next(1, { quiet }).step).toBe(3);
    expect(names(next(2, { quiet }))).toEqual(['kim', 'lee', 'max']);
    expect(names(next(1, { quiet, on: [onCall] }))).toEqual(['lee']);
    expect(names(tell('rota', { quiet, on: [kim] }))).toEqual(['kim']);
  });
});

describe('when a step is due', () => {
  test('by the steps of the site; what an alarm has for itself moves the second and those after it', () => {
    expect([1, 2, 3, 4].map((step) => dueAfterMin(USUAL_STEPS, step))).toEqual([0, 15, 30, null]);
    expect([1, 2, 3].map((step) => dueAfterMin(USUAL_STEPS, step, 5))).toEqual([0, 5, 20]);
  });

  test('the last one once more after a stated time, counted from when it was taken and not from when it was due', () => {
    const times = { calledMs: 0, atMs: 100 * 60_000 };
    expect([1, 2, 3, 4].map((step) => calledNextMs({}, step, times) / 60_000)).toEqual([15, 30, 115, 115]);
    expect(calledNextMs({ repeatCallsMin: 5 }, 3, times) / 60_000).toBe(105);
    expect(calledNextMs({ callSteps: [{ whom: 'on', afterMin: 0 }] }, 1, times) / 60_000).toBe(115);
    expect([3, 4].map((step) => isRepeat({}, step))).toEqual([false, true]);
  });

  test.each([
    ['22:00', '06:30', '23:59', true],
    ['22:00', '06:30', '06:29', true],
    ['22:00', '06:30', '06:30', false],
    ['22:00', '06:30', '21:59', false],
    ['13:00', '14:00', '13:00', true],
    ['13:00', '14:00', '14:00', false],
  ])('quiet hours from %s to %s hold at %s: %s', (from, to, time, quiet) => {
    expect(isQuiet({ from, to }, time)).toBe(quiet);
  });
});

describe('whether they were told', () => {
  const failed = (atS: number) => ({ atMs: atS * 1000, result: 'failed' as const });
  const taken = (atS: number) => ({ atMs: atS * 1000, result: 'taken' as const });

  test('a call is tried at once, then after 5, 15, 45 and 120 s, and every ten minutes from then on', () => {
    const attempts: ReturnType<typeof failed>[] = [];
    const at: number[] = [];
    for (let i = 0; i < 7; i++) {
      const next = nextAttempt(0, attempts);
      at.push((next ?? Number.NaN) / 1000);
      attempts.push(failed((next ?? 0) / 1000));
    }
    expect(at).toEqual([0, 5, 20, 65, 185, 785, 1385]);
  });

  test('it ends when a mail server took it, and stands as it stands until then', () => {
    expect(nextAttempt(0, [failed(0), taken(5)])).toBeNull();
    expect(callState([], false)).toBe('waiting');
    expect(callState([failed(0)], false)).toBe('failing');
    expect(callState([failed(0), taken(5)], false)).toBe('taken');
    expect(callState([{ atMs: 0, result: 'no-way' }], false)).toBe('no-way');
    expect(nextAttempt(0, [{ atMs: 0, result: 'no-way' }])).toBe(600_000);
  });

  test('whoever was not told before somebody acknowledged need not be, and nobody is waited for any more', () => {
    expect(callState([], true)).toBe('not-needed');
    expect(callState([failed(0)], true)).toBe('given-up');
    expect(callState([failed(0), taken(5)], true)).toBe('taken');
  });
});
