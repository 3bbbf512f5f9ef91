import { expect, test } from 'vitest';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { wallClock } from '#core/time/zone';
import { newId } from '#data/new-id';
import { addEntries } from '#data/rounds/entries';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { LOCAL_PERSON } from '#server/gate/who';
import { getHandover } from '#server/handover/get-handover';
import { getSystem } from '#server/reviews/get-system';
import { beginBesides } from '#server/rounds/begin-besides';
import { beginRound } from '#server/rounds/begin-round';
import { enter } from '#server/rounds/enter';
import { getRound } from '#server/rounds/get-round';
import { listRounds } from '#server/rounds/list-rounds';
import { listSheets } from '#server/rounds/sheets/list-sheets';
import { writeSheet } from '#server/rounds/sheets/write-sheet';
import { signRound } from '#server/rounds/sign-round';
import { enterRequest } from '#shape/rounds/requests';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { keep, stored } from '../../_support/stored';

freshDatabase();
const SITE = 'harbour';
const LINE = 'own/doses/alkali';
const DAY = 86_400_000;

async function begun(): Promise<string> {
  const { date, time } = wallClock('Europe/London', now().getTime() + 300_000);
  const sheet: RoundSheet = {
    ...{ key: 'doses', name: 'Doses' },
    schedule: { rule: 'FREQ=DAILY', from: date, times: [{ at: time }] },
    lines: [{ kind: 'doses', key: 'alkali', what: 'Doses of alkalinity', system: 'tank-1' }],
  };
  expect(await writeSheet(LOCAL_PERSON, { site: SITE, body: sheet, put: 'yes' })).toMatchObject({ ok: true });
  const list = await listSheets(LOCAL_PERSON, { site: SITE });
  const due = list.ok ? (list.value.sheets[0]?.open?.dueAt ?? '') : '';
  const round = await beginRound(LOCAL_PERSON, { site: SITE, sheet: 'doses', due });
  return round.ok ? round.value.round : '';
}

test('doses become a rate: asked about when it is off, beside the line, at the system and on the handover', async () => {
  await keep(siteWithRoundDue().facility);
  const { siteId } = await stored(SITE);
  const round = await begun();
  const before = await beginBesides(LOCAL_PERSON, { site: SITE, slot: 'morning', entry: newId() });
  const older = await addOlder(siteId, before.ok ? before.value.round : '', [10, 11, 10, 9, 10]);
  const system = async () => {
    const page = await getSystem(LOCAL_PERSON, { site: SITE, system: 'tank-1' });
    return page.ok ? page.value.use.map(({ rate }) => rate?.perDay.toFixed(0)) : null;
  };
  expect(older).toBe(5);
  expect(await system()).toEqual(['10']);
  const typed = { site: SITE, round, check: LINE, entry: newId(), number: '40' };
  const asked = await enter(LOCAL_PERSON, enterRequest.parse(typed));
  expect(asked).toMatchObject({ value: { asked: expect.stringMatching(/That is 40 doses a day, more than 2 times/) } });
  const sure = enterRequest.parse({ ...typed, sure: 'yes', note: 'The pump ran on.' });
  expect(await enter(LOCAL_PERSON, sure)).toMatchObject({ value: { asked: null } });
  const page = await getRound(LOCAL_PERSON, { site: SITE, round });
  expect(page.ok && page.value.places[0]?.lines[0]).toMatchObject({ isAbnormal: true, rate: { usual: { to: 20 } } });
  expect(await signRound(LOCAL_PERSON, { site: SITE, round })).toMatchObject({ ok: true });
  const rounds = await listRounds(LOCAL_PERSON, { site: SITE });
  expect(rounds).toMatchObject({ value: { waiting: [{ round, abnormal: 1 }] } });
  expect(await system()).toEqual(['40']);
  const handover = await getHandover(LOCAL_PERSON, { site: SITE });
  expect(handover.ok && handover.value.shown.used).toMatchObject([
    { what: 'Doses of alkalinity', more: '40 doses a day, above 20 doses a day, which is usual', isAbnormal: true },
  ]);
});

/** Doses noted once a day up to yesterday, the latest first. */
async function addOlder(siteId: string, round: string, doses: readonly number[]): Promise<number> {
  const entries = doses.map((many, back) => ({
    ...{ id: newId(), check: LINE, atMs: now().getTime() - (back + 1) * DAY, by: 'local', recordedAt: now() },
    ...{ value: { kind: 'doses' as const, doses: many }, notDone: null, note: null, supersedes: null, reason: null },
  }));
  await inTransaction((tx) => addEntries(tx, siteId, round, entries));
  return entries.length;
}
