import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fingerprint } from '../../app/_start/fingerprint.mjs';
import { temporaryFolder } from '../_support/temporary-folder';

test('a fingerprint changes with a name, a word or a new file, and with nothing that does not count', () => {
  const root = temporaryFolder();
  mkdirSync(join(root, 'app/_start'), { recursive: true });
  const write = (path: string, words: string) => writeFileSync(join(root, path), words);
  const print = () => fingerprint(root, ['app', 'missing.js'], (path) => !path.startsWith('app/_start/'));
  write('app/page.tsx', 'one');
  const first = print();
  expect(print()).toBe(first);
  write('app/_start/start.mjs', 'does not count');
  expect(print()).toBe(first);
  write('app/page.tsx', 'two');
  const second = print();
  expect(second).not.toBe(first);
  write('app/layout.tsx', '');
  expect(new Set([first, second, print()]).size).toBe(3);
});
