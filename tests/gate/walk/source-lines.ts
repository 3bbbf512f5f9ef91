import { randomUUID } from 'node:crypto';
import type { Line } from './line';

const SOURCES = 'app/(house)/sites/[site]/readings/sources';

/** Entries about who sends readings of a site, and the one that they send them to. */
export const SOURCE_LINES: Readonly<Record<string, Line>> = {
  [`${SOURCES}/page.tsx`]: { verb: 'reading-sources' },
  [`${SOURCES}/actions.ts makeSourceAction`]: { verb: 'reading-sources', given: () => ({ form: { name: 'Walked' } }) },
  [`${SOURCES}/actions.ts endSourceAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { source: randomUUID() } }),
    comes: 'not-found',
  },
  [`${SOURCES}/actions.ts makeBrokerAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { name: 'Walked', address: 'mqtt://127.0.0.1:1' } }),
  },
  [`${SOURCES}/actions.ts changeBrokerAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { source: randomUUID(), address: 'mqtt://127.0.0.1:1' } }),
    comes: 'not-found',
  },
  [`${SOURCES}/actions.ts addTopicAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { source: randomUUID(), topic: 'hall/#', payload: 'number' } }),
    comes: 'not-found',
  },
  [`${SOURCES}/actions.ts endTopicAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { topic: randomUUID() } }),
    comes: 'not-found',
  },
  [`${SOURCES}/actions.ts nameSensorAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { name: 'probe', sensor: randomUUID() } }),
    comes: 'invalid',
  },
  [`${SOURCES}/actions.ts unnameSensorAction`]: {
    verb: 'reading-sources',
    given: () => ({ form: { name: 'no name' } }),
    comes: 'not-found',
  },
  'app/api/readings/route.ts POST': {
    open: 'for devices, which show a token; whoever has none is told so',
    comes: 'not-signed-in',
  },
  'app/api/openapi.json/route.ts GET': { open: 'the published form of what machines may ask and send' },
};
