import type { Verb } from '#server/gate/may';
import { writeFacility } from '#shape/facility/write-facility';
import { site } from '../../_support/build-facility';
import { entered } from '../../_support/given';
import { smallFacility, smallSystem } from '../../_support/small-facility';

/** One of the two sites of the walk: alike but for key and name. */
export interface WalkSite {
  key: string;
  /** Stands in whatever is told of the site. */
  marker: string;
}

/** What an entry is given: parts of its address, what stands behind the question mark, fields of its form. */
export interface Given {
  params?: Record<string, string>;
  search?: Record<string, string>;
  form?: Record<string, string>;
}

/** How somebody to do something with is made: a member of a site whom nothing was done with yet. */
export interface Maker {
  member: (site: WalkSite) => Promise<string>;
  /** One who has left. */
  leaver: (site: WalkSite) => Promise<string>;
}

/** What is expected of an entry. The roles follow from the verb, by the one table of who may do what. */
export type Line =
  | {
      /** What has to be allowed at the site. */
      verb: Verb;
      /** What it is given besides the key of the site. */
      given?: (site: WalkSite, make: Maker) => Given | Promise<Given>;
      /** What somebody of another site is told, where it is not that there is no such site. */
      stranger?: 'not-allowed';
      /** What comes of it for those who may, where it is not done: it gets past the question of rights and no further. */
      allowed?: 'conflict';
      /** It is about every site: a role at one is not enough. */
      everywhere?: true;
    }
  /** For everybody who is signed in, of what each may see alone; says what. */
  | { own: string; given?: () => Given }
  /** For anybody, with why. */
  | {
      open: string;
      given?: () => Given;
      /** What comes of it, where it is not done. */
      comes?: string;
      /** Tables in which it leaves something whoever asks: that somebody tried. */
      leaves?: string[];
      /** It ends the session it is asked by, so that it is asked only by those who have none. */
      only?: 'unknown';
    };

const SITE = 'app/(house)/sites/[site]';
const PLANS = `${SITE}/plans/actions.ts`;
const PEOPLE = `${SITE}/people/actions.ts`;
const system = { system: 'tank-1' };
const piece = { ...system, equipment: 'heater-1' };
/** The first version, which is in force: nothing can be done with it any more. */
const version = () => ({ form: { ...piece, version: '1', inForce: '1', reason: 'to see' } });
/** Written by somebody who saw no version yet, though there is one. */
const plan = () => ({ form: { ...piece, plan: heaterPlan(), reason: 'to see', latest: '0' } });
const account = async (member: Promise<string>) => ({ form: { account: await member } });

/** Every entry of the house. One that is not here fails the walk. */
export const LINES: Readonly<Record<string, Line>> = {
  'app/(house)/page.tsx': { own: 'the systems of the sites one may see' },
  'app/(house)/actions.ts loadDemoAction': { verb: 'import', everywhere: true, stranger: 'not-allowed' },
  'app/(house)/how/page.tsx': { open: 'says how Holdfast computes, and nothing of any site' },
  'app/(house)/import/page.tsx': { open: 'an empty form: what is sent by it is judged by the actions' },
  'app/(house)/import/actions.ts previewFile': { verb: 'import', given: fileOf, stranger: 'not-allowed' },
  'app/(house)/import/actions.ts importFile': { verb: 'import', given: fileOf, stranger: 'not-allowed' },
  'app/(house)/view/actions.ts chooseView': {
    open: 'keeps units and light with the browser',
    given: () => ({ form: { light: 'dark' } }),
  },
  'app/layout.tsx': { open: 'the frame of every page' },
  'app/(open)/layout.tsx': { open: 'the head of the pages of somebody who is not signed in yet' },
  'app/(open)/sign-in/page.tsx': { open: 'an empty form' },
  'app/(open)/sign-in/actions.ts signInAction': {
    open: 'nobody is known before they sign in',
    given: () => ({ form: { ...somebody().form, password: 'not the password of anybody' } }),
    // Each try works out a password, which takes its time.
    only: 'unknown',
    comes: 'wrong-sign-in',
    leaves: ['account_event', 'rate_limit'],
  },
  'app/(open)/set-up/[token]/page.tsx': { open: 'whoever has the link; any other word leads nowhere', given: noLink },
  'app/(open)/set-up/[token]/actions.ts setUpAction': {
    open: 'whoever has the link; any other word leads nowhere',
    given: () => ({
      form: { ...noLink().params, name: 'A', email: 'a@holdfast.example', password: 'a long word or two' },
    }),
    comes: 'not-found',
  },
  'app/(house)/layout.tsx': { own: 'the head of every page, with the name of who is signed in' },
  'app/(house)/sign-out.ts signOutAction': {
    open: 'ends the session it is asked by, if there is one, and leads to where one signs in',
    comes: 'not-signed-in',
    only: 'unknown',
  },
  // It tells the name of the site to those who may see it, and says nothing to others: the page below it answers them.
  [`${SITE}/layout.tsx`]: { open: 'the way to the pages of a site, for those who may see it' },
  [`${SITE}/page.tsx`]: { verb: 'see' },
  [`${SITE}/systems/[system]/page.tsx`]: { verb: 'see', given: () => ({ params: system }) },
  [`${SITE}/systems/[system]/cases/[case]/page.tsx`]: {
    verb: 'see',
    given: () => ({ params: { ...system, case: 'heater-on:heater-1:normal' } }),
  },
  [`${SITE}/record/page.tsx`]: { verb: 'read-record', given: () => ({ search: { times: 'utc' } }) },
  [`${SITE}/record/actions.ts verifyRecordAction`]: { verb: 'audit' },
  [`${SITE}/people/page.tsx`]: { verb: 'people' },
  [`${SITE}/people/[account]/page.tsx`]: {
    verb: 'people',
    given: async (site, { member }) => ({ params: { account: await member(site) } }),
  },
  [`${PEOPLE} inviteAction`]: { verb: 'people', given: somebody },
  [`${PEOPLE} changeRoleAction`]: {
    verb: 'people',
    given: async (site, { member }) => ({ form: { account: await member(site), role: 'lead' } }),
  },
  [`${PEOPLE} linkToRotaAction`]: { verb: 'people', given: async (site, { member }) => await account(member(site)) },
  [`${PEOPLE} makeLinkAction`]: { verb: 'people', given: async (site, { member }) => await account(member(site)) },
  [`${PEOPLE} letGoAction`]: { verb: 'people', given: async (site, { member }) => await account(member(site)) },
  [`${PEOPLE} erasePersonAction`]: { verb: 'people', given: async (site, { leaver }) => await account(leaver(site)) },
  [`${SITE}/plans/page.tsx`]: { verb: 'see' },
  [`${SITE}/plans/[system]/[equipment]/page.tsx`]: { verb: 'see', given: () => ({ params: piece }) },
  [`${PLANS} writePlanAction`]: { verb: 'write-plan', given: plan, allowed: 'conflict' },
  [`${PLANS} submitPlanAction`]: { verb: 'write-plan', given: version, allowed: 'conflict' },
  [`${PLANS} withdrawPlanAction`]: { verb: 'write-plan', given: version, allowed: 'conflict' },
  [`${PLANS} putPlanInForceAction`]: { verb: 'approve-plan', given: version, allowed: 'conflict' },
  [`${PLANS} sendBackPlanAction`]: { verb: 'approve-plan', given: version, allowed: 'conflict' },
  'app/api/facility/[site]/route.ts GET': { verb: 'see' },
  'app/api/record/[site]/route.ts GET': { verb: 'read-record' },
  'app/api/health/route.ts GET': { open: 'says whether the parts of Holdfast are up' },
  'app/schema/facility.json/route.ts GET': { open: 'the published form of the facility file' },
};

let count = 0;

function heaterPlan(): string {
  const heater = smallSystem().equipment.find(({ key }) => key === piece.equipment);
  return JSON.stringify(heater?.plan);
}

/** A word that was given to nobody. */
function noLink() {
  return { params: { token: 'x'.repeat(43) } };
}

function somebody(): Given {
  count += 1;
  return { form: { email: `walked-${count}@holdfast.example`, name: `Walked ${count}`, role: 'viewer' } };
}

/** A facility file of the site with one thing changed, so that importing it changes something. */
function fileOf({ key, marker }: WalkSite): Given {
  count += 1;
  const changed = { ...smallFacility(), site: site({ key, name: marker, altitudeM: entered(count) }) };
  return { form: { text: writeFacility(changed), format: 'json' } };
}
