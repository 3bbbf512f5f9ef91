import { randomUUID } from 'node:crypto';
import type { Given, Line } from './line';

const ROUNDS = 'app/(house)/sites/[site]/rounds';
const SHEETS = `${ROUNDS}/sheets`;
const SHEET = {
  key: 'floor',
  name: 'Floor',
  schedule: { rule: 'FREQ=DAILY', from: '2026-01-01', times: [{ at: '08:00' }] },
  lines: [{ kind: 'text', key: 'note', what: 'Note' }],
};

/** A round that is nowhere: it gets past the question of rights, and is not found. */
const nowhere = () => ({ round: randomUUID() });
const of = (more: Given['params'] = {}) => ({ params: { ...nowhere(), ...more } });
const sent = (more: Given['form'] = {}) => ({ form: { ...nowhere(), ...more } });

/** Entries about the rounds of a site. */
export const ROUND_LINES: Readonly<Record<string, Line>> = {
  [`${ROUNDS}/page.tsx`]: { verb: 'see' },
  [`${SHEETS}/page.tsx`]: { verb: 'see' },
  [`${SHEETS}/[sheet]/page.tsx`]: { verb: 'see', given: () => ({ params: { sheet: 'none' } }), comes: 'not-found' },
  [`${SHEETS}/actions.ts startSheetsAction`]: {
    verb: 'describe',
    given: () => ({ form: { system: 'none' } }),
    comes: 'not-found',
  },
  [`${SHEETS}/actions.ts writeSheetAction`]: {
    verb: 'describe',
    given: () => ({ form: { body: JSON.stringify(SHEET) } }),
  },
  [`${SHEETS}/actions.ts putSheetsAction`]: {
    verb: 'describe',
    given: () => ({ form: { sheets: 'none' } }),
    comes: 'not-found',
  },
  [`${SHEETS}/actions.ts dropSheetDraftAction`]: {
    verb: 'describe',
    given: () => ({ form: { sheet: 'none' } }),
    comes: 'not-found',
  },
  [`${SHEETS}/actions.ts retireSheetAction`]: {
    verb: 'describe',
    given: () => ({ form: { sheet: 'none', why: 'no longer needed' } }),
    comes: 'not-found',
  },
  [`${ROUNDS}/[round]/page.tsx`]: { verb: 'see', given: () => of(), comes: 'not-found' },
  [`${ROUNDS}/[round]/[place]/page.tsx`]: { verb: 'see', given: () => of({ place: '1' }), comes: 'not-found' },
  [`${ROUNDS}/actions.ts beginRoundAction`]: {
    verb: 'walk',
    given: () => ({ form: { slot: 'morning', due: '2020-01-01T00:01:00.000Z' } }),
    comes: 'not-found',
  },
  [`${ROUNDS}/actions.ts beginBesidesAction`]: {
    verb: 'walk',
    given: () => ({ form: { slot: 'morning', entry: randomUUID() } }),
  },
  [`${ROUNDS}/actions.ts enterAction`]: {
    verb: 'walk',
    given: () => sent({ check: 'tank-1/system/floor', entry: randomUUID(), seen: 'usual' }),
    comes: 'not-found',
  },
  [`${ROUNDS}/actions.ts enterRestAction`]: { verb: 'walk', given: () => sent({ place: '1' }), comes: 'not-found' },
  // What is no picture: whoever may take photos is told so, and nobody else is.
  [`${ROUNDS}/actions.ts addPhotoAction`]: {
    verb: 'walk',
    given: () => {
      const picture = new File(['no picture'], 'pump.jpg');
      return sent({ check: 'tank-1/system/floor', entry: randomUUID(), photo: randomUUID(), first: 'yes', picture });
    },
    comes: 'invalid',
  },
  [`${ROUNDS}/actions.ts signRoundAction`]: { verb: 'walk', given: () => sent(), comes: 'not-found' },
  [`${ROUNDS}/labels/page.tsx`]: { verb: 'see' },
  'app/api/rounds/[site]/route.ts GET': { verb: 'walk' },
  'app/api/rounds/[site]/route.ts POST': {
    verb: 'walk',
    given: () => ({ body: { account: 'nobody', sentAt: '2026-11-25T08:00:00.000Z', items: [] } }),
    // Entries of somebody who is not signed in are taken from nobody.
    comes: 'conflict',
  },
  'app/api/rounds/[site]/photos/[photo]/route.ts GET': {
    verb: 'see',
    given: () => ({ params: { photo: randomUUID() } }),
    comes: 'not-found',
  },
  'app/api/rounds/[site]/photos/[photo]/route.ts PUT': {
    verb: 'walk',
    given: () => ({
      params: { photo: randomUUID() },
      search: { entry: randomUUID(), takenAt: '2026-11-25T08:00:00.000Z' },
      body: { no: 'picture' },
    }),
    comes: 'invalid',
  },
  [`${ROUNDS}/actions.ts takeBackAction`]: {
    verb: 'walk',
    given: () => ({ form: { what: 'state-look', about: randomUUID(), reason: 'to see' } }),
    comes: 'not-found',
  },
  [`${ROUNDS}/actions.ts lookAgainAction`]: { verb: 'second-look', given: () => sent(), comes: 'not-found' },
};
