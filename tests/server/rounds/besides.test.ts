import { beforeAll, describe, expect, test } from 'vitest';
import { LOOK_BACK } from '#core/rounds/questions';
import { newId } from '#data/new-id';
import { listWithEntries } from '#data/rounds/with-entries';
import { findSite } from '#data/sites';
import { now } from '#server/clock';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { beginBesides } from '#server/rounds/begin-besides';
import { enter } from '#server/rounds/enter';
import { enterRest } from '#server/rounds/enter-rest';
import { getRound } from '#server/rounds/get-round';
import { listRounds } from '#server/rounds/list-rounds';
import { roundsStanding } from '#server/rounds/rounds-standing';
import { signRound } from '#server/rounds/sign-round';
import { enterRequest } from '#shape/rounds/requests';
import { countQueries } from '../../_support/count-queries';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const SITE = 'harbour';
const WARMTH = 'tank-1/sensor/display-temperature';
let ash: Who = LOCAL_PERSON;
let siteId = '';

beforeAll(async () => {
  await keep(siteWithRoundDue().facility);
  siteId = (await query('SELECT id FROM site')).rows[0].id;
  ash = await letIn(query, siteId, SITE, 'Ash', 'aquarist');
});

async function besides(entry = newId()): Promise<string> {
  const begun = await beginBesides(ash, { site: SITE, slot: 'morning', entry });
  if (!begun.ok) throw new Error(JSON.stringify(begun.reason));
  return begun.value.round;
}

const read = (round: string, number: string) =>
  enter(ash, enterRequest.parse({ site: SITE, round, check: WARMTH, entry: newId(), number, sure: 'yes' }));

describe('a round walked besides the timetable', () => {
  test('is begun once when it is sent twice, and stands in the list as what it is', async () => {
    const entry = newId();
    const [one, other] = await Promise.all([besides(entry), besides(entry)]);
    expect([one, other]).toEqual([entry, entry]);
    const page = await listRounds(ash, { site: SITE });
    expect(page.ok && page.value.lines.find(({ round }) => round === entry)).toMatchObject({
      slot: null,
      standing: 'begun',
      begun: { by: 'Ash' },
    });
    const { rows } = await query("SELECT body FROM record WHERE kind = 'round-begun'");
    expect(rows).toMatchObject([{ body: { by: ash.id, round: entry, besides: true } }]);
    expect(JSON.stringify(rows)).not.toContain('Ash');
  });

  test('leaves what is due by the timetable due', async () => {
    const site = await findSite(SITE);
    if (!site) throw new Error('no site');
    const { facility } = await stored(SITE);
    const { walks, besides: more, late, bySystem } = await roundsStanding(site, facility, now());
    expect(walks.find(({ slot }) => slot.key === 'morning')?.standing).toBe('due');
    expect(more).toHaveLength(1);
    expect([...bySystem.keys()]).toEqual(['tank-1']);
    expect(bySystem.get('tank-1')?.late).toBe(late);
  });

  test('shows on each line what was there before, and what the sensor says where it has spoken', async () => {
    const first = await besides();
    expect((await read(first, '25.1')).ok).toBe(true);
    const second = await besides();
    const page = await getRound(ash, { site: SITE, round: second });
    const line = page.ok && page.value.places.flatMap(({ lines }) => lines).find(({ check }) => check.key === WARMTH);
    expect(line).toMatchObject({ entries: [], last: { value: { kind: 'number', value: 25.1 }, from: 'round' } });
  });

  test('whose number is the same to the last digit as on three before it is asked about', async () => {
    const rounds = [];
    for (let many = 0; many < LOOK_BACK; many++) {
      rounds.push(await besides());
      await read(rounds.at(-1) ?? '', '25.1');
    }
    const alike = async (round: string) => {
      const page = await getRound(ash, { site: SITE, round });
      return page.ok ? page.value.alike : null;
    };
    expect(await alike(rounds[1] ?? '')).toEqual([]);
    expect(await alike(rounds[2] ?? '')).toEqual([WARMTH]);
  });

  test('warns whoever has last been at a dirtier place', async () => {
    const round = await besides();
    const before = await getRound(ash, { site: SITE, round });
    expect(before.ok && before.value.wasAt).toBeNull();
    const last = before.ok ? (before.value.places.at(-1)?.number ?? 1) : 1;
    await enterRest(ash, { site: SITE, round, place: last, notDone: 'No time' });
    const after = await getRound(ash, { site: SITE, round });
    expect(after.ok && after.value.wasAt?.name).toBe(after.ok && after.value.places.at(-1)?.name);
  });

  test('is signed once all is said to be not done, which stands there to be seen', async () => {
    const round = await besides();
    const [found] = await listWithEntries(siteId, [round]);
    for (const [index] of (found?.sheet.places ?? []).entries())
      await enterRest(ash, { site: SITE, round, place: index + 1, notDone: 'Power cut' });
    expect(await signRound(ash, { site: SITE, round })).toMatchObject({ ok: true });
    const page = await listRounds(ash, { site: SITE });
    const waiting = page.ok ? page.value.waiting.find((one) => one.round === round) : undefined;
    expect(waiting).toMatchObject({ blank: 0, abnormal: 0 });
    expect(waiting?.notDone).toBe(waiting?.lines);
  });

  test('the list of them asks as much of the database however many there are', async () => {
    const asked = (await countQueries(() => listRounds(ash, { site: SITE }))).length;
    await besides();
    await besides();
    expect(await countQueries(() => listRounds(ash, { site: SITE }))).toHaveLength(asked);
  });
});
