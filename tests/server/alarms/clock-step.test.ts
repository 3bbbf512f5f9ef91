import { expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { alarmSite, always, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();

test('a clock that is set back an hour and forward again misses no alarm and raises none twice', async () => {
  const site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  const kinds = async () => (await site.events()).map(({ kind }) => kind).filter((kind) => kind !== 'escalated');
  await site.judge(0);
  await site.send([[10, 27]]);
  await site.judge(11);
  // Set back: what comes now is older than the newest held to, and the alarm goes on.
  await site.send([[-3580, 27]]);
  await site.judge(-3579);
  await site.judge(-3000);
  expect(await kinds()).toEqual(['raised']);
  // Right again: it returns, and is raised anew.
  await site.send([[600, 25]]);
  await site.judge(601);
  await site.send([[900, 27]]);
  await site.judge(901);
  expect(await kinds()).toEqual(['raised', 'returned', 'raised']);
  expect(await site.calls()).toHaveLength(2);
});
