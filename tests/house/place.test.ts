import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { listFiles, ROOT, readText } from './inspect/files';
import { inDrawers, misspelt, placesNamed, strangers } from './inspect/place';

/** Folders that are ours; a hidden one that is not named here belongs to a tool. */
const FOLDERS = ['app', 'tests', 'e2e', 'seed', 'prisma', '.config', '.ci', '.github'].filter((name) =>
  existsSync(join(ROOT, name)),
);
const OURS = [...listFiles(FOLDERS), ...readdirSync(ROOT).filter((name) => statSync(join(ROOT, name)).isFile())];
/** Names we may choose: not those at the top, nor those a migration gets from its tool. */
const CHOSEN = OURS.filter((path) => path.includes('/') && !path.startsWith('prisma/migrations/'));
const TEXT = /\.(ts|tsx|mjs|cjs|js|json|css|md|sql|prisma|yaml|yml|grit|txt|svg)$|\/[^.]+$/;

describe('everything has its place', () => {
  test('the top of the tree holds the names agreed on and no other', () => {
    expect(strangers(readdirSync(ROOT))).toEqual([]);
    expect(strangers(['app', '.config', 'README.md', 'node_modules', 'lib'])).toEqual(['lib']);
  });

  test('no file lies in a drawer for everything', () => {
    expect(OURS.length).toBeGreaterThan(50);
    expect(inDrawers(OURS)).toEqual([]);
    expect(inDrawers(['app/_core/water/density.ts', 'app/src/a.ts', 'app/_ui/utils.ts'])).toEqual([
      'app/src/a.ts',
      'app/_ui/utils.ts',
    ]);
  });

  test('names are written small, with hyphens', () => {
    expect(misspelt(CHOSEN)).toEqual([]);
    const names = ['app/(house)/systems/[key]/page.tsx', 'app/_core/a/drain-down.ts', 'app/_core/returnPump.ts'];
    expect(misspelt(names)).toEqual(['app/_core/returnPump.ts']);
  });
});

describe('the tree belongs to no machine', () => {
  test('no file names a path of one machine or the host of a registry', () => {
    const texts = [...OURS, ...listFiles(['.']).filter((path) => !path.includes('/'))].filter((path) =>
      TEXT.test(path),
    );
    expect(texts.length).toBeGreaterThan(50);
    expect(texts.flatMap((path) => placesNamed(readText(path)).map((line) => `${path}:${line}`))).toEqual([]);
  });

  test('a path or a host that is named is seen', () => {
    const seen = (...parts: string[]): number => placesNamed(parts.join('')).length;
    expect(seen("const at = '", '/ho', "me/anna/holdfast';")).toBe(1);
    expect(seen('cd /ro', 'ot/holdfast')).toBe(1);
    expect(seen('"resolved": "https://regis', 'try.example.org/zod"')).toBe(1);
    expect(seen("const at = join(tmpdir(), 'holdfast');")).toBe(0);
    expect(seen("page.goto('/systems/harbour')")).toBe(0);
  });

  test('the lock file pins every package and names no place to fetch it from', () => {
    const { packages } = JSON.parse(readText('package-lock.json'));
    const entries: [string, { resolved?: string; version?: string }][] = Object.entries(packages);
    expect(entries.length).toBeGreaterThan(100);
    expect(entries.filter(([, entry]) => entry.resolved !== undefined).map(([name]) => name)).toEqual([]);
    expect(entries.filter(([, entry]) => !entry.version).map(([name]) => name)).toEqual([]);
  });

  test('package.json asks for one exact version of each package', () => {
    const { dependencies, devDependencies } = JSON.parse(readText('package.json'));
    const asked: [string, string][] = Object.entries({ ...dependencies, ...devDependencies });
    expect(asked.length).toBeGreaterThan(10);
    expect(asked.filter(([, version]) => !/^(npm:[@\w./-]+@)?\d+\.\d+\.\d+(-[\w.-]+)?$/.test(version))).toEqual([]);
  });
});
