import { beforeAll, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { listWithEntries } from '#data/rounds/with-entries';
import { askSignature } from '#data/states/signatures';
import { endedSince } from '#data/states/watched';
import { noteState } from '#data/states/change-state';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { beginBesides } from '#server/rounds/begin-besides';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { listRounds } from '#server/rounds/list-rounds';
import { lookAgain } from '#server/rounds/look-again';
import { signRound } from '#server/rounds/sign-round';
import { takeBack } from '#server/rounds/take-back';
import { secondLines } from '#server/states/second-lines';
import { signSecond } from '#server/states/sign-second';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
const people: Record<'ash' | 'bo' | 'lee' | 'max', Who> = {} as never;
let siteId = '';

beforeAll(async () => {
  await keep(siteWithRoundDue().facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  for (const [name, role] of [
    ['ash', 'aquarist'],
    ['bo', 'aquarist'],
    ['lee', 'lead'],
    ['max', 'manager'],
  ] as const)
    people[name] = await letIn(query, siteId, SITE, name, role);
});

const kept = async () => (await query('SELECT what, reason FROM taken_back ORDER BY at')).rows;

async function signedRound(): Promise<string> {
  const begun = await beginBesides(people.ash, { site: SITE, slot: 'morning', entry: newId() });
  const round = begun.ok ? begun.value.round : '';
  const [found] = await listWithEntries(siteId, [round]);
  for (const [index] of (found?.sheet.places ?? []).entries())
    await enterRest(people.ash, { site: SITE, round, place: index + 1, notDone: 'Power cut' });
  expect(await signRound(people.ash, { site: SITE, round })).toMatchObject({ ok: true });
  return round;
}

test('a second look is taken back by whoever gave it or a lead, stays with its reason, and the round waits for another', async () => {
  const round = await signedRound();
  const waits = async () => {
    const page = await listRounds(people.lee, { site: SITE });
    return page.ok && page.value.waiting.some((one) => one.round === round);
  };
  await lookAgain(people.lee, { site: SITE, round, note: 'All well.' });
  expect(await waits()).toBe(false);
  const page = await getRound(people.lee, { site: SITE, round });
  const about = (page.ok && page.value.round.secondLook?.id) || '';
  const request = { site: SITE, what: 'second-look' as const, about, reason: 'It was the wrong round.' };
  expect(await takeBack(people.bo, request)).toMatchObject({ reason: { why: 'conflict' } });
  expect(await takeBack(people.lee, request)).toMatchObject({ ok: true });
  expect(await takeBack(people.lee, request)).toMatchObject({ ok: true });
  expect(await takeBack(people.max, request)).toMatchObject({ reason: { why: 'conflict' } });
  expect(await kept()).toEqual([{ what: 'second-look', reason: 'It was the wrong round.' }]);
  expect(await waits()).toBe(true);
  const after = await getRound(people.lee, { site: SITE, round });
  expect(after).toMatchObject({
    value: {
      round: {
        secondLook: null,
        looksTaken: [{ by: 'lee', note: 'All well.', taken: { by: 'lee', reason: 'It was the wrong round.' } }],
      },
    },
  });
  // Whoever took theirs back may look again.
  expect(await lookAgain(people.lee, { site: SITE, round })).toMatchObject({ ok: true });
  expect(await waits()).toBe(false);
  await expect(query("UPDATE taken_back SET reason = 'x'")).rejects.toThrow();
  const { rows } = await query("SELECT body FROM record WHERE kind = 'look-taken-back'");
  expect(rows).toMatchObject([{ body: { by: people.lee.id, round, what: 'second-look' } }]);
});

test('a look after a state is taken back as well', async () => {
  const { systemIds } = await stored(SITE);
  const systemId = systemIds.get('tank-1') ?? '';
  const [run, look] = [newId(), newId()];
  const act = { run, systemId, state: 'treatment' as const, at: now(), by: people.ash.id, note: 'Gills calm.' };
  await inTransaction(async (tx) => {
    await noteState(tx, siteId, { ...act, id: look, kind: 'looked' });
    await query(
      `INSERT INTO state_event (site_id, id, run_id, system_id, state, kind, at, by) VALUES ('${siteId}', '${newId()}', '${run}', '${systemId}', 'treatment', 'ended', now() - interval '1 hour', 'local')`,
    );
  });
  const looks = async () =>
    (await endedSince(siteId, new Date(0))).flatMap((one) => one.looks.map(({ taken }) => taken));
  expect(await looks()).toEqual([null]);
  const request = { site: SITE, what: 'state-look' as const, about: look, reason: 'I looked at the other tank.' };
  expect(await takeBack(people.ash, request)).toMatchObject({ ok: true });
  expect(await looks()).toMatchObject([{ by: people.ash.id, reason: 'I looked at the other tank.' }]);
});

test('a second signature is taken back, whatever it found, stays to be seen and is wanted again', async () => {
  const { systemIds, facility } = await stored(SITE);
  const asked = newId();
  const row = {
    id: asked,
    systemId: systemIds.get('tank-1') ?? '',
    kind: 'ozone-return' as const,
    about: newId(),
    at: now(),
    by: people.ash.id,
    note: null,
  };
  await inTransaction((tx) => askSignature(tx, siteId, row));
  const objection = { site: SITE, asked, isRight: false, note: 'The dryer is off.' };
  expect(await signSecond(people.bo, objection)).toMatchObject({ ok: true });
  const back = { site: SITE, what: 'second-signature' as const, about: asked, reason: 'It was on: I misread it.' };
  expect(await takeBack(people.bo, back)).toMatchObject({ ok: true });
  const lines = await secondLines({ id: siteId }, { facility, systemIds }, people.bo, now());
  expect(lines.map(({ objected, taken }) => [objected?.note ?? null, taken?.reason ?? null])).toEqual([
    ['The dryer is off.', 'It was on: I misread it.'],
    [null, null],
  ]);
  const again = { site: SITE, asked: lines[1]?.asked ?? '', isRight: true, note: 'Seen.' };
  expect(await signSecond(people.ash, again)).toMatchObject({ reason: { why: 'conflict' } });
  expect(await signSecond(people.bo, again)).toMatchObject({ ok: true });
  // One that found it right stands there as well, and is taken back by a lead; then it is wanted once more.
  const standing = async () =>
    (await secondLines({ id: siteId }, { facility, systemIds }, people.bo, now())).map(
      ({ objected, signed, taken }) => [objected?.note ?? signed?.note ?? null, signed !== null, taken?.by ?? null],
    );
  const first = ['The dryer is off.', false, 'bo'];
  expect(await standing()).toEqual([first, ['Seen.', true, null]]);
  const right = { ...back, about: again.asked, reason: 'The wrong line was looked at.' };
  expect(await takeBack(people.lee, right)).toMatchObject({ ok: true });
  expect(await standing()).toEqual([first, ['Seen.', true, 'lee'], [null, false, null]]);
  expect(await takeBack(people.bo, { ...back, about: newId() })).toMatchObject({ reason: { why: 'not-found' } });
});
