import { randomUUID } from 'node:crypto';
import type { Line } from './line';

const STATES = 'app/(house)/sites/[site]/states';
const system = { system: 'tank-1' };
/** Something that was done with a state that is nowhere: it gets past the question of rights, and is not found. */
const done = () => ({ form: { ...system, run: randomUUID(), entry: randomUUID(), note: 'to see' } });

const HANDOVER = 'app/(house)/sites/[site]/handover';
const nowhere = () => ({ form: { handover: randomUUID() } });

/** Entries about what follows a state. */
export const STATE_LINES: Readonly<Record<string, Line>> = {
  [`${STATES}/actions.ts lookAfterStateAction`]: { verb: 'set-state', given: done, comes: 'not-found' },
  [`${STATES}/actions.ts authoriseStateAction`]: { verb: 'authorise-state', given: done, comes: 'not-found' },
  [`${STATES}/actions.ts signSecondAction`]: {
    verb: 'walk',
    given: () => ({ form: { asked: randomUUID(), right: 'yes', note: 'to see' } }),
    comes: 'not-found',
  },
  [`${STATES}/actions.ts addNoticeAction`]: {
    verb: 'set-state',
    given: () => ({
      form: {
        ...{ system: 'no-system', entry: randomUUID(), kind: 'painting', what: 'the hall', todo: 'shut the intakes' },
        ...{ from: '2026-06-01T09:00', until: '2026-06-01T17:00' },
      },
    }),
    comes: 'not-found',
  },
  [`${STATES}/actions.ts endNoticeAction`]: {
    verb: 'set-state',
    given: () => ({ form: { notice: randomUUID() } }),
    comes: 'not-found',
  },
  [`${STATES}/[system]/[state]/page.tsx`]: { verb: 'see', given: () => ({ params: { ...system, state: 'feeding' } }) },
  [`${STATES}/actions.ts answerAskedAction`]: {
    verb: 'set-state',
    given: () => ({ form: { ...system, asked: randomUUID(), entry: randomUUID(), so: 'no' } }),
    comes: 'not-found',
  },
  [`${STATES}/actions.ts timeStateAction`]: {
    verb: 'describe',
    given: () => ({
      form: {
        ...{ system: 'no-system', entry: randomUUID(), state: 'feeding' },
        ...{ lastsMin: '10', schedule: '{"rule":"FREQ=DAILY","from":"2026-01-01","times":[{"at":"08:00"}]}' },
      },
    }),
    comes: 'not-found',
  },
  [`${STATES}/actions.ts endTimedAction`]: {
    verb: 'describe',
    given: () => ({ form: { ...system, timed: randomUUID() } }),
    comes: 'not-found',
  },
  [`${HANDOVER}/page.tsx`]: { verb: 'see' },
  [`${HANDOVER}/[handover]/page.tsx`]: {
    verb: 'see',
    given: () => ({ params: { handover: randomUUID() } }),
    comes: 'not-found',
  },
  [`${HANDOVER}/actions.ts giveHandoverAction`]: {
    verb: 'hand-over',
    given: () => ({ form: { entry: randomUUID(), print: '0'.repeat(64) } }),
    comes: 'conflict',
  },
  [`${HANDOVER}/actions.ts takeHandoverAction`]: { verb: 'hand-over', given: nowhere, comes: 'not-found' },
  [`${HANDOVER}/actions.ts takeHandoverHereAction`]: {
    verb: 'hand-over',
    given: () => ({
      form: { handover: randomUUID(), email: `${randomUUID()}@holdfast.example`, password: 'not the one of anybody' },
    }),
    comes: 'wrong-sign-in',
  },
  [`${HANDOVER}/actions.ts watchAnimalAction`]: {
    verb: 'hand-over',
    given: () => ({
      form: { entry: randomUUID(), system: 'no-system', what: 'the ray', why: 'off its food', days: '3' },
    }),
    comes: 'not-found',
  },
  [`${HANDOVER}/actions.ts endAnimalWatchAction`]: {
    verb: 'hand-over',
    given: () => ({ form: { watch: randomUUID(), note: 'eats' } }),
    comes: 'not-found',
  },
};
