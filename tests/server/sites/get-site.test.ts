import { ok, refused } from '#core/result';
import { LOCAL_PERSON } from '#server/gate/who';
import { getSite } from '#server/sites/get-site';
import { beforeAll, expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { smallFacility } from '../../_support/small-facility';
import { keep } from '../../_support/stored';

freshDatabase();

const facility = smallFacility();
const { key, name, zone } = facility.site;

beforeAll(async () => {
  await keep(facility);
});

test('a person is told of a site what they may do there, and nothing of a site they may not see', async () => {
  const viewer = { ...LOCAL_PERSON, everywhere: null, at: { [key]: 'viewer' as const } };
  expect(await getSite(viewer, { site: key })).toEqual(ok({ key, name, zone, allowed: ['see'], openAlarms: 0 }));
  const stranger = { ...LOCAL_PERSON, everywhere: null, at: { elsewhere: 'admin' as const } };
  const absent = refused({ why: 'not-found', what: 'site' });
  expect(await getSite(stranger, { site: key })).toEqual(absent);
  expect(await getSite(stranger, { site: 'nowhere' })).toEqual(absent);
});
