import { expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { whatIsWrong } from '../../drill/fault-ledger';
import { after, alarmSite, always, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();

test('whoever counts after the faults drill sees what is missing, missed, raised of nothing and told to nobody', async () => {
  const site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  for (const [atS, value] of [
    [10, 27],
    [20, 25],
  ] as const) {
    await site.send([[atS, value]]);
    await site.judge(atS + 1);
  }
  const [call] = (await query('SELECT id FROM alarm_call')).rows;
  const [warmMs, coolMs] = [after(10).getTime(), after(20).getTime()];
  const answered = new Map([
    [warmMs, 27],
    [coolMs, 25],
  ]);
  const mail = { url: '', taken: [{ from: '', to: [], raw: `Message-ID: <${call.id}@here>` }] };
  const gate = { ...mail, setAway: () => undefined, close: async () => undefined };
  expect(await whatIsWrong(query, site.siteId, gate, { answered, crossings: [warmMs] })).toEqual([]);
  answered.set(coolMs, 26);
  await site.send([[30, 27]]);
  expect(await whatIsWrong(query, site.siteId, { ...gate, taken: [] }, { answered, crossings: [coolMs] })).toEqual([
    '1 readings answered as stored are missing or otherwise',
    '1 alarms were missed',
    '1 alarms were raised of which nothing that was sent tells',
    '1 alarms told nobody',
    '1 batches of readings were held to no alarm',
  ]);
});
