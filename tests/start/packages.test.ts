import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { packagesMatch } from '../../app/_start/packages.mjs';
import { ROOT } from '../../app/_start/places.mjs';
import { temporaryFolder } from '../_support/temporary-folder';

const root = temporaryFolder();
const LOCKED = {
  '': { name: 'holdfast' },
  'node_modules/one': { version: '1.0.0' },
  'node_modules/two': { version: '2.0.0', dev: true },
  'node_modules/elsewhere': { version: '3.0.0', optional: true },
};

function lock(path: string, packages: object): void {
  writeFileSync(join(root, path), JSON.stringify({ packages }));
}

/** A whole install: the lock file, npm's record of it, and the packages for this machine. */
beforeEach(() => {
  rmSync(join(root, 'node_modules'), { recursive: true, force: true });
  for (const name of ['one', 'two']) {
    mkdirSync(join(root, 'node_modules', name), { recursive: true });
    writeFileSync(join(root, 'node_modules', name, 'package.json'), '{}');
  }
  lock('package-lock.json', LOCKED);
  const { '': _, 'node_modules/elsewhere': __, ...installed } = LOCKED;
  lock('node_modules/.package-lock.json', installed);
});

describe('what is installed', () => {
  test('matches the lock file after an install, whoever ran it', () => {
    expect(packagesMatch(root)).toBe(true);
    expect(packagesMatch(ROOT)).toBe(true);
  });

  test('does not match when nothing is installed, or an install was broken off', () => {
    rmSync(join(root, 'node_modules/.package-lock.json'));
    expect(packagesMatch(root)).toBe(false);
  });

  test('does not match when the lock file names another version', () => {
    lock('package-lock.json', { ...LOCKED, 'node_modules/one': { version: '1.0.1' } });
    expect(packagesMatch(root)).toBe(false);
  });

  test('does not match when the lock file names a package more', () => {
    lock('package-lock.json', { ...LOCKED, 'node_modules/three': { version: '1.0.0' } });
    expect(packagesMatch(root)).toBe(false);
  });

  test('does not match when a package was taken away by hand', () => {
    rmSync(join(root, 'node_modules/two'), { recursive: true });
    expect(packagesMatch(root)).toBe(false);
  });
});
