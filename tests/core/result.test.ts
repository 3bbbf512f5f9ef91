import { expect, test } from 'vitest';
import { invariant, ok, type Result, refused } from '#core/result';

function half(n: number): Result<number, 'odd'> {
  return n % 2 === 0 ? ok(n / 2) : refused('odd');
}

test('an answer carries its value, a refusal its reason', () => {
  expect(half(4)).toEqual({ ok: true, value: 2 });
  expect(half(3)).toEqual({ ok: false, reason: 'odd' });
});

test('what we take for granted breaks with its sentence when it is not so', () => {
  expect(() => invariant(1 + 1 === 2, 'sums hold')).not.toThrow();
  expect(() => invariant(1 + 1 === 3, 'a sum must hold')).toThrow('a sum must hold');
});
