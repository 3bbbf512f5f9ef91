import { beforeEach, describe, expect, test } from 'vitest';
import type { Who } from '#server/gate/who';
import { acknowledgeAlarm } from '#server/alarms/acknowledge-alarm';
import { getAlarm } from '#server/alarms/get-alarm';
import { listAlarms } from '#server/alarms/list-alarms';
import { noteAlarm } from '#server/alarms/note-alarm';
import { keep } from '../../_support/stored';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { alarmSite, type AlarmSite, always, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew, ofRecord } = describedSite(query);
let site: AlarmSite;
let robin: Who;
let lee: Who;

beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; UPDATE account SET email = id || $$@gone.example$$');
  site = await alarmSite(query, withAlarms([warm({ escalateAfterMin: 1 })], [always('robin')]));
  robin = await site.member('Robin', 'aquarist', 'robin');
  lee = await site.member('Lee', 'lead');
  await site.judge(0);
  await site.send([[10, 27]]);
  await site.judge(11);
});

const shown = async () => (await site.open()).at(-1)?.id ?? '';
async function press(who: Who, occurrence: string, note?: string) {
  const answer = await acknowledgeAlarm(who, {
    site: site.siteKey,
    occurrence,
    page: 'list',
    ...(note === undefined ? {} : { note }),
  });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer.value;
}

describe('acknowledging', () => {
  test('is of who, when and with which note, ends the calling, and stands in the record', async () => {
    const occurrence = await shown();
    expect(await press(robin, occurrence, 'Lid was shut')).toMatchObject({
      kind: 'first',
      first: { by: 'Robin' },
      newer: null,
    });
    await site.judge(3600);
    expect(await site.calls()).toHaveLength(1);
    expect(await site.open()).toMatchObject([{ active: true, acknowledged: true, next: null }]);
    expect(await ofRecord('alarm-acknowledged')).toMatchObject([{ by: robin.id, occurrence, note: 'Lid was shut' }]);
    await site.send([[3610, 25]]);
    await site.judge(3611);
    expect(await site.open()).toEqual([]);
  });

  test('before somebody could be told leaves nobody waiting for a message', async () => {
    const listed = async () => {
      const answer = await listAlarms(robin, { site: site.siteKey });
      if (!answer.ok) throw new Error(answer.reason.why);
      return answer.value.open.flatMap(({ told }) => told.map(({ names, state }) => `${names.join(' ')} ${state}`));
    };
    expect(await listed()).toEqual(['Robin waiting']);
    await press(lee, await shown());
    expect(await listed()).toEqual(['Robin not-needed']);
  });

  test('by ten at once has one first, and the others are told who', async () => {
    const occurrence = await shown();
    const people = await Promise.all(Array.from({ length: 9 }, (_, i) => site.member(`Person${i}`, 'aquarist')));
    const answers = await Promise.all([lee, ...people].map((who) => press(who, occurrence)));
    expect(answers.filter(({ kind }) => kind === 'first')).toHaveLength(1);
    expect(answers.filter(({ kind }) => kind === 'second')).toHaveLength(9);
    expect(new Set(answers.map(({ first }) => first?.by)).size).toBe(1);
    const kinds = (await site.events()).map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'acknowledged-too')).toHaveLength(9);
  });

  test('twice by the same person is once; what they add is a note', async () => {
    const occurrence = await shown();
    await press(robin, occurrence);
    expect((await press(robin, occurrence)).kind).toBe('again');
    await press(robin, occurrence, 'and the fan is on');
    expect((await site.events()).map(({ kind }) => kind)).toEqual(['raised', 'acknowledged', 'noted']);
  });

  test('of the time that was shown says nothing of one raised since, and that there is one is said', async () => {
    const occurrence = await shown();
    await site.send([
      [20, 25],
      [30, 27],
    ]);
    await site.judge(31);
    const newest = await shown();
    expect(await press(lee, occurrence)).toMatchObject({ kind: 'first', newer: newest });
    expect(await site.open()).toMatchObject([{ id: newest, active: true, acknowledged: false }]);
  });

  test('while it is judged is neither lost nor undone by that', async () => {
    const occurrence = await shown();
    await site.send([[20, 25]]);
    await Promise.all([press(robin, occurrence), site.judge(21)]);
    expect(await site.open()).toEqual([]);
    const kinds = (await site.events()).map(({ kind }) => kind).sort();
    expect(kinds).toEqual(['acknowledged', 'raised', 'returned']);
  });

  test('of an alarm whose definition was retired still counts', async () => {
    const occurrence = await shown();
    await keep(withAlarms([], [always('robin')]));
    await site.judge(12);
    const page = await getAlarm(robin, { site: site.siteKey, occurrence });
    expect(page.ok && page.value.line).toMatchObject({ state: 'returned', endedBy: 'retired', isRetired: true });
    await press(robin, occurrence);
    expect(await site.open()).toEqual([]);
  });

  test('is not for whoever only looks, nor of an alarm elsewhere', async () => {
    const viewer = await site.member('Vic', 'viewer');
    const request = { site: site.siteKey, occurrence: await shown(), page: 'list' as const };
    expect(await acknowledgeAlarm(viewer, request)).toMatchObject({ ok: false, reason: { why: 'not-allowed' } });
    const elsewhere = { ...request, occurrence: site.siteId };
    expect(await acknowledgeAlarm(robin, elsewhere)).toMatchObject({ ok: false, reason: { why: 'not-found' } });
  });
});

describe('what is shown', () => {
  test('is what nobody acknowledged first, then what is active, then what returned; the rest is the past', async () => {
    const first = await shown();
    const lines = async () => {
      const page = await listAlarms(robin, { site: site.siteKey });
      if (!page.ok) throw new Error('no page');
      return page.value;
    };
    expect((await lines()).open).toMatchObject([
      {
        id: first,
        state: 'unacknowledged',
        value: 27,
        latest: { value: 27 },
        told: [{ names: ['Robin'], why: 'on-call', state: 'waiting' }],
      },
    ]);
    await site.send([
      [20, 25],
      [30, 28],
    ]);
    await site.judge(31);
    await press(robin, await shown());
    expect((await lines()).open.map(({ state }) => state)).toEqual(['acknowledged', 'returned']);
    await press(lee, first);
    expect((await lines()).open.map(({ state }) => state)).toEqual(['acknowledged']);
  });

  test('is its whole life, and looking at it changes nothing', async () => {
    const occurrence = await shown();
    await site.judge(80);
    await noteAlarm(lee, { site: site.siteKey, occurrence, note: 'on my way' });
    await press(lee, occurrence);
    const before = await site.events();
    const page = await getAlarm(robin, { site: site.siteKey, occurrence });
    expect(page.ok && page.value.log.map(({ what }) => what).slice(0, 5)).toEqual([
      'began',
      'raised',
      'called',
      'escalated',
      'called',
    ]);
    expect(await site.events()).toEqual(before);
  });
});
