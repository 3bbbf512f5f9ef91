import { expect, test } from 'vitest';
import { lastFor } from '#core/last-for';

test('what follows from the same owner and causes is made once, and anew with every other', () => {
  const of = lastFor<string>();
  const [owner, other, list] = [{}, {}, [1]];
  const made: string[] = [];
  const ask = (one: object, ...causes: unknown[]) => of(one, causes, () => String(made.push('one')));
  expect([ask(owner, 'a', list), ask(owner, 'a', list)]).toEqual(['1', '1']);
  expect(ask(other, 'a', list)).toBe('2');
  expect(ask(owner, 'a', list)).toBe('1');
  // A list that reads alike is another cause, and so is one cause fewer.
  expect([ask(owner, 'a', [1]), ask(owner, 'a')]).toEqual(['3', '4']);
  expect([ask(owner, NaN), ask(owner, NaN), ask(owner, 0), ask(owner, -0)]).toEqual(['5', '5', '6', '7']);
});

test('two memories know nothing of each other', () => {
  const owner = {};
  expect(lastFor<number>()(owner, [], () => 1)).toBe(1);
  expect(lastFor<number>()(owner, [], () => 2)).toBe(2);
});
