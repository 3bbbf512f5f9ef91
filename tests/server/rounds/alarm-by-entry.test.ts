import { expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { getAlarm } from '#server/alarms/get-alarm';
import { judgeSite } from '#server/alarms/judge-site';
import { beginRound } from '#server/rounds/begin-round';
import { enter } from '#server/rounds/enter';
import { enterRequest } from '#shape/rounds/requests';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';

test('a number that somebody reads beyond the limit of an alarm raises it after its delay, told as read by them', async () => {
  const { facility, due } = siteWithRoundDue();
  await keep(facility);
  const siteId = (await query('SELECT id FROM site')).rows[0].id;
  const ash = await letIn(query, siteId, SITE, 'ash', 'aquarist');
  const begun = await beginRound(ash, { site: SITE, slot: 'morning', due });
  const round = begun.ok ? begun.value.round : '';
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
