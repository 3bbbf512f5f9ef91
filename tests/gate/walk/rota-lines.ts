import { randomUUID } from 'node:crypto';
import type { Line } from './line';

const STATES = 'app/(house)/sites/[site]/states';
const ROTA = 'app/(house)/sites/[site]/rota';
const system = { system: 'tank-1' };

/** Entries about the states systems are in, and about who is on. */
export const ROTA_LINES: Readonly<Record<string, Line>> = {
  'app/api/systems/route.ts GET': { own: 'the systems of the sites one may see' },
  [`${ROTA}/page.tsx`]: { verb: 'see' },
  [`${ROTA}/week/page.tsx`]: { verb: 'see' },
  [`${ROTA}/changes/page.tsx`]: { verb: 'see' },
  [`${ROTA}/changes/actions.ts askLeaveAction`]: {
    verb: 'approve-duty',
    given: () => ({
      form: { entry: randomUUID(), person: 'no-person', from: '2099-01-01T00:00', to: '2099-01-02T00:00' },
    }),
    comes: 'not-found',
  },
  [`${ROTA}/changes/actions.ts askSwapAction`]: {
    verb: 'approve-duty',
    given: () => ({ form: { entry: randomUUID(), turn: '2099-01-01/no-shift/no-person', takes: 'no-person' } }),
    comes: 'not-found',
  },
  [`${ROTA}/changes/actions.ts answerChangeAction`]: {
    verb: 'change-duty',
    given: () => ({ form: { change: randomUUID(), comes: 'agreed' } }),
    comes: 'not-found',
  },
  [`${ROTA}/cover/page.tsx`]: { verb: 'see' },
  [`${ROTA}/actions.ts makeFeedAction`]: { verb: 'see', given: () => ({ form: { scope: 'everybody' } }) },
  [`${ROTA}/actions.ts endFeedAction`]: {
    verb: 'see',
    given: () => ({ form: { feed: randomUUID() } }),
    comes: 'not-found',
  },
  'app/api/rota/[token]/route.ts GET': {
    open: 'whoever has the link; any other word leads nowhere',
    given: () => ({ params: { token: `${randomUUID()}.${'x'.repeat(43)}.ics` } }),
    comes: 'not-found',
  },
  [`${STATES}/page.tsx`]: { verb: 'see' },
  [`${STATES}/[system]/page.tsx`]: { verb: 'see', given: () => ({ params: system }) },
  [`${STATES}/actions.ts beginStateAction`]: {
    verb: 'set-state',
    given: () => ({
      form: { system: 'no-system', entry: randomUUID(), state: 'night', lasts: '1', unit: 'days' },
    }),
    comes: 'not-found',
  },
  [`${STATES}/actions.ts putOffStateAction`]: {
    verb: 'set-state',
    given: () => ({
      form: { ...system, run: randomUUID(), entry: randomUUID(), lasts: '1', unit: 'days', note: 'to see' },
    }),
    comes: 'not-found',
  },
  [`${STATES}/actions.ts endStateAction`]: {
    verb: 'set-state',
    given: () => ({ form: { ...system, run: randomUUID(), entry: randomUUID(), note: 'to see' } }),
    comes: 'not-found',
  },
};
