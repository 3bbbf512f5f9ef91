import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import ICAL from 'ical.js';
import { endAccount } from '#data/accounts/accounts';
import { giveRole } from '#data/accounts/members';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { letGo } from '#server/people/let-go';
import { endFeedOf, makeFeedFor } from '#server/rota/make-feed';
import { GET } from '../../../app/api/rota/[token]/route';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
let siteId = '';
let who: Who;
let admin: Who;
let count = 0;

const made = async (scope: 'mine' | 'everybody' | 'rounds' = 'everybody', by = who) => {
  const answer = await makeFeedFor(by, { site: 'harbour', scope });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return new URL(answer.value.address).pathname.split('/').at(-1) ?? '';
};
const read = async (word: string) =>
  await GET(new Request(`http://localhost:3200/api/rota/${word}`, { headers: { host: 'localhost:3200' } }), {
    params: Promise.resolve({ token: word }),
  });
const status = async (word: string) => (await read(word)).status;

beforeAll(async () => {
  await keep(smallFacility());
  ({ siteId } = await stored('harbour'));
  admin = await letIn(query, siteId, 'harbour', 'Admin', 'admin');
});

beforeEach(async () => {
  count += 1;
  who = await letIn(query, siteId, 'harbour', `Reader${count}`, 'viewer');
});

describe('an address of a calendar', () => {
  test('opens the rota to whoever has it, with or without its ending, and is kept by nobody but its hash', async () => {
    const word = await made();
    expect(word).toMatch(new RegExp(`^${siteId}\\.[\\w-]{43}\\.ics$`));
    const answer = await read(word);
    expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    expect(answer.headers.get('cache-control')).toContain('private');
    const calendar = new ICAL.Component(ICAL.parse(await answer.text()));
    // Every day from 28 back to 90 ahead has its two turns (the base site has one shift by day and calls by night).
    expect(calendar.getAllSubcomponents('vevent').length).toBeGreaterThan(2 * 115);
    expect(await status(word.replace('.ics', ''))).toBe(200);
    const { rows } = await query('SELECT * FROM calendar_feed');
    expect(JSON.stringify(rows)).not.toContain(word.slice(37, 80));
    expect((await query(`SELECT body FROM record WHERE kind = 'calendar-made'`)).rows.at(-1)?.body).toMatchObject({
      account: who.id,
      scope: 'everybody',
    });
  });

  test('of rounds tells of those that are due, and of nobody', async () => {
    const text = await (await read(await made('rounds'))).text();
    const found = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    expect(found.length).toBeGreaterThanOrEqual(119);
    expect(text).toContain('SUMMARY:Evening round');
    expect(text).not.toMatch(/Robin|Sam/);
  });

  test('that was guessed, belongs to another site or is no such word opens nothing', async () => {
    const word = await made();
    const other = word.replace(siteId, '01a2119e-3a5a-773f-ac5d-188c0fd166eb');
    for (const wrong of [`${siteId}.${'x'.repeat(43)}.ics`, other, 'x', `${word}.ics`, word.toUpperCase()])
      expect(await status(wrong)).toBe(404);
  });

  test('opens nothing once it is ended, by its owner alone', async () => {
    const word = await made();
    const { rows } = await query('SELECT id FROM calendar_feed WHERE account_id = $1', [who.id]);
    const end = { site: 'harbour', feed: rows[0].id };
    expect(await endFeedOf(admin, end)).toMatchObject({ reason: { why: 'not-found' } });
    expect(await endFeedOf(who, end)).toMatchObject({ ok: true });
    expect(await status(word)).toBe(404);
    expect(await endFeedOf(who, end)).toMatchObject({ ok: false });
  });

  test('opens nothing once the account has ended, or has lost its role', async () => {
    const word = await made();
    expect(await letGo(admin, { site: 'harbour', account: who.id })).toMatchObject({ ok: true });
    expect(await status(word)).toBe(404);
    // A role given anew is another one: what was made before it stays shut.
    await query('UPDATE account SET ended_at = NULL WHERE id = $1', [who.id]);
    const later = new Date(now().getTime() + 1000);
    await inTransaction((tx) => giveRole(tx, { siteId, accountId: who.id, role: 'viewer' }, later));
    expect(await status(word)).toBe(404);
    const other = await made('everybody', admin);
    expect(await status(other)).toBe(200);
    await inTransaction((tx) => endAccount(tx, admin.id, 'local', now()));
    expect(await status(other)).toBe(404);
    await query('UPDATE account SET ended_at = NULL WHERE id = $1', [admin.id]);
  });

  test('for one’s own shifts needs to be somebody of the rota, and tells of theirs alone', async () => {
    expect(await makeFeedFor(who, { site: 'harbour', scope: 'mine' })).toMatchObject({ reason: { why: 'conflict' } });
    await query(`UPDATE membership SET person_id = (SELECT id FROM person WHERE key = 'robin') WHERE account_id = $1`, [
      who.id,
    ]);
    const text = await (await read(await made('mine'))).text();
    expect(text).toContain('SUMMARY:On site');
    expect(text).toContain('X-WR-CALNAME:My shifts');
  });

  test('is one of ten at most, and of nobody who may not see the site', async () => {
    for (let one = 0; one < 10; one += 1) await made();
    expect(await makeFeedFor(who, { site: 'harbour', scope: 'everybody' })).toMatchObject({
      reason: { why: 'conflict' },
    });
    const stranger: Who = { ...who, at: {} };
    expect(await makeFeedFor(stranger, { site: 'harbour', scope: 'everybody' })).toMatchObject({
      reason: { why: 'not-found' },
    });
  });
});
