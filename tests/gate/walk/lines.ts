import { randomUUID } from 'node:crypto';
import { writeFacility } from '#shape/facility/write-facility';
import { site } from '../../_support/build-facility';
import { entered } from '../../_support/given';
import { smallFacility } from '../../_support/small-facility';
import { INCIDENT_LINES } from './incident-lines';
import type { Given, Line, WalkSite } from './line';
import { ROTA_LINES } from './rota-lines';
import { ALARM_LINES } from './alarm-lines';
import { READING_LINES } from './reading-lines';
import { ROUND_LINES } from './round-lines';
import { SITE_LINES } from './site-lines';
import { SOURCE_LINES } from './source-lines';
import { STATE_LINES } from './state-lines';

const ACCOUNT = 'app/(house)/account';
const OPEN = 'app/(open)';
/** A word that was given to nobody. */
const noLink = { token: 'x'.repeat(43) };
const PASSWORD = 'a long word or two of the sea';
const passkey = { id: 'none-of-mine' };

/** What an authenticator sends, of which nobody has heard. */
const UNKNOWN_PASSKEY = {
  id: 'AAAA',
  rawId: 'AAAA',
  type: 'public-key',
  clientExtensionResults: {},
  response: { clientDataJSON: 'AAAA', authenticatorData: 'AAAA', signature: 'AAAA' },
};

const of = (params: Given['params']) => () => ({ params });
const sent = (form: Given['form']) => () => ({ form });
const address = (more: Given['form'] = {}) => ({ form: { email: `${randomUUID()}@holdfast.example`, ...more } });
const byLink = 'whoever has the link; any other word leads nowhere';

const OPEN_LINES: Readonly<Record<string, Line>> = {
  'app/layout.tsx': { open: 'the frame of every page' },
  'app/(house)/almanac/page.tsx': { open: 'lists tables made of published laws, and nothing of any site' },
  'app/(house)/almanac/[table]/page.tsx': {
    open: 'a table made of published laws, and nothing of any site',
    given: of({ table: 'oxygen-saturation' }),
  },
  'app/(house)/how/page.tsx': { open: 'says how Holdfast computes, and nothing of any site' },
  'app/(house)/import/page.tsx': { open: 'an empty form: what is sent by it is judged by the actions' },
  'app/(house)/view/actions.ts chooseView': {
    open: 'keeps units and light with the browser',
    given: sent({ light: 'dark' }),
  },
  'app/(house)/sign-out.ts signOutAction': {
    open: 'ends the session it is asked by, if there is one, and leads to where one signs in',
    comes: 'not-signed-in',
    // A session that had expired is ended all the same.
    leaves: ['account_event', 'session'],
    only: 'unknown',
  },
  'app/(walk)/walk/page.tsx': { open: 'a page without anything of a site or a person, kept by browsers for rounds' },
  'app/push-worker.js/route.ts GET': { open: 'a script that shows calls, the same for everybody' },
  [`${OPEN}/layout.tsx`]: { open: 'the head of the pages of somebody who is not signed in yet' },
  [`${OPEN}/sign-in/page.tsx`]: { open: 'an empty form' },
  [`${OPEN}/sign-in/actions.ts signInAction`]: {
    open: 'nobody is known before they sign in',
    given: () => address({ password: PASSWORD }),
    comes: 'wrong-sign-in',
    leaves: ['account_event', 'rate_limit'],
    // Each try works out a password, which takes its time.
    only: 'unknown',
  },
  [`${OPEN}/sign-in/actions.ts askPasskeyAction`]: {
    open: 'nobody is known before they sign in',
    leaves: ['passkey_challenge', 'rate_limit'],
  },
  [`${OPEN}/sign-in/actions.ts passkeyAction`]: {
    open: 'nobody is known before they sign in',
    given: sent({ answer: JSON.stringify(UNKNOWN_PASSKEY) }),
    comes: 'wrong-sign-in',
    leaves: ['account_event', 'rate_limit'],
  },
  [`${OPEN}/sign-in/actions.ts outsideAction`]: {
    open: 'leads to an outside issuer, if one was named',
    comes: 'not-allowed',
  },
  [`${OPEN}/set-up/[token]/page.tsx`]: { open: byLink, given: of(noLink) },
  [`${OPEN}/set-up/[token]/actions.ts setUpAction`]: {
    open: byLink,
    given: () => address({ ...noLink, name: 'A', password: PASSWORD }),
    comes: 'not-found',
  },
  [`${OPEN}/join/[token]/page.tsx`]: { open: byLink, given: of(noLink) },
  [`${OPEN}/join/[token]/actions.ts joinAction`]: {
    open: byLink,
    given: sent({ ...noLink, password: PASSWORD }),
    comes: 'not-found',
  },
  [`${OPEN}/reset/[token]/page.tsx`]: { open: byLink, given: of(noLink) },
  [`${OPEN}/reset/[token]/actions.ts resetAction`]: {
    open: byLink,
    given: sent({ ...noLink, password: PASSWORD }),
    comes: 'not-found',
  },
  [`${OPEN}/reset/page.tsx`]: { open: 'an empty form' },
  [`${OPEN}/reset/actions.ts askResetAction`]: {
    open: 'answers alike whoever asks for whom',
    given: () => address(),
    leaves: ['rate_limit', 'graphile_worker._private_jobs'],
  },
  'app/api/auth/[...nextauth]/route.ts GET': {
    open: 'where an outside issuer sends people back to, and nothing else',
    given: of({ nextauth: ['session'] }),
    comes: 'not-found',
  },
  [`${OPEN}/trust/page.tsx`]: { open: 'whom a device has to trust before anybody can sign in from it' },
  'app/api/trust/[file]/route.ts GET': {
    open: 'a certificate, which is shown to whoever connects; never its key',
    given: of({ file: 'holdfast.crt' }),
    // Nobody made an authority here.
    comes: 'not-found',
  },
  'app/api/health/route.ts GET': { open: 'says whether the parts of Holdfast are up' },
  'app/schema/facility.json/route.ts GET': { open: 'the published form of the facility file' },
};

const OWN_LINES: Readonly<Record<string, Line>> = {
  'app/(house)/layout.tsx': { own: 'the head of every page, with the name of who is signed in' },
  'app/(house)/page.tsx': { own: 'the systems of the sites one may see' },
  [`${ACCOUNT}/page.tsx`]: { own: 'their name, sessions and passkeys' },
  [`${ACCOUNT}/actions.ts changePasswordAction`]: {
    own: 'their password',
    given: sent({ old: 'not the old one', password: PASSWORD }),
    comes: 'invalid',
  },
  [`${ACCOUNT}/actions.ts endSessionAction`]: {
    own: 'a session of theirs, and of nobody else',
    given: () => ({ form: { id: randomUUID() } }),
    comes: 'not-found',
  },
  [`${ACCOUNT}/actions.ts endOthersAction`]: { own: 'their other sessions' },
  [`${ACCOUNT}/actions.ts addDeviceAction`]: {
    own: 'a browser of theirs',
    given: sent({ name: 'phone', endpoint: 'https://127.0.0.1/', p256dh: 'AAAA', auth: 'AAAA' }),
    comes: 'invalid',
  },
  [`${ACCOUNT}/actions.ts removeDeviceAction`]: {
    own: 'a browser of theirs, and of nobody else',
    given: () => ({ form: { id: randomUUID() } }),
    comes: 'not-found',
  },
  [`${ACCOUNT}/actions.ts offerPasskeyAction`]: { own: 'the beginning of a passkey' },
  [`${ACCOUNT}/actions.ts addPasskeyAction`]: { own: 'a passkey', given: sent({ name: 'key' }), comes: 'invalid' },
  [`${ACCOUNT}/actions.ts namePasskeyAction`]: {
    own: 'a passkey of theirs, and of nobody else',
    given: sent({ ...passkey, name: 'key' }),
    comes: 'not-found',
  },
  [`${ACCOUNT}/actions.ts removePasskeyAction`]: {
    own: 'a passkey of theirs, and of nobody else',
    given: sent(passkey),
    comes: 'not-found',
  },
};

const EVERYWHERE_LINES: Readonly<Record<string, Line>> = {
  'app/(house)/actions.ts loadDemoAction': { verb: 'import', everywhere: true, stranger: 'not-allowed' },
  'app/(house)/import/actions.ts previewFile': { verb: 'import', given: fileOf, stranger: 'not-allowed' },
  'app/(house)/import/actions.ts importFile': { verb: 'import', given: fileOf, stranger: 'not-allowed' },
  'app/(house)/sites/new/page.tsx': { verb: 'import', everywhere: true, stranger: 'not-allowed' },
  'app/(house)/sites/new/actions.ts newSiteAction': {
    verb: 'import',
    everywhere: true,
    stranger: 'not-allowed',
    given: sent({ draft: '{}', units: 'metric' }),
    comes: 'invalid',
  },
  'app/(house)/machine/page.tsx': { verb: 'people', everywhere: true, refused: 'not-found' },
};

/** Every entry of the house. One that is not here fails the walk. */
export const LINES: Readonly<Record<string, Line>> = {
  ...OPEN_LINES,
  ...OWN_LINES,
  ...EVERYWHERE_LINES,
  ...READING_LINES,
  ...SITE_LINES,
  ...SOURCE_LINES,
  ...STATE_LINES,
  ...INCIDENT_LINES,
  ...ROTA_LINES,
  ...ALARM_LINES,
  ...ROUND_LINES,
};

let count = 0;

/** A facility file of the site with one thing changed, so that importing it changes something. */
function fileOf({ key, marker }: WalkSite): Given {
  count += 1;
  const changed = { ...smallFacility(), site: site({ key, name: marker, altitudeM: entered(count) }) };
  return { form: { text: writeFacility(changed), format: 'json' } };
}
