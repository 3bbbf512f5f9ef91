import { type Plant, plant, prop } from './plant';

const imports = (rule: string, file: string, from: string): Plant => plant(rule, file, `export * from '${from}';`);

const rooms = [
  imports('core-stands-alone', 'app/_core/breach/outside-node.ts', 'node:fs'),
  imports('core-stands-alone', 'app/_core/breach/outside-package.ts', 'zod'),
  imports('core-stands-alone', 'app/_core/breach/outside-shape.ts', '#shape/system'),
  plant(
    'core-stands-alone',
    'app/_core/breach/outside-kind.ts',
    "export type Value = import('#shape/system').SystemInput;",
  ),
  imports('core-time-knows-two-packages', 'app/_core/time/breach-package.ts', 'zod'),
  imports('shape-knows-core-zod-and-yaml', 'app/_shape/breach-data.ts', '#data/systems'),
  imports('shape-knows-core-zod-and-yaml', 'app/_shape/breach-node.ts', 'node:fs'),
  imports('data-knows-core-and-shape', 'app/_data/breach-server.ts', '#server/clock'),
  imports('data-knows-no-web', 'app/_data/breach-web.ts', 'next/headers'),
  imports('prisma-in-data-only', 'app/_server/breach-prisma.ts', '../../prisma/generated/client'),
  imports('prisma-in-data-only', 'app/breach-driver.ts', 'pg'),
  imports('generated-client-in-data-only', 'tests/core/breach-prisma.ts', '../../prisma/generated/client'),
  imports('server-knows-no-looks', 'app/_server/breach-ui.ts', '#ui/frame'),
  imports('server-knows-little-of-the-web', 'app/_server/breach-react.ts', 'react'),
  imports('sign-in-alone-knows-next-auth', 'app/_server/breach-session.ts', 'next-auth'),
  imports('ui-knows-core-only', 'app/_ui/breach-data.tsx', '#data/systems'),
  imports('ui-knows-core-only', 'app/_ui/breach-shape.tsx', '#shape/system'),
  imports('ui-fetches-nothing', 'app/_ui/breach-fetch.tsx', 'next/headers'),
  imports('links-are-ours', 'app/_ui/breach-link.tsx', 'next/link'),
  imports('ui-knows-no-machine', 'app/_ui/breach-node.tsx', 'node:fs'),
];

const routes = [
  imports('routes-call-use-cases', 'app/systems/breach-data.ts', '#data/systems'),
  imports('routes-parse-with-shapes', 'app/systems/breach-zod.ts', 'zod'),
  imports('routes-know-no-machine', 'app/systems/breach-node.ts', 'node:fs'),
  plant(
    'client-reaches-no-server',
    'app/systems/breach-client.tsx',
    "'use client';",
    "import { list } from '#server/systems/list';",
    'export const Value = () => <p onClick={() => list()}>List</p>;',
  ),
];

const outside = [
  imports('start-uses-node-alone', 'app/_start/breach-package.mjs', 'zod'),
  imports('start-uses-node-alone', 'app/_start/breach-server.mjs', '#server/clock'),
  imports('nobody-imports-the-starter', 'app/_server/breach-start.ts', '../_start/start.mjs'),
  imports('seed-goes-through-server', 'seed/breach-room.ts', '#data/systems'),
  imports('seed-knows-no-web', 'seed/breach-web.ts', 'react'),
  imports('e2e-knows-nothing-of-app', 'e2e/breach-core.ts', '#core/time/day'),
  imports('app-knows-no-tests', 'app/_server/breach-tests.ts', '../../tests/_support/empty'),
];

const everywhere = [
  imports('rooms-are-entered-by-their-door', 'app/_server/breach-relative.ts', '../_core/time/day'),
  imports('routes-enter-rooms-by-their-door', 'app/systems/breach-door.ts', '../_ui/frame'),
  imports('rooms-are-entered-by-their-door', 'tests/core/breach-door.ts', '../../app/_core/time/day'),
  plant(
    'no-cycle',
    'app/_core/breach/egg.ts',
    "import { hen } from './hen';",
    'export const egg = (): number => hen();',
  ),
  plant('no-orphan', 'app/_core/breach/orphan.ts', 'export const value = 1;'),
  imports('no-missing-file', 'app/_core/breach/nowhere.ts', './nothing-here'),
  imports('no-undeclared-package', 'app/_server/breach-undeclared.ts', 'semver'),
  imports('product-uses-no-test-package', 'app/_server/breach-test-package.ts', 'vitest'),
];

/** Every breach that dependency-cruiser must catch. */
export const CRUISER_PLANTS: Plant[] = [...rooms, ...routes, ...outside, ...everywhere];

/** The other half of the cycle; and what must not be caught: types that need each other vanish before anything runs. */
export const CRUISER_PROPS = [
  prop('app/_core/breach/hen.ts', "import { egg } from './egg';", 'export const hen = (): number => egg();'),
  prop('app/_core/breach/left.ts', "import type { Right } from './right';", 'export type Left = Right | 1;'),
  prop('app/_core/breach/right.ts', "import type { Left } from './left';", 'export type Right = Left[] | 2;'),
];
