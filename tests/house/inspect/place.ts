/** What may stand at the top of the tree, besides names that begin with a dot. */
const TOP = new Set([
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'next.config.js',
  // Next demands it here.
  'proxy.ts',
  'app',
  'prisma',
  'tests',
  'e2e',
  'seed',
]);
/** Written by tools and never committed. */
const WRITTEN = new Set(['node_modules', 'next-env.d.ts', 'test-results', 'playwright-report', 'coverage']);
const DRAWERS = new Set([
  'lib',
  'libs',
  'src',
  'docs',
  'doc',
  'scripts',
  'tools',
  'util',
  'utils',
  'helpers',
  'common',
  'misc',
]);

/** Names at the top that nobody allowed. */
export const strangers = (names: string[]): string[] =>
  names.filter(
    (name) => !name.startsWith('.') && !name.endsWith('.tsbuildinfo') && !TOP.has(name) && !WRITTEN.has(name),
  );

/** Files that lie in a folder, or bear a name, that says nothing about what is in it. */
export const inDrawers = (paths: string[]): string[] =>
  paths.filter((path) => path.split('/').some((part) => DRAWERS.has(part.replace(/\.[^.]*$/, ''))));

/** Files and folders of code whose names are not written small with hyphens. Tools demand a few others. */
export const misspelt = (paths: string[]): string[] =>
  paths.filter((path) =>
    path
      .split('/')
      .some((part) => !/^[_.]?(\[[.a-z-]+\]|\([a-z-]+\)|[a-z0-9]+(-[a-z0-9]+)*)(\.[a-z0-9-]+)*$/.test(part)),
  );

// In pieces, so that this file holds none of what it looks for.
const HOMES = ['ro:ot', 'ho:me/[a-z]', 'Us:ers/[A-Za-z]', 'wo:rk/[a-z]', 't:mp/[a-z]'].map((name) =>
  name.replace(':', ''),
);
const MACHINE = new RegExp(`(^|[\\s"'\`(=:])/(${HOMES.join('|')})|[A-Z]:\\\\\\\\?(${HOMES[2]})`);
const HOST = 'regis:try'.replace(':', '');
const REGISTRY = new RegExp(`${HOST}\\.[a-z]|https?://[^\\s"']*${HOST}`);

/** Lines of a text that name a path of one machine, or the host of a registry; numbers from 1. */
export const placesNamed = (text: string): number[] =>
  text.split('\n').flatMap((line, at) => (MACHINE.test(line) || REGISTRY.test(line) ? [at + 1] : []));
