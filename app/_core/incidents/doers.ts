import type { Doer } from './timeline';

/**
 * What to call those who did something where no names are wanted: by their role, and numbered where several have the same.
 *
 * @param doers   in the order in which they first appear; numbers follow it
 * @returns       a word for each name
 */
export function namesApart(doers: readonly Doer[]): ReadonlyMap<string, string> {
  const first = new Map(doers.map(({ name, role }) => [name, role ?? 'somebody']).reverse() as [string, string][]);
  const inOrder = [...new Set(doers.map(({ name }) => name))].map((name) => [name, first.get(name) ?? ''] as const);
  const count = new Map<string, number>();
  for (const [, role] of inOrder) count.set(role, (count.get(role) ?? 0) + 1);
  const seen = new Map<string, number>();
  return new Map(
    inOrder.map(([name, role]) => {
      const number = (seen.get(role) ?? 0) + 1;
      seen.set(role, number);
      return [name, count.get(role) === 1 ? role : `${role} ${number}`];
    }),
  );
}
