import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ItemAnswer } from '#core/rounds/outbox';
import type { WalkPack } from '#core/rounds/pack';
import { checksOf } from '#core/rounds/sheet';
import { newId } from '#data/new-id';
import { verifyChain } from '#data/records/verify-chain';
import type { Who } from '#server/gate/who';
import { getRound } from '#server/rounds/get-round';
import { showPhoto } from '#server/rounds/photos/show-photo';
import { takePhoto } from '#server/rounds/photos/take-photo';
import { packWalk } from '#server/rounds/sync/pack-walk';
import { sync, syncShape } from '#server/rounds/sync/sync';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
const FLOOR = 'tank-1/system/floor';
const WARMTH = 'tank-1/sensor/display-temperature';
const HOUR = 3_600_000;
let siteId = '';
let due = '';
let pack: WalkPack;
const people: Record<'ash' | 'bo' | 'vi', Who> = {} as never;

beforeAll(async () => {
  const given = siteWithRoundDue();
  due = given.due;
  await keep(given.facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  for (const [name, role] of [
    ['ash', 'aquarist'],
    ['bo', 'aquarist'],
    ['vi', 'viewer'],
  ] as const)
    people[name] = await letIn(query, siteId, SITE, name, role);
  const packed = await packWalk(people.ash, { site: SITE });
  if (!packed.ok) throw new Error(JSON.stringify(packed.reason));
  pack = packed.value;
});

/** A telephone: it names the round by an id of its own, and its clock may be off. */
function phone(who: Who, clockOffMs = 0) {
  const walk = { round: newId(), slot: 'morning', due, name: 'Morning' };
  const clock = () => Date.now() + clockOffMs;
  const ago = (ms: number) => new Date(clock() - ms).toISOString();
  const item = (key: string, typed: object, agoMs: number, on: object = walk) => {
    const line = pack.walks
      .flatMap(({ places }) => places.flatMap(({ checks }) => checks))
      .find((one) => one.key === key);
    return { id: newId(), kind: 'entry', madeAt: ago(agoMs), walk: on, line, typed };
  };
  const send = async (items: object[], as = who): Promise<ItemAnswer[] | string> => {
    const answer = await sync(as, syncShape.parse({ site: SITE, account: who.id, sentAt: ago(0), items }));
    return answer.ok ? answer.value.answers : answer.reason.why;
  };
  const sign = (agoMs: number) => ({ id: newId(), kind: 'sign', madeAt: ago(agoMs), walk });
  return { walk, ago, item, send, sign };
}

const count = async (sql: string) => Number((await query(`SELECT count(*) FROM ${sql}`)).rows[0].count);

describe('two telephones that walk one round out of reach', () => {
  test('send both, sent twice is kept once, and each entry keeps when it was made', async () => {
    const [ash, bo] = [phone(people.ash), phone(people.bo)];
    const first = [ash.item(FLOOR, { seen: 'usual' }, 8 * HOUR), ash.item(WARMTH, { number: '25,1' }, 7 * HOUR)];
    const second = [bo.item(FLOOR, { seen: 'other', note: 'wet' }, 6 * HOUR)];
    const before = await count('round_entry');
    expect(await ash.send(first)).toMatchObject([{ outcome: 'stored' }, { outcome: 'stored' }]);
    expect(await ash.send(first)).toMatchObject([{ outcome: 'repeat' }, { outcome: 'repeat' }]);
    expect(await bo.send(second)).toMatchObject([{ outcome: 'conflict', said: expect.stringContaining('both stand') }]);
    expect(await count('round_entry')).toBe(before + first.length + second.length);
    expect(await count('round WHERE slot_id IS NOT NULL')).toBe(1);
    const { rows } = await query('SELECT at FROM round_entry WHERE id = $1', [first[0]?.id]);
    expect(rows[0].at.toISOString()).toBe(first[0]?.madeAt);
    expect(await count(`reading WHERE value = 25.1`)).toBe(1);
    expect(await count("record WHERE kind = 'round-entry-beside'")).toBe(1);
  });

  test('are told apart by who is signed in: nobody sends what another entered', async () => {
    const ash = phone(people.ash);
    expect(await ash.send([ash.item(FLOOR, { seen: 'usual' }, 0)], people.bo)).toBe('conflict');
    expect(
      await sync(people.vi, syncShape.parse({ site: SITE, account: people.vi.id, sentAt: due, items: [] })),
    ).toMatchObject({
      reason: { why: 'not-allowed' },
    });
  });

  test('have clocks that are off: it is noted, and nothing is from the time to come', async () => {
    const fast = phone(people.ash, 2 * HOUR);
    const one = fast.item(FLOOR, { seen: 'usual' }, 0);
    await fast.send([one]);
    const { rows } = await query('SELECT at <= recorded_at AS past, clock_off_s FROM round_entry WHERE id = $1', [
      one.id,
    ]);
    expect(rows[0].past).toBe(true);
    expect(rows[0].clock_off_s).toBeCloseTo(7200, -1);
  });

  test('lose no entry whose line is gone, or whose whole round is: it brings its line along', async () => {
    const ash = phone(people.ash);
    const gone = {
      ...ash.item(FLOOR, { seen: 'usual' }, HOUR),
      line: { ...pack.walks[0]?.places[0]?.checks[0], kind: 'text', key: 'tank-1/gone' },
      typed: { text: 'drips' },
    };
    const nowhere = { ...ash.walk, round: newId(), slot: 'no-such-slot', name: 'Old evening' };
    expect(await ash.send([gone, ash.item(FLOOR, { seen: 'usual' }, HOUR, nowhere)])).toMatchObject([
      { outcome: 'stored' },
      { outcome: 'stored' },
    ]);
    const page = await getRound(people.ash, { site: SITE, round: nowhere.round });
    expect(page.ok && page.value.places.map(({ lines }) => lines.map(({ check }) => check.key))).toEqual([[FLOOR]]);
  });

  test('call for help once, however late and however often it is sent, with no round to it yet and none begun by it', async () => {
    const ash = phone(people.ash);
    const help = { system: 'tank-1', what: 'Smell of burning', where: 'Pump room' };
    const call = {
      id: newId(),
      kind: 'call',
      madeAt: ash.ago(3 * HOUR),
      walk: { ...ash.walk, slot: 'besides', due: null },
    };
    const before = await count('round');
    expect(await ash.send([{ ...call, ...help }])).toMatchObject([
      { outcome: 'stored', said: expect.stringContaining('nobody could be told') },
    ]);
    expect(await ash.send([{ ...call, ...help }])).toMatchObject([{ outcome: 'repeat' }]);
    expect(await count('round')).toBe(before);
    const { rows } = await query('SELECT began_at, definition FROM alarm_occurrence');
    expect(rows).toMatchObject([
      { began_at: new Date(call.madeAt), definition: { name: help.what, on: { by: people.ash.id } } },
    ]);
    expect(await ash.send([{ ...call, ...help, id: newId(), system: 'gone' }])).toMatchObject([
      { outcome: 'refused', said: expect.stringContaining('Nobody was called') },
    ]);
  });

  test('say what is wrong with one entry and take in those after it', async () => {
    const ash = phone(people.ash);
    const answers = await ash.send([ash.item(WARMTH, { number: 'warm' }, 0), ash.item(FLOOR, { seen: 'usual' }, 0)]);
    expect(answers).toMatchObject([
      { outcome: 'refused', said: expect.stringContaining('number') },
      { outcome: 'conflict' },
    ]);
  });

  test('sign at the time it was signed, once every line has an entry, and what comes after stands beside it', async () => {
    const ash = phone(people.ash);
    expect(await ash.send([ash.sign(HOUR)])).toMatchObject([{ outcome: 'refused' }]);
    const { rows } = await query('SELECT id, sheet FROM round WHERE slot_id IS NOT NULL');
    const rest = checksOf(rows[0].sheet).map(({ key }) => ash.item(key, { notDone: 'No time' }, HOUR));
    const sign = ash.sign(HOUR / 2);
    for (let from = 0; from < rest.length; from += 40) await ash.send(rest.slice(from, from + 40));
    expect(await ash.send([sign])).toMatchObject([{ outcome: 'stored' }]);
    const signed = await query("SELECT at FROM round_signature WHERE kind = 'signed'");
    expect(signed.rows.map(({ at }) => at.toISOString())).toEqual([sign.madeAt]);
    const late = phone(people.bo);
    expect(await late.send([late.item(FLOOR, { seen: 'usual' }, 2 * HOUR)])).toMatchObject([{ outcome: 'conflict' }]);
  });
});

describe('a photo', () => {
  test('is kept once, small, upright and without what the camera wrote of place; another person of the site sees it', async () => {
    const ash = phone(people.ash);
    const entry = ash.item(FLOOR, { seen: 'usual' }, 0);
    await ash.send([entry]);
    const body = await sharp({ create: { width: 3000, height: 1500, channels: 3, background: '#456' } })
      .withExif({ IFD3: { GPSLatitude: '51/1 30/1 0/1' } })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    expect((await sharp(body).metadata()).exif).toBeDefined();
    const sent = { site: SITE, photo: newId(), entry: entry.id, takenAt: due, body };
    expect(await takePhoto(people.ash, sent)).toMatchObject({ value: { outcome: 'stored' } });
    expect(await takePhoto(people.ash, sent)).toMatchObject({ value: { outcome: 'repeat' } });
    const shown = await showPhoto(people.vi, { site: SITE, photo: sent.photo });
    const meta = await sharp(shown.ok ? shown.value : new Uint8Array()).metadata();
    expect([meta.format, meta.width, meta.height, meta.exif, meta.orientation]).toEqual([
      'webp',
      800,
      1600,
      undefined,
      undefined,
    ]);
  });

  test.each([
    ['no picture', () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    [
      'a picture of a form that is not taken',
      () =>
        sharp({ create: { width: 2, height: 2, channels: 3, background: '#000' } })
          .gif()
          .toBuffer(),
    ],
  ])('that is %s is refused by its field', async (_, bytes) => {
    const sent = { site: SITE, photo: newId(), entry: newId(), takenAt: due, body: await bytes() };
    expect(await takePhoto(people.ash, sent)).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'photo' }] },
    });
  });
});

test('the record holds, whatever came late', async () => {
  expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
});
