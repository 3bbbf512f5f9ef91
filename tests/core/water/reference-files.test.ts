import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { REFERENCES, reference } from './reference';

const names = readdirSync(REFERENCES)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.slice(0, -5));

test('there are published values to hold the laws to', () => {
  expect(names.length).toBeGreaterThan(12);
});

describe.each(names)('published values of %s', (name) => {
  const file = reference(name);

  test('each say where they were read, or that they are recalled', () => {
    for (const row of file.rows) {
      expect(['SEEN', 'RUN', 'MEMORY']).toContain(row.mark);
      expect(file.sources[row.source]?.title).toBeTruthy();
      expect(file.sources[row.source]?.address).toBeTruthy();
    }
  });

  test('each have one argument per name and a limit to how far the law may lie from them', () => {
    expect(file.law).toBe(name);
    for (const row of file.rows) {
      expect(row.at.length).toBe(file.arguments.length);
      expect((row.tolerance ?? row.within ?? 0) > 0).toBe(true);
    }
  });
});
