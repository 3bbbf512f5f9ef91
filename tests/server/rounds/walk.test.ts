import { runOnce } from 'graphile-worker';
import { beforeAll, describe, expect, test } from 'vitest';
import { standingEntries } from '#core/rounds/entry';
import { checksOf } from '#core/rounds/sheet';
import { newId } from '#data/new-id';
import { pool } from '#data/pool';
import { verifyChain } from '#data/records/verify-chain';
import { listEntries } from '#data/rounds/entries';
import { findRound } from '#data/rounds/round-row';
import type { Who } from '#server/gate/who';
import { getSystem } from '#server/reviews/get-system';
import { beginBesides } from '#server/rounds/begin-besides';
import { beginRound } from '#server/rounds/begin-round';
import { enter } from '#server/rounds/enter';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { listRounds } from '#server/rounds/list-rounds';
import { lookAgain } from '#server/rounds/look-again';
import { signRound } from '#server/rounds/sign-round';
import { workerLogger } from '#server/worker/logger';
import { taskList } from '#server/worker/task-list';
import { type EnterRequest, enterRequest } from '#shape/rounds/requests';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();

const SITE = 'harbour';
const HEATER = 'tank-1/equipment/heater-1/usual';
const WARMTH = 'tank-1/sensor/display-temperature';
let siteId = '';
let round = '';
let due = '';
const people: Record<'ash' | 'bo' | 'lee' | 'max' | 'vi', Who> = {} as never;

beforeAll(async () => {
  const given = siteWithRoundDue();
  due = given.due;
  await keep(given.facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  for (const [name, role] of [
    ['ash', 'aquarist'],
    ['bo', 'aquarist'],
    ['lee', 'lead'],
    ['max', 'manager'],
    ['vi', 'viewer'],
  ] as const)
    people[name] = await letIn(query, siteId, SITE, name, role);
});

const line = (check: string, more: Partial<Record<keyof EnterRequest, string>>): EnterRequest =>
  enterRequest.parse({ site: SITE, round, check, entry: newId(), ...more });
const entries = () => listEntries(siteId, round);
const count = async (sql: string) => Number((await query(`SELECT count(*) FROM ${sql}`)).rows[0].count);

/** What the review says, as tested, of the heater that sticks on, once the worker has done what it was woken for. */
async function stuckHeater(): Promise<string | undefined> {
  await runOnce({ pgPool: pool(), taskList, logger: workerLogger });
  const page = await getSystem(people.lee, { site: SITE, system: 'tank-1' });
  if (!page.ok || page.value.state.state !== 'current') throw new Error('The review is not there');
  return page.value.review?.cases.find(({ fault }) => fault === 'heater-on')?.tested.verdict;
}

describe('a round', () => {
  test('that two begin at once is one round, begun by one of them, once in the record', async () => {
    const begin = (who: Who) => beginRound(who, { site: SITE, slot: 'morning', due });
    const both = await Promise.all([begin(people.ash), begin(people.bo)]);
    const ids = both.map((one) => (one.ok ? one.value.round : JSON.stringify(one.reason)));
    expect(ids[0]).toBe(ids[1]);
    round = ids[0] ?? '';
    expect(await count('round')).toBe(1);
    expect(await count("record WHERE kind = 'round-begun'")).toBe(1);
  });

  test('is begun by nobody who may only look, and not at a time that is no time of the timetable', async () => {
    expect(await beginRound(people.vi, { site: SITE, slot: 'morning', due })).toMatchObject({
      reason: { why: 'not-allowed' },
    });
    const never = new Date(Date.parse(due) + 60_000).toISOString();
    expect(await beginRound(people.ash, { site: SITE, slot: 'morning', due: never })).toMatchObject({
      reason: { why: 'not-found', what: 'round' },
    });
    const tomorrow = new Date(Date.parse(due) + 86_400_000).toISOString();
    const early = await beginRound(people.ash, { site: SITE, slot: 'morning', due: tomorrow });
    // On the night the clocks change tomorrow's is an hour off, and no time of the timetable.
    expect(early.ok ? '' : early.reason.why).toMatch(/conflict|not-found/);
  });

  test('keeps an entry that is sent twice once, also when both arrive together', async () => {
    const once = line(HEATER, { seen: 'usual' });
    const all = await Promise.all([enter(people.ash, once), enter(people.ash, once), enter(people.ash, once)]);
    expect(all.map(({ ok }) => ok)).toEqual([true, true, true]);
    expect((await entries()).filter(({ check }) => check === HEATER)).toHaveLength(1);
  });

  test('refuses an entry that was sent for another round, and keeps no reading of it', async () => {
    const besides = await beginBesides(people.ash, { site: SITE, slot: 'morning', entry: newId() });
    const other = besides.ok ? besides.value.round : '';
    const [kept] = await entries();
    const sent = { ...line(WARMTH, { number: '24' }), round: other, entry: kept?.id ?? '' };
    expect(await enter(people.ash, sent)).toMatchObject({ reason: { why: 'conflict' } });
    expect(await count('reading')).toBe(0);
  });

  test('tells the second of two who enter the same line, and keeps the first', async () => {
    const check = 'tank-1/equipment/blower-1/usual';
    const known = checksOf((await findRound(siteId, round))?.sheet ?? { format: 'holdfast.sheet/1', places: [] });
    const key = known.find((one) => one.about.type === 'air-blower')?.key ?? check;
    const both = await Promise.all([
      enter(people.ash, line(key, { seen: 'usual' })),
      enter(people.bo, line(key, { seen: 'other', note: 'It rattles.' })),
    ]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect(both.find(({ ok }) => !ok)).toMatchObject({ reason: { why: 'conflict' } });
    expect((await entries()).filter((entry) => entry.check === key)).toHaveLength(1);
  });

  test('asks about a number that can hardly be, or lies beyond its alarm, and keeps nothing until it is said to be so', async () => {
    const far = line(WARMTH, { number: '27,4' });
    const asked = await enter(people.ash, far);
    expect(asked.ok && asked.value.asked).toMatch(
      /27\.4.°C is above the limit of its alarm, 27\.0.°C\. What was done\?/,
    );
    expect(await count('reading')).toBe(0);
    expect(await enter(people.ash, { ...far, sure: 'yes', note: 'Lid opened.' })).toMatchObject({
      value: { asked: null },
    });
    const { rows } = await query('SELECT value, origin, quality, came_by FROM reading');
    expect(rows).toEqual([{ value: 27.4, origin: 3, quality: 0, came_by: far.entry }]);
    expect(await count('reading_arrival')).toBe(1);
  });

  test('refuses what is no number, naming the field, and what is other than usual without a word of what', async () => {
    expect(await enter(people.ash, line(WARMTH, { number: 'warm' }))).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'number' }] },
    });
    expect(await enter(people.ash, line('tank-1/system/floor', { seen: 'other' }))).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'note' }] },
    });
    expect(await enter(people.ash, line('nowhere', { seen: 'usual' }))).toMatchObject({
      reason: { why: 'not-found', what: 'line of the sheet' },
    });
    expect(await enter(people.vi, line(HEATER, { seen: 'usual' }))).toMatchObject({ reason: { why: 'not-allowed' } });
  });

  test('corrects an entry once, with a reason; its reading is corrected as well, and the record says so', async () => {
    const before = standingEntries(await entries()).get(WARMTH);
    const right = line(WARMTH, { number: '77.9', units: 'us', supersedes: before?.id ?? '', reason: 'Misread.' });
    expect(await enter(people.bo, right)).toMatchObject({ ok: true });
    const again = { ...right, entry: newId() };
    expect(await enter(people.ash, again)).toMatchObject({ reason: { why: 'conflict' } });
    const { rows } = await query('SELECT value, revision FROM reading ORDER BY revision');
    expect(rows).toEqual([
      { value: 27.4, revision: 0 },
      { value: 25.5, revision: 1 },
    ]);
    expect(await count("record WHERE kind = 'round-corrected'")).toBe(1);
    expect(() => line(WARMTH, { number: '25', supersedes: newId() })).toThrow(/corrected/);
  });

  test('cannot be signed while a line is blank, and says which', async () => {
    const refused = await signRound(people.ash, { site: SITE, round });
    expect(refused).toMatchObject({
      reason: { why: 'conflict', now: expect.stringContaining('blank is not as usual') },
    });
    expect(await count('round_signature')).toBe(0);
  });

  test('has the rest of a place entered as usual where looking is all, and as not done with why', async () => {
    const places = (await findRound(siteId, round))?.sheet.places ?? [];
    for (const [index] of places.entries()) await enterRest(people.ash, { site: SITE, round, place: index + 1 });
    const blank = async () => {
      const standing = standingEntries(await entries());
      return places.flatMap(({ checks }) => checks).filter(({ key }) => !standing.has(key));
    };
    expect(new Set((await blank()).map(({ kind }) => kind))).toEqual(new Set(['test']));
    const site = places.findIndex(({ checks }) => checks.some(({ key }) => key.startsWith('-/safeguard')));
    await enterRest(people.ash, { site: SITE, round, place: site + 1, notDone: 'No time' });
    expect((await blank()).map(({ key }) => key)).toEqual(['tank-1/safeguard/cut-out']);
  });

  test('has the test of a safeguard in its ledger and on its sheet at once, and counted by the review', async () => {
    expect(await stuckHeater()).not.toBe('covered');
    const typed = { seen: 'worked', steps: 'Turned it down.', expected: 'Heater off.', found: 'It went off.' };
    const done = line('tank-1/safeguard/cut-out', typed);
    expect(await enter(people.ash, line('tank-1/safeguard/cut-out', { seen: 'worked' }))).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'steps' }, { path: 'expected' }, { path: 'found' }] },
    });
    expect(await enter(people.ash, done)).toMatchObject({ ok: true });
    expect(await enter(people.ash, done)).toMatchObject({ ok: true });
    const { rows } = await query(
      "SELECT id, result, steps, seen, recorded_by FROM safeguard_test WHERE recorded_by <> 'local'",
    );
    expect(rows).toEqual([
      { id: done.entry, result: 'worked', steps: 'Turned it down.', seen: 'It went off.', recorded_by: people.ash.id },
    ]);
    expect((await query("SELECT tests FROM safeguard WHERE key = 'cut-out'")).rows[0].tests).toEqual([done.entry]);
    expect(await count(`record WHERE kind = 'safeguard-tested' AND body->>'by' = '${people.ash.id}'`)).toBe(1);
    expect(await stuckHeater()).toBe('covered');
  });

  test('is signed once by whoever is signed in, and from then on only corrected', async () => {
    const both = await Promise.all([
      signRound(people.ash, { site: SITE, round }),
      signRound(people.bo, { site: SITE, round }),
    ]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect(await count('round_signature')).toBe(1);
    const stands = standingEntries(await entries()).get(HEATER);
    expect(await enter(people.bo, line(HEATER, { seen: 'usual' }))).toMatchObject({ reason: { why: 'conflict' } });
    const right = { seen: 'other', note: 'Its cable is wet.', supersedes: stands?.id ?? '', reason: 'Seen later.' };
    expect(await enter(people.bo, line(HEATER, right))).toMatchObject({ ok: true });
  });

  test('waits for a second look, with what was abnormal, not done and corrected, and gets it from another person', async () => {
    const page = await listRounds(people.lee, { site: SITE });
    expect(page.ok && page.value.lines.map(({ standing }) => standing)).toContain('done');
    expect(page).toMatchObject({ value: { mayLook: true, waiting: [{ round, abnormal: 1, corrected: 2, blank: 0 }] } });
    const signer = (await query('SELECT "by" FROM round_signature')).rows[0].by;
    expect(await lookAgain({ ...people.lee, id: signer }, { site: SITE, round })).toEqual({
      ok: false,
      reason: { why: 'own-work' },
    });
    expect(await lookAgain(people.ash, { site: SITE, round })).toMatchObject({ reason: { why: 'not-allowed' } });
    expect(await lookAgain(people.lee, { site: SITE, round, note: 'Cable ordered.' })).toMatchObject({ ok: true });
    expect(await lookAgain(people.max, { site: SITE, round })).toMatchObject({ reason: { why: 'conflict' } });
    const after = await getRound(people.vi, { site: SITE, round });
    expect(after).toMatchObject({
      value: { round: { secondLook: { by: 'lee', note: 'Cable ordered.' } }, mayWalk: false },
    });
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  });

  test('of another site is not found, whoever asks', async () => {
    const stranger: Who = { id: newId(), name: 'Stranger', everywhere: null, at: { elsewhere: 'admin' } };
    expect(await getRound(stranger, { site: SITE, round })).toMatchObject({
      reason: { why: 'not-found', what: 'site' },
    });
    expect(await enter(stranger, line(HEATER, { seen: 'usual' }))).toMatchObject({
      reason: { why: 'not-found', what: 'site' },
    });
  });
});
