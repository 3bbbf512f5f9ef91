import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { storeReadings } from '#data/readings/store-readings';
import { statesInForce } from '#data/states/states';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { beginStateOf } from '#server/states/begin-state';
import { endStateOf } from '#server/states/end-state';
import { getStates } from '#server/states/get-states';
import { listStates } from '#server/states/list-states';
import { authoriseState, lookAfterState } from '#server/states/note-state';
import { signSecond } from '#server/states/sign-second';
import { beginRequest, endRequest } from '#shape/states/requests';
import { airBlower, heater, plan } from '../../_support/build-equipment';
import { sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const PLACE = { site: 'harbour', system: 'tank-1' };
let siteId = '';
let meter = '';
let ada: Who;
let ben: Who;
let lea: Who;

const begin = (who: Who, state: string) =>
  beginStateOf(who, beginRequest.parse({ ...PLACE, entry: newId(), state, lasts: '60', unit: 'minutes' }));
const end = (who: Who, run: string, more: object = {}) =>
  endStateOf(who, endRequest.parse({ ...PLACE, run, entry: newId(), ...more }));
const reads = (value: number) => {
  const at = now();
  return storeReadings(siteId, [{ sensorId: meter, at, value, quality: 'good', origin: 'device' }], { receivedAt: at });
};
const runOf = async () => (await statesInForce(siteId))[0]?.run ?? '';
const listed = async (who: Who) => {
  const page = await listStates(who, { site: 'harbour' });
  if (!page.ok) throw new Error('no page');
  return page.value;
};

beforeAll(async () => {
  const regulation = { kind: 'always', by: 'controller' } as const;
  const states = (['feeding', 'treatment', 'ozone-work'] as const).map((state) => ({
    ...{ state, by: 'controller', then: 'off' as const },
  })) as { state: 'feeding'; by: 'controller'; then: 'off' }[];
  const small = smallSystem();
  await keep(
    smallFacility({
      ...small,
      equipment: [
        ...small.equipment.filter(({ type }) => type !== 'air-blower'),
        airBlower({
          key: 'air',
          name: 'Air',
          tank: 'display',
          stones: [{ tank: 'display', count: 2 }],
          wattsRange: { minW: 20, maxW: 40 },
          plan: plan({ states, regulation }),
        }),
        heater({ key: 'ozone', name: 'Ozone', type: 'ozone', tank: 'display', plan: plan({ regulation }) }),
      ],
      sensors: [
        ...small.sensors,
        sensor({ key: 'air-watts', name: 'Air meter', quantity: 'watts', equipment: 'air', tank: undefined }),
      ],
    }),
  );
  ({ siteId } = await stored('harbour'));
  meter = String((await query(`SELECT id FROM sensor WHERE key = 'air-watts'`)).rows[0]?.id);
  ada = await letIn(query, siteId, 'harbour', 'Ada', 'aquarist');
  ben = await letIn(query, siteId, 'harbour', 'Ben', 'aquarist');
  lea = await letIn(query, siteId, 'harbour', 'Lea', 'lead');
});

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM state_event; DELETE FROM state_open;
    DELETE FROM signature_given; DELETE FROM signature_asked; DELETE FROM reading; DELETE FROM reading_latest`);
});

describe('the end of a state', () => {
  test('is refused while a reading contradicts, whatever is said to have been seen, and kept with its reason despite it', async () => {
    await begin(ada, 'feeding');
    await reads(0);
    const run = await runOf();
    expect(await end(ada, run, { 'seen:watts.air': 'yes' })).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'proof.watts.air' }] },
    });
    expect(await runOf()).toBe(run);
    expect(await end(ada, run, { 'despite:watts.air': 'its meter is unplugged' })).toMatchObject({ ok: true });
    const [row] = (await query(`SELECT detail FROM state_event WHERE kind = 'ended'`)).rows;
    expect(row?.detail.proofs).toEqual([{ key: 'watts.air', how: 'despite', value: 0, why: 'its meter is unplugged' }]);
  });

  test('needs no word where a reading shows it, and somebody to have looked where none does', async () => {
    await begin(ada, 'feeding');
    const run = await runOf();
    expect(await end(ada, run)).toMatchObject({ reason: { faults: [{ path: 'proof.watts.air' }] } });
    await reads(31);
    const page = await getStates(ada, PLACE);
    expect(page).toMatchObject({
      value: { lines: [{ proofs: [{ proved: { says: 'shown' } }] }], asked: [{ key: 'air' }] },
    });
    expect(await end(ada, run)).toMatchObject({ ok: true });
  });
});

describe('work on ozone', () => {
  const SEEN = { 'seen:watts.air': 'yes', 'seen:ozone.ozone': 'yes', 'seen:oxidant': 'yes', note: 'dose as before' };

  test('is signed by a second person, never by whoever did it, and once', async () => {
    await begin(ada, 'ozone-work');
    expect(await end(ada, await runOf(), SEEN)).toMatchObject({ ok: true });
    const [asked] = (await listed(ada)).seconds;
    expect(asked).toMatchObject({ kind: 'ozone-return', by: 'Ada', isOwn: true, objected: null });
    const sign = (who: Who, isRight = true) =>
      signSecond(who, { site: 'harbour', asked: asked?.asked ?? '', isRight, note: 'valve and dose looked at' });
    expect(await sign(ada)).toMatchObject({ reason: { why: 'conflict' } });
    const both = await Promise.all([sign(ben), sign(lea)]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect((await listed(ben)).seconds).toMatchObject([
      { objected: null, signed: { note: 'valve and dose looked at' } },
    ]);
    // Nor by way of the database.
    const other = newId();
    await query(
      `INSERT INTO signature_asked (site_id, id, kind, about, at, by) VALUES ($1, $2, 'ozone-return', $2, now(), 'a')`,
      [siteId, other],
    );
    await expect(
      query(
        `INSERT INTO signature_given (site_id, asked_id, at, by, is_right, note) VALUES ($1, $2, now(), 'a', true, '')`,
        [siteId, other],
      ),
    ).rejects.toThrow('somebody else');
  });

  test('is watched through the shifts after it, with looks that are kept', async () => {
    await begin(ada, 'ozone-work');
    const run = await runOf();
    await end(ada, run, SEEN);
    const [watch] = (await listed(ben)).watches;
    expect(watch).toMatchObject({ run, title: 'after ozone came back', isLate: false, looks: [] });
    expect(Date.parse(watch?.until ?? '') - now().getTime()).toBeGreaterThan(6 * 3_600_000);
    const look = { ...PLACE, run, entry: newId(), note: 'breathing as usual' };
    expect(await lookAfterState(ben, look)).toMatchObject({ ok: true });
    expect(await lookAfterState(ben, look)).toMatchObject({ ok: true });
    expect((await listed(ben)).watches[0]?.looks).toMatchObject([{ by: 'Ben', note: 'breathing as usual' }]);
  });
});

describe('a treatment', () => {
  test('goes on from day to day on the word of a lead', async () => {
    await begin(ada, 'treatment');
    const run = await runOf();
    const yesterday = `now() - interval '25 hours'`;
    await query(`UPDATE state_open SET begun_at = ${yesterday}, until = now() + interval '3 days'`);
    expect((await listed(lea)).lines[0]?.authority).toMatchObject({ isOver: true });
    const leave = { ...PLACE, run, entry: newId() };
    expect(await authoriseState(ada, leave)).toMatchObject({ reason: { why: 'not-allowed' } });
    expect(await authoriseState(lea, leave)).toMatchObject({ ok: true });
    expect((await listed(lea)).lines[0]?.authority).toMatchObject({ isOver: false });
  });
});
