import sharp from 'sharp';
import { beforeAll, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { getAlarm } from '#server/alarms/get-alarm';
import { judgeSite } from '#server/alarms/judge-site';
import { nearRoundEntries } from '#data/incidents/near-rounds';
import type { Who } from '#server/gate/who';
import { beginRound } from '#server/rounds/begin-round';
import { enter } from '#server/rounds/enter';
import { getRound } from '#server/rounds/get-round';
import { addPhotoShape, addPhotoTo } from '#server/rounds/photos/add-photo';
import { enterRequest } from '#shape/rounds/requests';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';

let siteId = '';
let round = '';
let ash: Who;

beforeAll(async () => {
  const { facility, due } = siteWithRoundDue();
  await keep(facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  ash = await letIn(query, siteId, SITE, 'ash', 'aquarist');
  const begun = await beginRound(ash, { site: SITE, slot: 'morning', due });
  round = begun.ok ? begun.value.round : '';
});

test('a number that somebody reads beyond the limit of an alarm raises it after its delay, told as read by them', async () => {
  const typed = {
    site: SITE,
    round,
    check: 'tank-1/sensor/display-temperature',
    entry: newId(),
    number: '27,4',
    sure: 'yes',
  };
  expect(await enter(ash, enterRequest.parse(typed))).toMatchObject({ ok: true });
  await judgeSite(siteId, new Date());
  const raised = async () => (await query('SELECT id, value FROM alarm_occurrence')).rows;
  expect(await raised()).toEqual([]);
  // Its delay is a minute.
  await judgeSite(siteId, new Date(Date.now() + 61_000));
  const [alarm, ...more] = await raised();
  expect([alarm?.value, more.length]).toEqual([27.4, 0]);
  const page = await getAlarm(ash, { site: SITE, occurrence: alarm?.id });
  expect(page.ok && page.value.log[0]).toMatchObject({ what: 'began', value: 27.4, by: 'ash' });
});

test('a photo that is added on the page goes with its entry, and is none where it cannot be read', async () => {
  const check = 'tank-1/system/floor';
  const entry = newId();
  expect(await enter(ash, enterRequest.parse({ site: SITE, round, check, entry, seen: 'usual' }))).toMatchObject({
    ok: true,
  });
  const picture = async (bytes: Uint8Array) =>
    await addPhotoTo(
      ash,
      addPhotoShape.parse({ site: SITE, round, check, entry, photo: newId(), picture: { name: 'a', bytes } }),
    );
  const dark = { width: 40, height: 30, channels: 3, background: '#123' } as const;
  expect(await picture(await sharp({ create: dark }).jpeg().toBuffer())).toMatchObject({ value: { round } });
  expect(await picture(Buffer.from('none'))).toMatchObject({ reason: { why: 'invalid' } });
  const page = await getRound(ash, { site: SITE, round });
  const line = page.ok && page.value.places.flatMap(({ lines }) => lines).find((one) => one.check.key === check);
  const photos = line ? line.entries.flatMap((one) => one.photos) : [];
  expect(photos).toHaveLength(1);
  const near = { siteId, systemId: null, from: new Date(Date.now() - 60_000), to: new Date(Date.now() + 60_000) };
  expect((await nearRoundEntries(near)).find(({ id }) => id === entry)?.photos).toEqual(photos);
  // On a line that asks for one the photo makes the entry, and what is none makes nothing.
  const first = {
    ...addPhotoShape.parse({
      site: SITE,
      round,
      check,
      entry: newId(),
      photo: newId(),
      first: 'yes',
      picture: { name: 'a', bytes: Buffer.from('none') },
    }),
  };
  expect(await addPhotoTo(ash, first)).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'picture' }] } });
});
