import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { Role } from '#core/rota/rota';
import { DEMO_FILES } from '../../seed/demo';
import { entered } from '../_support/given';
import { site } from '../_support/build-facility';
import { freshDatabase } from '../_support/database';
import { anAccount } from '../_support/signed-in';
import { smallFacility } from '../_support/small-facility';
import { keep, stored } from '../_support/stored';
import { underWay } from './walk/ask-entry';
import { allCallers } from './walk/callers';
import { type Entry, findEntries } from './walk/entries';
import { fingerprint } from './walk/fingerprint';
import { type Ground, judge } from './walk/judge';
import type { WalkSite } from './walk/line';
import { LINES } from './walk/lines';

vi.mock('next/headers', () => ({
  headers: async () => underWay.headers,
  cookies: async () => ({ get: () => undefined, set: () => undefined, delete: () => undefined }),
}));
vi.mock('next/cache', () => ({ revalidatePath: () => undefined }));

const { query } = freshDatabase();

const here: WalkSite = { key: 'walked-site', marker: 'Marker of the walked site' };
const other: WalkSite = { key: 'other-site', marker: 'Marker of the other site' };
const entries = await findEntries();
let ground: Ground;

beforeAll(async () => {
  const demo = DEMO_FILES.map(({ key }) => ({ key, marker: key }));
  // The demonstration is there already: loading it again is asked about, not carried out.
  for (const { key, marker } of [here, other, ...demo])
    await keep({ ...smallFacility(), site: site({ key, name: marker, altitudeM: entered(0) }) });
  const joining = (siteId: string) => async (account: string, role: Role) => {
    const row = [siteId, account, role];
    await query('INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, $3, now())', row);
  };
  const joinHere = joining((await stored(here.key)).siteId);
  const callers = await allCallers(joinHere, joining((await stored(other.key)).siteId));
  const member = async () => {
    const id = await anAccount();
    await joinHere(id, 'viewer');
    return id;
  };
  const leaver = async () => {
    const id = await member();
    await query('UPDATE membership SET ended_at = now() WHERE account_id = $1', [id]);
    return id;
  };
  ground = { here, other, callers, make: { member, leaver }, print: () => fingerprint(query) };
});

test('every page, handler and action of the tree has its line, and every line its entry', () => {
  expect(entries.length).toBeGreaterThan(20);
  expect(entries.map(({ name }) => name).sort()).toEqual(Object.keys(LINES).sort());
});

describe('asked by every role, by nobody, by those who were somebody, and by a stranger', () => {
  test.each(entries)('$name answers whom it should, and a refused call changes no row', async (entry) => {
    const line = LINES[entry.name];
    if (!line) throw new Error(`${entry.name} has no line in the walk`);
    expect(await judge(entry, line, ground)).toEqual([]);
  });
});

const REFUSED = { ok: false, reason: { why: 'not-allowed' } };

describe('the walk sees', () => {
  const page = (call: Entry['call']): Entry => ({ name: 'planted/page.tsx', kind: 'page', call });

  test('a page that asks nobody who they are', async () => {
    const wrong = await judge(
      page(() => ({ props: { name: here.marker } })),
      { verb: 'see' },
      ground,
    );
    expect(wrong).toContain('nobody: done instead of not-signed-in');
    expect(wrong).toContain('an administrator of another site: done instead of not-found');
    expect(wrong).toContain(`an expired session is told of ${here.marker}`);
  });

  test('a page that holds a verb to be another', async () => {
    const record = entries.find(({ name }) => name.endsWith('record/page.tsx'));
    if (!record) throw new Error('no record');
    const wrong = await judge(record, { verb: 'people' }, ground);
    expect(wrong).toContain('aquarist: done instead of not-allowed');
    expect(wrong).not.toContain('admin: done instead of not-allowed');
  });

  test('a page that writes, and an action that writes though it refuses', async () => {
    const writing = page(async () => {
      await query(`UPDATE site SET revision = revision + 1 WHERE key = $1`, [other.key]);
      return { props: {} };
    });
    const refuse = async () => {
      await writing.call();
      return REFUSED;
    };
    const refusing: Entry = { ...writing, kind: 'action', call: refuse };
    expect((await judge(writing, { open: 'planted' }, ground)).join()).toContain('site was changed');
    expect((await judge(refusing, { verb: 'people' }, ground)).join()).toContain('site was changed');
  });

  test('a site that is there told from one that is not', async () => {
    const telling = page(async (given: { params: Promise<{ site: string }> }) => {
      const { site: key } = await given.params;
      throw Object.assign(new Error(key === here.key ? 'hidden' : 'none'), { digest: 'NEXT_HTTP_ERROR_FALLBACK;404' });
    });
    const wrong = await judge(telling, { verb: 'see' }, ground);
    expect(wrong.join('\n')).toContain('a stranger tells a site that is there from one that is not');
  });
});
