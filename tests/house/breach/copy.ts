import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { listFiles, ROOT, readText } from '../inspect/files';

const SKELETON = 'tests/house/skeleton/';

/** What the checkers read of the real tree, so that it is the real walls that are tried. */
const REAL = [
  '.config/biome.json',
  '.config/clock.grit',
  '.config/eslint.config.mjs',
  '.config/dependency-cruiser.cjs',
  '.config/knip.json',
  'tsconfig.json',
  'app/_core/tsconfig.json',
];

/** Packages the skeleton leans on; others would be reported as unused. */
const PACKAGES =
  /^(next|react|react-dom|server-only|zod|typescript|vitest|eslint|typescript-eslint|knip)$|^@types\/(node|react|react-dom)$|^@playwright/;

/** A file planted into a copy. */
export interface Planted {
  file: string;
  text: string;
}

/**
 * A small house of its own outside the tree: the skeleton under the real configuration, and what is planted on top.
 *
 * @param planted   files to add, by path from the top; no two at the same place
 * @param packages  further dependencies to claim in package.json
 * @returns         its folder, to be given to `removeCopy`
 */
export function buildCopy(planted: Planted[], packages: Record<string, string> = {}): string {
  const twice = planted.filter(({ file }, at) => planted.findIndex((other) => other.file === file) !== at);
  if (twice.length > 0) throw new Error(`Two files are planted at ${twice.map(({ file }) => file).join(' and ')}.`);
  const top = mkdtempSync(join(tmpdir(), 'holdfast-walls-'));
  const write = (file: string, text: string): void => {
    mkdirSync(dirname(join(top, file)), { recursive: true });
    writeFileSync(join(top, file), text);
  };
  for (const path of listFiles([SKELETON, `${SKELETON}prisma/generated`])) {
    write(path.slice(SKELETON.length).replace(/\.txt$/, ''), readText(path));
  }
  for (const path of REAL) {
    mkdirSync(dirname(join(top, path)), { recursive: true });
    cpSync(join(ROOT, path), join(top, path));
  }
  write('package.json', packageJson(packages));
  for (const { file, text } of planted) write(file, text);
  symlinkSync(join(ROOT, 'node_modules'), join(top, 'node_modules'), 'dir');
  return top;
}

/** Deletes a copy, if one was made; the link to the packages goes, the packages stay. */
export function removeCopy(top: string): void {
  if (top !== '') rmSync(top, { recursive: true, force: true });
}

function packageJson(packages: Record<string, string>): string {
  const real = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const kept = (all: Record<string, string>): Record<string, string> =>
    Object.fromEntries(Object.entries(all).filter(([name]) => PACKAGES.test(name)));
  const { name, version, engines, imports } = real;
  const dependencies = { ...kept(real.dependencies), ...packages };
  const own = { name, version, private: true, engines, imports, dependencies };
  return `${JSON.stringify({ ...own, devDependencies: kept(real.devDependencies) }, null, 2)}\n`;
}
