import { beforeEach, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { addChange, addChangeEvent, findRotaIds, type NewChange } from '#data/rota/changes';
import { inTransaction } from '#data/transaction';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { after, alarmSite, type AlarmSite, always, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;

beforeEach(async () => {
  await anew();
  await query('SET session_replication_role = replica; DELETE FROM rota_change_event; DELETE FROM rota_change');
  await query('DELETE FROM membership');
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  site = await alarmSite(query, withAlarms([warm()], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  await site.member('Sam', 'aquarist', 'sam');
  await site.member('Lee', 'lead');
  await site.judge(0);
});

/** Has a change approved, and perhaps taken back; the day is that on which the alarms of these tests are raised. */
async function change(given: { leave: true } | { takes: string }, events = ['approved'] as const as readonly string[]) {
  await inTransaction(async (tx) => {
    const { people, shifts } = await findRotaIds(tx, site.siteId);
    const id = newId();
    const asked = { id, personId: people.get('robin') ?? '', why: null, askedBy: 'local', askedAt: after(0) };
    const swap = {
      takesId: people.get('sam') ?? '',
      shiftId: shifts.get('always-robin') ?? '',
      shiftDate: '2026-03-04',
    };
    const made: NewChange =
      'leave' in given
        ? { ...asked, kind: 'leave', fromAt: after(0), toAt: after(3600) }
        : { ...asked, kind: 'swap', ...swap, backShiftId: null, backDate: null };
    await addChange(tx, site.siteId, made);
    for (const [place, kind] of events.entries())
      await addChangeEvent(tx, site.siteId, {
        changeId: id,
        number: place + 1,
        kind: kind as 'approved',
        by: 'local',
        at: after(place),
        why: null,
      });
  });
}

async function called(): Promise<string[]> {
  await site.send([[10, 27]]);
  await site.judge(11);
  return (await site.calls()).map(({ name, why }) => `${name} ${why}`);
}

test('an alarm in a turn that was swapped calls who took it, and not who gave it', async () => {
  await change({ takes: 'sam' }, ['agreed', 'approved']);
  expect(await called()).toEqual(['Sam on-call']);
});

test('a swap that was not approved, or was taken back, changes nobody who is called', async () => {
  await change({ takes: 'sam' }, ['agreed']);
  await change({ takes: 'sam' }, ['agreed', 'approved', 'taken-back']);
  expect(await called()).toEqual(['Robin on-call']);
});

test('an alarm while the only one on is on leave calls everyone of the last step at once', async () => {
  await change({ leave: true });
  expect(await called()).toEqual(['Lee nobody-on']);
});

test('after the leave, whoever is back is called again', async () => {
  await change({ leave: true });
  await site.judge(3599);
  await site.send([[3601, 27]]);
  await site.judge(3602);
  expect((await site.calls()).map(({ name, why }) => `${name} ${why}`)).toEqual(['Robin on-call']);
});
