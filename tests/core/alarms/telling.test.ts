import { describe, expect, test } from 'vitest';
import { callState, nextAttempt } from '#core/alarms/told';
import { type Member, tellFirst, tellLeads } from '#core/alarms/to-tell';

const MEMBERS: Member[] = [
  { account: 'viewer', role: 'viewer', person: null },
  { account: 'kim', role: 'aquarist', person: 'kim' },
  { account: 'lee', role: 'lead', person: 'lee' },
  { account: 'max', role: 'manager', person: null },
  { account: 'set-up', role: 'admin', person: null, isElsewhere: true },
];
const LEADS = ['lee', 'max'];

describe('who is told at first', () => {
  test('whoever is on, each once, and why', () => {
    const on = [
      { person: 'kim', kind: 'on-site' as const },
      { person: 'kim', kind: 'on-call' as const },
      { person: 'lee', kind: 'on-call' as const },
    ];
    expect(tellFirst('rota', on, MEMBERS)).toEqual({
      step: 1,
      whom: [
        { account: 'kim', why: 'on-site' },
        { account: 'lee', why: 'on-call' },
      ],
      hasNext: true,
    });
  });

  test('the people named, on or not', () => {
    expect(tellFirst(['lee'], [], MEMBERS).whom).toEqual([{ account: 'lee', why: 'named' }]);
  });

  test.each([
    ['nobody is on', [], 'nobody-on'],
    ['nobody who is on has an account', [{ person: 'sam', kind: 'on-site' as const }], 'no-account'],
  ] as const)('leads and managers at once where %s', (_, on, why) => {
    const { step, whom, hasNext } = tellFirst('rota', on, MEMBERS);
    expect([step, hasNext]).toEqual([2, false]);
    expect(whom).toEqual(LEADS.map((account) => ({ account, why })));
  });

  test('nobody, now or later, where nobody is to answer', () => {
    expect(tellFirst('nobody', [], MEMBERS)).toEqual({ step: 1, whom: [], hasNext: false });
  });
});

describe('who is told next', () => {
  test('leads and above of the site; those of every site only where it has none of its own', () => {
    expect(tellLeads(MEMBERS).whom.map(({ account }) => account)).toEqual(LEADS);
    const few = MEMBERS.filter(({ account }) => !LEADS.includes(account));
    expect(tellLeads(few).whom.map(({ account }) => account)).toEqual(['set-up']);
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
