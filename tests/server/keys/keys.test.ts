import { beforeEach, expect, test } from 'vitest';
import { handKey, handKeyShape } from '#server/keys/hand-key';
import { listKeys } from '#server/keys/list-keys';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { type AlarmSite, alarmSite, withAlarms } from '../alarms/alarm-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;
beforeEach(async () => {
  await anew();
  site = await alarmSite(query, withAlarms([]));
});

test('a key goes from hand to hand and back to its place, and all of it stays', async () => {
  const robin = await site.member('Robin', 'aquarist');
  const lee = await site.member('Lee', 'lead');
  const hand = (key: string, to: { holder?: string; place?: string }) =>
    handKey(robin, handKeyShape.parse({ site: site.siteKey, key, ...to }));
  expect(await hand('Pump room', { holder: lee.id })).toMatchObject({ ok: true });
  expect(await hand('Back gate', { place: 'tin at the gate' })).toMatchObject({ ok: true });
  expect(await hand('pump room', { holder: robin.id })).toMatchObject({ ok: true });
  const stranger = '019ac000-0000-7000-8000-000000000000';
  expect(await hand('Pump room', { holder: stranger })).toMatchObject({ ok: false, reason: { why: 'not-found' } });
  const listed = await listKeys(robin, { site: site.siteKey });
  expect(listed.ok && listed.value.keys.map(({ key, holder, place }) => [key, holder, place])).toEqual([
    ['Back gate', null, 'tin at the gate'],
    ['pump room', 'Robin', null],
  ]);
  expect((await query('SELECT 1 FROM key_handed')).rows).toHaveLength(3);
  await expect(query('DELETE FROM key_handed')).rejects.toThrow();
  const vic = await site.member('Vic', 'viewer');
  expect(await listKeys(vic, { site: site.siteKey })).toMatchObject({ ok: false });
});

test('what would open a lock without a key is refused, and the field is named', () => {
  const asked = (given: object) => handKeyShape.safeParse({ site: 'a', key: 'Pump room', ...given });
  expect(asked({ place: 'box, 4711' }).error?.issues).toMatchObject([{ path: ['place'] }]);
  expect(asked({ key: 'gate PIN 12', place: 'tin' }).error?.issues).toMatchObject([{ path: ['key'] }]);
  expect(asked({}).error?.issues).toMatchObject([{ path: ['place'] }]);
});
