import { beforeAll, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { verifyChain } from '#data/records/verify-chain';
import type { Who } from '#server/gate/who';
import { getHandover, getKeptHandover } from '#server/handover/get-handover';
import { giveHandover } from '#server/handover/give-handover';
import { takeHandover, takeHandoverHere } from '#server/handover/take-handover';
import { endWatch, watchAnimal } from '#server/handover/watch-animal';
import { takeBack } from '#server/rounds/take-back';
import { addNoticeOf, endNoticeOf } from '#server/notices/add-notice';
import { hashPassword } from '#server/sign-in/password';
import { beginStateOf } from '#server/states/begin-state';
import { noticeRequest } from '#shape/handover/notice-request';
import { beginRequest } from '#shape/states/requests';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = { site: 'harbour' };
const PASSWORD = 'a tide table for the whole year';
let siteId = '';
let ada: Who;
let ben: Who;

const page = async (who: Who) => {
  const found = await getHandover(who, SITE);
  if (!found.ok) throw new Error('no page');
  return found.value;
};
const give = async (who: Who, more: object = {}) => {
  const { print, entry } = await page(who);
  return { id: entry, answer: await giveHandover(who, { ...SITE, entry, print, ...more }) };
};

beforeAll(async () => {
  await keep(smallFacility());
  ({ siteId } = await stored('harbour'));
  ada = await letIn(query, siteId, 'harbour', 'Ada', 'aquarist');
  ben = await letIn(query, siteId, 'harbour', 'Ben', 'aquarist');
  await query('UPDATE account SET password_hash = $2 WHERE id = $1', [ben.id, await hashPassword(PASSWORD)]);
});

describe('the page a site is handed over with', () => {
  test('shows states with their end, animals under watch, others at work, and who is on', async () => {
    const begun = { ...SITE, system: 'tank-1', entry: newId(), state: 'treatment', lasts: 3, unit: 'days' };
    await beginStateOf(ada, beginRequest.parse(begun));
    const watch = { ...SITE, entry: newId(), system: 'tank-1', what: 'the old ray', why: 'off its food', days: 3 };
    expect(await watchAnimal(ada, watch)).toMatchObject({ ok: true });
    const times = { from: '2036-06-01T09:00', until: '2036-06-01T17:00' };
    const notice = { ...SITE, entry: newId(), kind: 'painting', what: 'the hall', todo: 'shut the intakes', ...times };
    expect(await addNoticeOf(ada, noticeRequest.parse(notice))).toMatchObject({ ok: true });
    const { shown } = await page(ben);
    expect(shown.states).toMatchObject([{ what: 'treatment', where: 'Tank 1', who: ['Ada'] }]);
    expect(shown.animals).toMatchObject([{ what: 'the old ray', more: 'off its food', who: ['Ada'] }]);
    expect(shown.notices).toMatchObject([{ since: '2036-06-01T08:00:00.000Z', more: 'shut the intakes' }]);
    expect(shown.seconds).toMatchObject([{ what: 'A medicine is dosed', isAbnormal: true }]);
    expect(await endNoticeOf(ben, { ...SITE, notice: notice.entry })).toMatchObject({ ok: true });
    expect((await page(ben)).shown.notices).toEqual([]);
  });

  test('is kept as it was read, without names, and told by its digest once it is not', async () => {
    const { id, answer } = await give(ada, { note: 'skimmer foams a lot' });
    expect(answer).toMatchObject({ ok: true });
    const kept = await getKeptHandover(ben, { ...SITE, handover: id });
    expect(kept).toMatchObject({ value: { isWhole: true, mayTake: true, line: { by: 'Ada', taken: null } } });
    const { rows } = await query('SELECT shown FROM handover WHERE id = $1', [id]);
    expect(JSON.stringify(rows[0]?.shown)).not.toMatch(/Ada|Ben/);
    await query(
      `SET session_replication_role = replica; UPDATE handover SET shown = jsonb_set(shown, '{states}', '[]') WHERE id = '${id}'`,
    );
    expect(await getKeptHandover(ben, { ...SITE, handover: id })).toMatchObject({ value: { isWhole: false } });
  });

  test('is read again when something has changed since it was shown', async () => {
    const { print, entry } = await page(ada);
    const [animal] = (await page(ada)).animals;
    await endWatch(ben, { ...SITE, watch: animal?.id ?? '', note: 'eats again' });
    expect(await giveHandover(ada, { ...SITE, entry, print })).toMatchObject({ reason: { why: 'conflict' } });
  });
});

test('the end of a watch of animals is taken back with a reason and stays to be seen; they are watched as before', async () => {
  const watch = { ...SITE, entry: newId(), system: 'tank-1', what: 'two wrasses', why: 'hide', days: 2 };
  await watchAnimal(ada, watch);
  const before = (await page(ben)).shown.animals;
  const back = { ...SITE, what: 'animal-watch-end' as const, about: watch.entry, reason: 'It was another pair.' };
  expect(await takeBack(ben, back)).toMatchObject({ reason: { why: 'not-found' } });
  expect(await endWatch(ben, { ...SITE, watch: watch.entry, note: 'out again' })).toMatchObject({ ok: true });
  expect((await page(ada)).shown.animals).toEqual([]);
  expect((await page(ada)).ended[0]).toMatchObject({ what: 'two wrasses', by: 'Ben', note: 'out again', taken: null });
  expect(await takeBack(ada, back)).toMatchObject({ reason: { why: 'conflict' } });
  expect(await takeBack(ben, back)).toMatchObject({ ok: true });
  expect(await takeBack(ben, back)).toMatchObject({ ok: true });
  const { shown, ended, animals } = await page(ada);
  expect(shown.animals).toEqual(before);
  expect(ended[0]).toMatchObject({ what: 'two wrasses', taken: { by: 'Ben', reason: 'It was another pair.' } });
  const { rows } = await query(`SELECT body FROM record WHERE kind = 'look-taken-back'`);
  expect(rows).toMatchObject([{ body: { by: ben.id, what: 'animal-watch-end', watch: watch.entry } }]);
  // Watched again, they are let go of again.
  const again = animals.find(({ what }) => what === 'two wrasses')?.id ?? '';
  expect(await endWatch(ada, { ...SITE, watch: again, note: 'both out' })).toMatchObject({ ok: true });
  expect((await page(ada)).shown.animals).toEqual([]);
});

describe('a handover', () => {
  test('is taken by somebody else on their own session, once, and both stand in the record', async () => {
    const { id } = await give(ada);
    expect(await takeHandover(ada, { ...SITE, handover: id })).toMatchObject({ reason: { why: 'conflict' } });
    expect(await takeHandover(ben, { ...SITE, handover: id })).toMatchObject({ ok: true });
    expect(await takeHandover(ben, { ...SITE, handover: id })).toMatchObject({ ok: true });
    expect((await page(ada)).past[0]).toMatchObject({ by: 'Ada', taken: { by: 'Ben', how: 'session' } });
    const { rows } = await query(`SELECT kind, body FROM record WHERE kind LIKE 'handover%' ORDER BY seq DESC LIMIT 2`);
    expect(rows.map(({ kind }) => kind)).toEqual(['handover-taken', 'handover-given']);
    expect(rows[0]?.body.digest).toBe(rows[1]?.body.digest);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  });

  test('is taken on the same device by the password of whoever takes it, and by no wrong one', async () => {
    const { id } = await give(ada);
    const here = (email: string, password: string) => takeHandoverHere(ada, { ...SITE, handover: id, email, password });
    expect(await here('ben@example.org', 'not this one at all')).toMatchObject({ reason: { why: 'wrong-sign-in' } });
    expect((await page(ada)).open).toMatchObject({ id, isOwn: true });
    expect(await here('ben@example.org', PASSWORD)).toMatchObject({ ok: true });
    expect((await page(ada)).past[0]?.taken).toMatchObject({ by: 'Ben', how: 'password' });
  });
});
