import { beforeAll, expect, test } from 'vitest';
import type { WalkPack } from '#core/rounds/pack';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { sheetOfSlot, slotOfSheet } from '#core/rounds/walk-name';
import { wallClock } from '#core/time/zone';
import { newId } from '#data/new-id';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { getRound } from '#server/rounds/get-round';
import { listRounds } from '#server/rounds/list-rounds';
import { listSheets } from '#server/rounds/sheets/list-sheets';
import { writeSheet } from '#server/rounds/sheets/write-sheet';
import { packWalk } from '#server/rounds/sync/pack-walk';
import { sync, syncShape } from '#server/rounds/sync/sync';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
const MINUTE_MS = 60_000;
let lead: Who;
let ash: Who;
let siteId = '';

/** A sheet of the site's own, due in some minutes each day. */
function weir(): RoundSheet {
  const { date, time } = wallClock('Europe/London', now().getTime() + 5 * MINUTE_MS);
  return {
    key: 'weir',
    name: 'Weir',
    schedule: { rule: 'FREQ=DAILY', from: date, times: [{ at: time }] },
    signedBy: 'lead',
    lines: [{ kind: 'described', key: 'tank-1/system/floor', what: 'Floor dry, drain clear' }],
  };
}

beforeAll(async () => {
  await keep(siteWithRoundDue().facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  lead = await letIn(query, siteId, SITE, 'Lee', 'lead');
  ash = await letIn(query, siteId, SITE, 'Ash', 'aquarist');
  expect(await writeSheet(lead, { site: SITE, body: weir(), put: 'yes' })).toMatchObject({ ok: true });
});

async function packed(who: Who, sheet = 'weir'): Promise<WalkPack['walks'][number]> {
  const pack = await packWalk(who, { site: SITE });
  const walk = pack.ok ? pack.value.walks.find(({ slot }) => sheetOfSlot(slot) === sheet) : undefined;
  if (!walk) throw new Error('the sheet does not come along');
  return walk;
}

/** What a telephone sends that walked it out of reach, under an id of its own. */
async function send(who: Who, walk: WalkPack['walks'][number], round: string, sign = false) {
  const named = { round, slot: walk.slot, due: walk.due, name: walk.name };
  const made = { madeAt: now().toISOString(), walk: named };
  const line = walk.places[0]?.checks[0];
  const entry = { ...made, id: newId(), kind: 'entry', line, typed: { seen: 'usual' } };
  const items = sign ? [{ ...made, id: newId(), kind: 'sign' }] : [entry];
  const body = syncShape.parse({ site: SITE, account: who.id, sentAt: now().toISOString(), items });
  const answer = await sync(who, body);
  return answer.ok ? answer.value.answers.map(({ outcome }) => outcome) : answer.reason.why;
}

test('a sheet that the site keeps is walked out of reach: two make one round of it, and who may sign it does', async () => {
  const walk = await packed(ash);
  expect(walk.places.flatMap(({ checks }) => checks.map(({ what }) => what))).toEqual(['Floor dry, drain clear']);
  const [first, second] = [newId(), newId()];
  expect(await send(ash, walk, first)).toEqual(['stored']);
  expect(await send(lead, walk, second)).toEqual(['conflict']);
  const { rows } = await query('SELECT id FROM round r WHERE sheet_id IS NOT NULL');
  expect(rows.map(({ id }) => id)).toEqual([first]);
  const there = await getRound(lead, { site: SITE, round: first });
  const entries = there.ok ? there.value.places.flatMap(({ lines }) => lines.flatMap((line) => line.entries)) : [];
  expect(entries).toHaveLength(2);
  // Whoever packs it now finds it begun, with what is on it.
  expect(await packed(ash)).toMatchObject({ round: first, entries: [{}, {}] });
  expect(await send(ash, walk, first, true)).toEqual(['refused']);
  expect(await send(lead, walk, second, true)).toEqual(['stored']);
  const list = await listSheets(lead, { site: SITE });
  expect(list.ok && list.value.sheets.find(({ key }) => key === 'weir')?.open?.dueAt).not.toBe(walk.due);
});

test('one that is gone when it comes is a round besides, and nothing entered is lost', async () => {
  const walk = { ...(await packed(ash)), slot: slotOfSheet('gone') };
  const round = newId();
  expect(await send(ash, walk, round)).toEqual(['stored']);
  const there = await getRound(lead, { site: SITE, round });
  expect(there).toMatchObject({ ok: true, value: { round: { isBesides: true }, places: [{ lines: [{}] }] } });
});

test('of a sheet that two sign, whoever walked it signs first and somebody else second, one of them of its role, each once', async () => {
  const two = { ...weir(), key: 'ozone', name: 'Ozone', secondSignature: true as const };
  expect(await writeSheet(lead, { site: SITE, body: two, put: 'yes' })).toMatchObject({ ok: true });
  const bo = await letIn(query, siteId, SITE, 'Bo', 'aquarist');
  const walk = await packed(ash, 'ozone');
  expect(walk.signing).toEqual({ byTwo: { lines: [], by: 'lead' }, by: 'lead', hasRole: false });
  const round = newId();
  await send(ash, walk, round);
  expect(await send(ash, walk, round, true)).toEqual(['stored']);
  // Sent again it is no second signature, and one of the two has to be a lead.
  expect(await send(ash, walk, round, true)).toEqual(['stored']);
  expect(await send(bo, walk, newId(), true)).toEqual(['refused']);
  const waits = await listRounds(lead, { site: SITE });
  expect(waits.ok && waits.value.lines.find((line) => line.round === round)).toMatchObject({ wantsSecond: true });
  const onPhone = await packed(lead, 'ozone');
  expect(onPhone).toMatchObject({ round, signed: { by: 'Ash', isOwn: false }, signing: { hasRole: true } });
  expect(await send(lead, onPhone, newId(), true)).toEqual(['stored']);
  expect(await send(bo, walk, newId(), true)).toEqual(['refused']);
  const page = await getRound(lead, { site: SITE, round });
  expect(page).toMatchObject({ value: { round: { signed: { by: 'Ash' }, second: { by: 'Lee' }, secondLook: null } } });
  const { rows } = await query("SELECT kind FROM record WHERE kind LIKE 'round-signed%' ORDER BY seq DESC LIMIT 2");
  expect(rows.map(({ kind }) => kind)).toEqual(['round-signed-second', 'round-signed']);
  const pack = await packWalk(ash, { site: SITE });
  expect(pack.ok && pack.value.walks.some((one) => one.round === round)).toBe(false);
});
