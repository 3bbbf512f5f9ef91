import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The top of the tree, as an absolute path. */
export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** Folders a tool writes, at any depth; nothing in them is ours. */
const GENERATED = new Set([
  'node_modules',
  '.next',
  '.data',
  '.git',
  'generated',
  'test-results',
  'playwright-report',
  'coverage',
]);

/**
 * Files below some folders of the tree, generated ones left out.
 *
 * @param folders  names relative to the top; '.' for the whole tree
 * @param ending   what the name must end in, for example /\.tsx?$/
 * @returns        paths relative to the top, with forward slashes, in order of the alphabet
 */
export function listFiles(folders: string[], ending = /./): string[] {
  const found: string[] = [];
  const walk = (folder: string): void => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const path = join(folder, entry.name);
      if (entry.isDirectory() && !GENERATED.has(entry.name)) walk(path);
      else if (entry.isFile() && ending.test(entry.name)) found.push(relative(ROOT, path).split(sep).join('/'));
    }
  };
  for (const folder of folders) walk(join(ROOT, folder));
  return found.sort();
}

/** The code we write, in the four folders that hold it and in the front of the schema engine. */
export const listCode = (): string[] => listFiles(['app', 'tests', 'e2e', 'seed', 'prisma'], /\.(ts|tsx|mjs)$/);

/** Text of one file, by its path from the top. */
export const readText = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
