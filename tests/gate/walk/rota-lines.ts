import { randomUUID } from 'node:crypto';
import type { Line } from './line';

const STATES = 'app/(house)/sites/[site]/states';
const system = { system: 'tank-1' };

/** Entries about the states systems are in, and about who is on. */
export const ROTA_LINES: Readonly<Record<string, Line>> = {
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
