import { expect, test } from 'vitest';
import { coursesOnce } from '#server/reviews/courses-kept';

test('courses are computed once for what they follow from, and anew for anything else or after many others', () => {
  let computed = 0;
  const compute = () => {
    computed += 1;
    return {};
  };
  const first = coursesOnce('a', compute);
  expect(coursesOnce('a', compute)).toBe(first);
  expect(computed).toBe(1);
  for (let other = 0; other < 30; other++) coursesOnce(`other ${other}`, compute);
  expect(computed).toBe(31);
  expect(coursesOnce('a', compute)).not.toBe(first);
});
