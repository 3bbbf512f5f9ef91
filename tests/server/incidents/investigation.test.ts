import { beforeAll, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import type { Who } from '#server/gate/who';
import { getInvestigation } from '#server/incidents/get-investigation';
import { investigate } from '#server/incidents/investigate';
import { signIncident } from '#server/incidents/sign-incident';
import { withdrawEntry } from '#server/incidents/withdraw-entry';
import { investigateRequest, signRequest } from '#shape/incidents/investigate-request';
import { safeguard } from '../../_support/build-system';
import { site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { anAccount } from '../../_support/signed-in';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { logged, opened, somebody } from './opened-incident';

const { query } = freshDatabase();

const AQUARIST = somebody('aquarist');
const LEAD = somebody('lead');
const MANAGER = somebody('manager');
let siteId = '';
let place = { site: 'harbour', number: 0 };

beforeAll(async () => {
  const tested = (key: string, on: string, result: 'worked' | 'failed' = 'worked') =>
    safeguard({ key, tests: [{ on, result }], testEveryDays: 90 });
  const safeguards = [
    tested('fresh', '2025-12-20'),
    tested('stale', '2025-06-01'),
    tested('later', '2026-01-20'),
    tested('broken', '2025-12-20', 'failed'),
    tested('taken-off', '2025-12-20'),
  ];
  await keep({ ...smallFacility({ ...smallSystem(), safeguards }), site: site({ key: 'harbour' }) });
  siteId = (await stored('harbour')).siteId;
  place = await opened(LEAD, { began: '2026-01-05T02:00' });
});

const request = (more: object) => investigateRequest.parse({ ...place, entry: newId(), ...more });

async function said(who: Who, more: object) {
  return await investigate(who, request(more));
}

async function page(at = place) {
  const found = await getInvestigation(LEAD, at);
  if (!found.ok) throw new Error(found.reason.why);
  return found.value;
}

/** A line of the record about a safeguard, as taking it off and putting it back leave it. */
async function recorded(kind: string, body: Record<string, unknown>, at: string): Promise<void> {
  await inTransaction((tx) => appendRecords(tx, siteId, [{ kind, body }], new Date(at)));
}

describe('what each safeguard did', () => {
  test('is asked of each as it stood when the fault began, and not as it stands today', async () => {
    const { rows } = await query(`SELECT id FROM safeguard WHERE site_id = $1 AND key = 'taken-off'`, [siteId]);
    const off = { safeguard: rows[0].id, since: '2026-01-01', until: '2026-01-31', why: 'new probe' };
    await recorded('safeguard-off', off, '2026-01-01T09:00:00Z');
    await recorded('safeguard-back', off, '2026-01-06T09:00:00Z');
    await query(`UPDATE safeguard SET retired_at = '2026-02-01' WHERE site_id = $1 AND key = 'broken'`, [siteId]);
    await query(`UPDATE safeguard SET retired_at = '2026-01-01' WHERE site_id = $1 AND key = 'later'`, [siteId]);
    const { safeguards } = await page();
    expect(safeguards.filter(({ isOfSite }) => !isOfSite).map(({ key, state, why }) => [key, state, why])).toEqual([
      ['fresh', 'tested', null],
      ['stale', 'untested', null],
      ['broken', 'untested', null],
      ['taken-off', 'off', 'new probe'],
    ]);
  });

  test('is what was said last, with its evidence; of no safeguard of the site it is refused', async () => {
    const { safeguards } = await page();
    const id = safeguards.find(({ key }) => key === 'fresh')?.id ?? '';
    await said(LEAD, { kind: 'safeguard', safeguard: id, did: 'worked', evidence: 'it was warm' });
    await said(LEAD, { kind: 'safeguard', safeguard: id, did: 'failed', evidence: 'contacts welded' });
    const found = (await page()).safeguards.find(({ key }) => key === 'fresh')?.found;
    expect(found).toMatchObject({ did: 'failed', evidence: 'contacts welded' });
    const none = await said(LEAD, { kind: 'safeguard', safeguard: newId(), did: 'worked', evidence: 'x' });
    expect(none).toMatchObject({ reason: { why: 'not-found', what: 'safeguard' } });
  });
});

describe('an investigation', () => {
  test('is led by those who may, and read by an aquarist', async () => {
    expect(await said(AQUARIST, { kind: 'summary', part: 'lucky', text: 'x' })).toMatchObject({
      reason: { why: 'not-allowed' },
    });
    expect(await getInvestigation(AQUARIST, place)).toMatchObject({ ok: true, value: { signers: [] } });
  });

  test('tells causes without names, whether whole or in part, and knows that a word is no name', async () => {
    await anAccount({ name: 'Robin Fernwick' });
    const account = (await query(`SELECT id FROM account WHERE name = 'Robin Fernwick'`)).rows[0].id;
    const row = [siteId, account];
    await query(`INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, 'aquarist', now())`, row);
    const cause = (text: string) => said(LEAD, { kind: 'cause', cause: 'procedure', certainty: 'fact', text });
    for (const text of ['robin fernwick forgot it', 'It was Fernwick’s shift'])
      expect(await cause(text)).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'text' }] } });
    expect(await cause('A robin nested in the vent, and nothing ended the pause.')).toMatchObject({ ok: true });
  });

  test('has actions that are done once somebody says what proves it, and none of another incident', async () => {
    const action = { kind: 'action', text: 'Second thermostat', owner: 'lead', due: '2026-01-02', strength: 'remove' };
    await said(LEAD, action);
    const [line] = (await page()).actions;
    expect(line).toMatchObject({ isLate: true, done: null });
    const other = await opened(LEAD);
    const done = request({ kind: 'action-done', action: line?.entry.id, proof: 'tested' });
    expect(await investigate(LEAD, { ...done, ...other })).toMatchObject({
      reason: { why: 'not-found', what: 'action' },
    });
    expect(await investigate(LEAD, done)).toMatchObject({ ok: true });
    expect((await page()).actions[0]).toMatchObject({ isLate: false, done: { body: { proof: 'tested' } } });
  });

  test('adds up losses, and holds marks to their order', async () => {
    await said(LEAD, { kind: 'loss', units: 'metric', group: 'Reef fish', dead: '3', at: '2026-01-05T06:00' });
    expect((await page()).losses).toMatchObject({ total: { dead: 3 }, groups: [{ group: 'Reef fish', late: 0 }] });
    const turned = { kind: 'mark', mark: 'fault-began', source: 'inferred', at: '2026-01-05T02:00' };
    expect(await said(LEAD, { ...turned, latest: '2026-01-05T01:00' })).toMatchObject({
      reason: { faults: [{ path: 'latest' }] },
    });
  });
});

describe('signing', () => {
  const sign = async (who: Who, as: string, sha256: string, more: object = {}) =>
    await signIncident(who, signRequest.parse({ ...place, entry: newId(), as, sha256, ...more }));

  test('is of what was looked at, by two accounts, and what comes later is an addition', async () => {
    const account = await anAccount({ name: 'Another lead' });
    const row = [siteId, account];
    await query(`INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, 'lead', now())`, row);
    const before = await page();
    expect(before.signers).toEqual(['lead']);
    await logged(AQUARIST, place, { text: 'One thing more.' });
    expect(await sign(LEAD, 'lead', before.sha256)).toMatchObject({ reason: { why: 'conflict' } });
    const { sha256 } = await page();
    expect(await sign(LEAD, 'manager', sha256)).toMatchObject({ reason: { why: 'not-allowed' } });
    expect(await sign(LEAD, 'sole-keeper', sha256, { why: 'x' })).toMatchObject({ reason: { why: 'not-allowed' } });
    expect(await sign(LEAD, 'lead', sha256)).toMatchObject({ ok: true });
    expect(await sign(LEAD, 'lead', sha256)).toMatchObject({ reason: { why: 'own-work' } });
    expect((await page()).sha256).toBe(sha256);
    expect((await page()).head.state).toBe('under-investigation');
    expect(await sign(MANAGER, 'manager', sha256)).toMatchObject({ ok: true });
    expect((await page()).head).toMatchObject({ state: 'signed', signatures: [{ as: 'lead' }, { as: 'manager' }] });
    const later = await logged(AQUARIST, place, { text: 'Another death.' });
    const { story, head } = await page();
    expect(head.state).toBe('signed');
    expect(story.filter(({ isAfterSigning }) => isAfterSigning).map(({ entry }) => entry.id)).toEqual([later]);
    expect(await sign(MANAGER, 'lead', (await page()).sha256)).toMatchObject({ reason: { why: 'conflict' } });
  });

  test('is taken back by nobody but whoever signed', async () => {
    const signature = (await page()).story.find(({ entry }) => entry.kind === 'signature' && entry.by === LEAD.id);
    const back = { ...place, entry: newId(), supersedes: signature?.entry.id ?? '', reason: 'a doubt' };
    expect(await withdrawEntry(MANAGER, back)).toMatchObject({ reason: { why: 'not-own-work' } });
    expect(await withdrawEntry(LEAD, back)).toMatchObject({ ok: true });
    expect((await page()).head.state).toBe('under-investigation');
  });

  test('by a sole keeper needs that nobody else may, and a reason', async () => {
    await query('UPDATE membership SET ended_at = now() WHERE site_id = $1', [siteId]);
    place = await opened(LEAD);
    const { sha256, signers } = await page();
    expect(signers).toEqual(['lead', 'sole-keeper']);
    expect(await sign(LEAD, 'sole-keeper', sha256)).toMatchObject({ reason: { faults: [{ path: 'why' }] } });
    expect(await sign(LEAD, 'sole-keeper', sha256, { why: 'I am alone here' })).toMatchObject({ ok: true });
    expect((await page()).head.state).toBe('signed');
  });
});
