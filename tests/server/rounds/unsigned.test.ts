import { beforeAll, describe, expect, test } from 'vitest';
import { newId } from '#data/new-id';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { beginBesides } from '#server/rounds/begin-besides';
import { beginRound } from '#server/rounds/begin-round';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { listRounds } from '#server/rounds/list-rounds';
import { signRound } from '#server/rounds/sign-round';
import { countQueries } from '../../_support/count-queries';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
let ash: Who = LOCAL_PERSON;
let due = '';

beforeAll(async () => {
  const made = siteWithRoundDue();
  ({ due } = made);
  await keep(made.facility);
  const siteId = (await query('SELECT id FROM site')).rows[0].id;
  ash = await letIn(query, siteId, SITE, 'Ash', 'aquarist');
});

const page = async () => {
  const read = await listRounds(ash, { site: SITE });
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  return read.value;
};
const unsigned = async () => (await page()).unsigned.lines.map(({ round }) => round);
const begunNow = async (request: ReturnType<typeof beginRound>): Promise<string> => {
  const begun = await request;
  if (!begun.ok) throw new Error(JSON.stringify(begun.reason));
  return begun.value.round;
};
const besides = () => begunNow(beginBesides(ash, { site: SITE, slot: 'morning', entry: newId() }));

/** The same round as it would be had it been begun so many days earlier; what is begun is never changed in place. */
async function daysAgo(round: string, days: number): Promise<string> {
  const id = newId();
  await query(
    `INSERT INTO round (site_id, id, slot_id, name, due_at, begun_at, begun_by, sheet, sheet_id, sheet_version)
     SELECT site_id, $2, slot_id, name, due_at - $3 * interval '1 day', begun_at - $3 * interval '1 day', begun_by, sheet,
            sheet_id, sheet_version FROM round WHERE id = $1`,
    [round, id, days],
  );
  return id;
}

async function sign(round: string): Promise<void> {
  const read = await getRound(ash, { site: SITE, round });
  for (const { number } of read.ok ? read.value.places : [])
    await enterRest(ash, { site: SITE, round, place: number, notDone: 'It was left' });
  expect(await signRound(ash, { site: SITE, round })).toMatchObject({ ok: true });
}

describe('a round that was begun and never signed', () => {
  test('stands in the lists while it is young, and is told above them once it has left them, until it is signed', async () => {
    const young = await besides();
    expect((await page()).lines.map(({ round }) => round)).toContain(young);
    expect(await unsigned()).toEqual([]);
    const old = await daysAgo(young, 20);
    const { lines, unsigned: told } = await page();
    expect(lines.map(({ round }) => round)).not.toContain(old);
    expect(told).toMatchObject({ many: 1, lines: [{ round: old, of: 'besides', begun: { by: 'Ash' } }] });
    expect(told.lines[0]?.systems).toEqual(['Tank 1']);
    await sign(old);
    expect(await unsigned()).toEqual([]);
  });

  test('by the timetable leaves as well once a later one of the same time was signed, and not while that is open too', async () => {
    const morning = await begunNow(beginRound(ash, { site: SITE, slot: 'morning', due }));
    const [older, old] = [await daysAgo(morning, 40), await daysAgo(morning, 30)];
    const aside = await daysAgo(await besides(), 50);
    expect(await unsigned()).toEqual([old, older, aside]);
    await sign(old);
    // What was walked besides the timetable has no later one of the same.
    expect(await unsigned()).toEqual([aside]);
    await sign(aside);
    expect(await unsigned()).toEqual([]);
  });

  test('is told however many there are, by as many questions, and no more of them than can be read', async () => {
    const young = await besides();
    await daysAgo(young, 20);
    const asked = (await countQueries(page)).length;
    for (let days = 21; days < 75; days++) await daysAgo(young, days);
    expect(await countQueries(page)).toHaveLength(asked);
    const { unsigned: told } = await page();
    expect(told.many).toBe(55);
    expect(told.lines).toHaveLength(50);
  });
});
