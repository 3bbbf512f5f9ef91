import { describe, expect, test } from 'vitest';
import { overdueEverywhere } from '#core/rounds/everywhere';

const at = (key: string, late: number, missed: number) => ({ site: { key }, now: { checks: { late, missed } } });

describe('what is overdue at every system of a site', () => {
  test('is the least that any of them has, of late and of missed', () => {
    const overdue = overdueEverywhere([at('bay', 1, 2), at('bay', 0, 1), at('bay', 3, 1)]);
    expect(overdue.get('bay')).toEqual({ late: 0, missed: 1 });
  });

  test('is nothing where one of them has nothing, and of one site says nothing about another', () => {
    const overdue = overdueEverywhere([at('bay', 1, 1), at('bay', 0, 0), at('cove', 1, 0), at('cove', 1, 0)]);
    expect([...overdue]).toEqual([['cove', { late: 1, missed: 0 }]]);
  });

  test('is left to its row where a site has a single system', () => {
    expect(overdueEverywhere([at('bay', 1, 1)]).size).toBe(0);
  });
});
