import { describe, expect, test } from 'vitest';
import { personFor } from '../../app/_start/postgres/person.mjs';

const root = {
  uid: () => 0,
  ownerOf: () => undefined,
  mayUnshare: () => true,
  account: (_: string) => undefined,
};

describe('PostgreSQL runs', () => {
  test('as whoever starts Holdfast, unless that is root', () => {
    expect(personFor('/data', { ...root, uid: () => 1000 })).toEqual({ wrapper: [], identity: undefined });
  });

  test('for root as nobody in a user namespace, without any account', () => {
    const { wrapper, identity } = personFor('/data', root);
    expect(wrapper.slice(0, 2)).toEqual(['unshare', '--user']);
    expect(identity).toBeUndefined();
  });

  test('for root as the owner of a database that somebody else made', () => {
    const owner = { uid: 1000, gid: 1000 };
    expect(personFor('/data', { ...root, ownerOf: () => owner })).toEqual({ wrapper: [], identity: owner });
  });

  test('for root without namespaces as postgres, else as nobody', () => {
    const numbers: Record<string, number> = { postgres: 101, nobody: 65534 };
    const known = (...names: string[]) => ({
      ...root,
      mayUnshare: () => false,
      account: (name: string) => (names.includes(name) ? { uid: numbers[name] ?? 0, gid: 1 } : undefined),
    });
    expect(personFor('/data', known('postgres', 'nobody')).identity?.uid).toBe(101);
    expect(personFor('/data', known('nobody')).identity?.uid).toBe(65534);
    expect(() => personFor('/data', known())).toThrow('may not run as root');
  });
});
