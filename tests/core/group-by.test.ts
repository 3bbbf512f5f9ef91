import { groupBy } from '#core/group-by';
import fc from 'fast-check';
import { expect, test } from 'vitest';

test('a group holds what has its key, all of it, in the order given', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(9)), (numbers) => {
      const groups = groupBy(numbers.entries(), ([, number]) => number % 3);
      for (const [key, group] of groups)
        expect(group).toEqual([...numbers.entries()].filter(([, number]) => number % 3 === key));
      expect([...groups.values()].flat()).toHaveLength(numbers.length);
    }),
  );
});

// Copied each time it would be twenty thousand million elements, which takes longer than any test is given.
test('a group of two hundred thousand is made at once: adding to it does not copy it', () => {
  expect(groupBy(Array(200_000).keys(), () => 'one').get('one')).toHaveLength(200_000);
});
