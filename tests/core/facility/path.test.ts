import { fieldOf, formatPath } from '#core/facility/path';
import { describe, expect, test } from 'vitest';

describe('a path', () => {
  test('is written with dots before fields and brackets around list positions', () => {
    expect(formatPath(['systems', 2, 'equipment', 0, 'plan', 'regulation', 'lowC'])).toBe(
      'systems[2].equipment[0].plan.regulation.lowC',
    );
  });

  test('of the whole file is empty', () => {
    expect(formatPath([])).toBe('');
    expect(fieldOf([])).toBe('the file');
  });

  test('ends in its last field, with the list positions after it', () => {
    expect(fieldOf(['systems', 2, 'room'])).toBe('room');
    expect(fieldOf(['shifts', 0, 'people', 1])).toBe('people[1]');
  });
});
