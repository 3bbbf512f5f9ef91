import { randomUUID } from 'node:crypto';
import type { Given, Line, Maker, WalkSite } from './line';

const SITE = 'app/(house)/sites/[site]';
const PLANS = `${SITE}/plans/actions.ts`;
const PEOPLE = `${SITE}/people/actions.ts`;
const DESCRIBE = `${SITE}/describe`;
const CALIBRATION = `${SITE}/systems/[system]/calibration`;
const START = `${SITE}/systems/new`;
const SAFEGUARD = `${SITE}/safeguards/[system]/[safeguard]`;

const system = { system: 'tank-1' };
const piece = { ...system, equipment: 'heater-1' };
const room = { noun: 'room', system: '-', key: 'gallery' };
const watch = { system: '-', safeguard: 'outside-watch' };
const units = { units: 'metric' };
/** A form into which nothing was typed. */
const empty = { draft: '{}', shown: '{}' };

const of = (params: Given['params']) => () => ({ params });
const sent = (form: Given['form']) => () => ({ form });
const someone = async (who: Promise<string>, more = {}): Promise<Given> => ({ form: { account: await who, ...more } });
const withMember = async (site: WalkSite, { member }: Maker) => await someone(member(site));
/** The first version of a plan, which is in force: nothing can be done with it any more. */
const version = sent({ ...piece, version: '1', inForce: '1', reason: 'to see' });

/** Entries about one site. */
export const SITE_LINES: Readonly<Record<string, Line>> = {
  // It tells the name of the site to those who may see it, and nothing to others: the page below it answers them.
  [`${SITE}/layout.tsx`]: { open: 'the way to the pages of a site, for those who may see it' },
  [`${SITE}/page.tsx`]: { verb: 'see' },
  [`${SITE}/systems/[system]/page.tsx`]: { verb: 'see', given: of(system) },
  [`${SITE}/systems/[system]/cases/[case]/page.tsx`]: {
    verb: 'see',
    given: of({ ...system, case: 'heater-on:heater-1:normal' }),
  },
  [`${SITE}/systems/[system]/alarms/page.tsx`]: { verb: 'see', given: of(system) },
  [`${SITE}/systems/[system]/review/page.tsx`]: { verb: 'see', given: of(system) },
  [`${SITE}/systems/[system]/review/difference/page.tsx`]: { verb: 'see', given: of(system) },
  [`${CALIBRATION}/page.tsx`]: { verb: 'see', given: of(system) },
  // Without readings nothing is found, so nothing can be taken over.
  [`${CALIBRATION}/actions.ts previewCalibrationAction`]: { verb: 'describe', given: found, comes: 'conflict' },
  [`${CALIBRATION}/actions.ts reviewCalibrationAction`]: { verb: 'describe', given: found, comes: 'conflict' },
  [`${CALIBRATION}/actions.ts keepCalibrationAction`]: { verb: 'describe', given: found, comes: 'conflict' },
  [`${START}/page.tsx`]: { verb: 'describe' },
  [`${START}/actions.ts previewStartAction`]: {
    verb: 'describe',
    given: sent({ ...units, draft: '{}' }),
    comes: 'invalid',
  },
  [`${START}/actions.ts keepStartAction`]: {
    verb: 'describe',
    given: sent({ ...units, draft: '{}', basedOn: '9999' }),
    comes: 'conflict',
  },
  [`${DESCRIBE}/page.tsx`]: { verb: 'see' },
  [`${DESCRIBE}/[noun]/[system]/[key]/page.tsx`]: { verb: 'see', given: of(room) },
  [`${DESCRIBE}/[noun]/[system]/[key]/[act]/page.tsx`]: { verb: 'see', given: of({ ...room, act: 'retire' }) },
  [`${DESCRIBE}/new/[noun]/[system]/page.tsx`]: { verb: 'describe', given: of({ noun: 'room', system: '-' }) },
  [`${DESCRIBE}/actions.ts previewChangeAction`]: { verb: 'describe', given: change },
  [`${DESCRIBE}/actions.ts reviewChangeAction`]: { verb: 'describe', given: change },
  [`${DESCRIBE}/actions.ts keepChangeAction`]: { verb: 'describe', given: change, comes: 'conflict' },
  [`${SITE}/plans/page.tsx`]: { verb: 'see' },
  [`${SITE}/plans/[system]/page.tsx`]: { verb: 'see', given: of(system) },
  [`${SITE}/plans/[system]/[equipment]/page.tsx`]: { verb: 'see', given: of(piece) },
  [`${SITE}/plans/[system]/[equipment]/write/page.tsx`]: { verb: 'write-plan', given: of(piece) },
  [`${PLANS} writeTypedPlanAction`]: {
    verb: 'write-plan',
    given: sent({ ...piece, ...units, draft: '{}', reason: 'to see', from: '1', latest: '0' }),
    comes: 'invalid',
  },
  [`${PLANS} submitPlanAction`]: { verb: 'write-plan', given: version, comes: 'conflict' },
  [`${PLANS} withdrawPlanAction`]: { verb: 'write-plan', given: version, comes: 'conflict' },
  [`${PLANS} putPlanInForceAction`]: { verb: 'approve-plan', given: version, comes: 'conflict' },
  [`${PLANS} sendBackPlanAction`]: { verb: 'approve-plan', given: version, comes: 'conflict' },
  [`${SITE}/safeguards/page.tsx`]: { verb: 'see' },
  [`${SAFEGUARD}/page.tsx`]: { verb: 'see', given: of(watch) },
  [`${SAFEGUARD}/actions.ts recordTestAction`]: {
    verb: 'test-safeguard',
    given: () => ({
      form: {
        ...watch,
        entry: randomUUID(),
        on: '2026-01-05',
        result: 'worked',
        steps: 'cut the line',
        expected: 'a call',
        seen: 'a call',
        looked: 'Robin',
      },
    }),
  },
  [`${SAFEGUARD}/actions.ts withdrawTestAction`]: {
    verb: 'test-safeguard',
    given: sent({ ...watch, test: randomUUID(), reason: 'to see' }),
    comes: 'not-found',
  },
  [`${SAFEGUARD}/actions.ts takeOffAction`]: {
    verb: 'switch-safeguard',
    given: sent({ ...watch, owner: 'Robin', why: 'to see', since: '2020-01-01', until: '2020-01-02' }),
    comes: 'invalid',
  },
  [`${SAFEGUARD}/actions.ts putBackAction`]: { verb: 'switch-safeguard', given: sent(watch), comes: 'conflict' },
  [`${SITE}/record/page.tsx`]: { verb: 'read-record', given: () => ({ search: { times: 'utc' } }) },
  [`${SITE}/record/anchors/page.tsx`]: { verb: 'read-record' },
  [`${SITE}/record/actions.ts verifyRecordAction`]: { verb: 'audit' },
  [`${SITE}/people/page.tsx`]: { verb: 'people' },
  [`${SITE}/people/[account]/page.tsx`]: {
    verb: 'people',
    given: async (site, { member }) => ({ params: { account: await member(site) } }),
  },
  [`${PEOPLE} inviteAction`]: {
    verb: 'people',
    given: () => ({ form: { email: `${randomUUID()}@holdfast.example`, name: 'Walked', role: 'viewer' } }),
  },
  [`${PEOPLE} changeRoleAction`]: {
    verb: 'people',
    given: async (site, { member }) => await someone(member(site), { role: 'lead' }),
  },
  [`${PEOPLE} linkToRotaAction`]: { verb: 'people', given: withMember },
  [`${PEOPLE} makeLinkAction`]: { verb: 'people', given: withMember },
  [`${PEOPLE} letGoAction`]: { verb: 'people', given: withMember },
  [`${PEOPLE} erasePersonAction`]: {
    verb: 'people',
    given: async (site, { leaver }) => await someone(leaver(site)),
  },
  'app/api/facility/[site]/route.ts GET': { verb: 'see' },
  // Of what was just described there is no review yet.
  'app/api/sites/[site]/systems/[system]/review.pdf/route.ts GET': {
    verb: 'see',
    given: of(system),
    comes: 'not-found',
  },
  'app/api/record/[site]/route.ts GET': { verb: 'read-record' },
};

/** A heat loss that no readings say. */
function found(): Given {
  const range = { value: '12', low: '10', high: '14' };
  return {
    form: { ...system, ...range, days: '30', is: 'heat-loss', untilMs: '1000000', why: 'to see', basedOn: '9999' },
  };
}

/** Another name for a room, by somebody who looked at a revision that never was. */
function change(): Given {
  const { noun, key } = room;
  const [draft, shown] = ['Gallery North', 'Gallery'].map((name) => JSON.stringify({ name }));
  return {
    form: { ...empty, ...units, act: 'change', noun, key, draft: draft ?? '', shown: shown ?? '', basedOn: '9999' },
  };
}
