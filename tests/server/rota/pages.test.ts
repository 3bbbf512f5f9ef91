import { beforeAll, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import { newId } from '#data/new-id';
import type { Who } from '#server/gate/who';
import { answerChange } from '#server/rota/changes/answer-change';
import { askLeave } from '#server/rota/changes/ask-leave';
import { askSwap } from '#server/rota/changes/ask-swap';
import { getChanges } from '#server/rota/changes/get-changes';
import { getRota } from '#server/rota/get-rota';
import { getWeek, getWeekShape } from '#server/rota/get-week';
import { now } from '#server/clock';
import { dayIn } from '#server/local-day';
import { addDays } from '#core/time/add-days';
import { changeAnswer, leaveRequest, swapRequest } from '#shape/rota/change';
import type { PersonApart } from '#core/rota/rota';
import { findSite } from '#data/sites';
import { storedSite } from '#server/reviews/stored-site';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const day = addDays(dayIn('Europe/London', now()), 2);
const site = 'harbour';
let robin: Who;
let lead: Who;

/** Robin, by day, alone may put the ozone back; Sam is on call by night. */
function withOzone(): Facility {
  const given = smallFacility();
  const competences = [{ key: 'ozone', name: 'put the ozone back', types: ['ozone' as const] }];
  const people = given.people.map((one) =>
    one.key === 'robin' ? { ...one, competences: [{ competence: 'ozone', attestedBy: 'Lee' }] } : one,
  );
  return { ...given, site: { ...given.site, competences }, people };
}

async function personAt(key: string, account: string, person: string): Promise<void> {
  const { siteId } = await stored(key);
  await query(
    `INSERT INTO membership (site_id, account_id, role, since, person_id)
     VALUES ($1, $2, 'aquarist', now(), (SELECT id FROM person WHERE site_id = $1 AND key = $3))
     ON CONFLICT (site_id, account_id) DO UPDATE SET person_id = excluded.person_id`,
    [siteId, account, person],
  );
}
const value = <T>(answer: { ok: true; value: T } | { ok: false }): T => {
  if (!answer.ok) throw new Error(JSON.stringify(answer));
  return answer.value;
};
const approve = async (shownMin: number) => {
  const { open } = value(await getChanges(lead, { site }));
  const [first] = open;
  if (!first) throw new Error('Nothing waits');
  if (first.kind === 'swap')
    value(await answerChange(lead, changeAnswer.parse({ site, change: first.id, comes: 'agreed' })));
  value(await answerChange(lead, changeAnswer.parse({ site, change: first.id, comes: 'approved', shownMin })));
};

beforeAll(async () => {
  const facility = withOzone();
  await keep(facility);
  await keep({ ...facility, site: { ...facility.site, key: 'inland', name: 'Inland Hall' } });
  const { siteId } = await stored(site);
  robin = await letIn(query, siteId, site, 'Robin', 'aquarist');
  lead = await letIn(query, siteId, site, 'Lee', 'lead');
  await personAt(site, robin.id, 'robin');
});

test('the page of a leave says what it would leave before it is approved: hours with nobody, and the competence', async () => {
  const request = {
    site,
    entry: newId(),
    person: 'robin',
    from: `${day}T00:00`,
    to: `${addDays(day, 1)}T00:00`,
    why: 'a private matter',
  };
  value(await askLeave(robin, leaveRequest.parse(request)));
  const [line] = value(await getChanges(lead, { site })).open;
  expect(line).toMatchObject({
    person: 'Robin',
    state: 'asked',
    may: ['approved', 'refused', 'withdrawn'],
    effect: { nobodyMin: 600 },
  });
  expect(line?.effect?.lacking.map(({ name }) => name)).toEqual(['put the ozone back']);
  expect(value(await getChanges(robin, { site })).open[0]).toMatchObject({
    may: ['withdrawn'],
    why: 'a private matter',
  });
  const other = await letIn(query, (await stored(site)).siteId, site, 'Other', 'aquarist');
  expect(value(await getChanges(other, { site })).open[0]).toMatchObject({ may: [], why: null });
  expect(value(await getRota(lead, { site })).openChanges).toBe(1);
});

test('a week has seven days without a hole, and says who is there for whom and who is away', async () => {
  await approve(600);
  value(
    await askSwap(
      lead,
      swapRequest.parse({ site, entry: newId(), turn: `${addDays(day, 1)}/day/robin`, takes: 'sam' }),
    ),
  );
  await approve(0);
  const week = value(await getWeek(robin, { site, from: day }));
  const next = value(await getWeek(robin, { site, from: week.after }));
  const days = [...week.days, ...next.days];
  expect(week.days.map(({ lines }) => lines.length > 0)).toEqual(Array(7).fill(true));
  const said = (date: string) => {
    const found = days.find((one) => one.date === date);
    return {
      lines: found?.lines.map(({ people }) =>
        people.map((one) => `${one.name}${one.insteadOf ? ` for ${one.insteadOf}` : ''} ${one.kind}`),
      ),
      away: found?.away,
    };
  };
  expect(said(day)).toEqual({ lines: [['Sam on-call'], [], ['Sam on-call']], away: ['Robin'] });
  expect(said(addDays(day, 1)).lines).toEqual([['Sam on-call'], ['Sam for Robin on-site'], ['Sam on-call']]);
  expect(getWeekShape.parse({ site, from: 'no day' }).from).toBeUndefined();
  expect(value(await getWeek(robin, { site, from: '2026-03-29' })).days.map(({ hours }) => hours)).toEqual([
    24, 24, 24, 24, 24, 24, 23,
  ]);
});

test('the rota tells of hours in which nobody on duty has a competence, and of one person at two sites', async () => {
  const before = value(await getRota(lead, { site }));
  expect(before.lacking).toMatchObject([{ name: 'put the ozone back', holders: ['Robin'] }]);
  expect(before.twoSites).toEqual([]);
  await personAt('inland', robin.id, 'robin');
  const here = value(await getRota(robin, { site })).twoSites;
  // Robin is on site by day at both; away, or swapped, they are on at one alone.
  expect(here.length).toBeGreaterThanOrEqual(10);
  expect(here.every(({ from }) => ![day, addDays(day, 1)].includes(dayIn('Europe/London', new Date(from))))).toBe(true);
  expect(here[0]).toMatchObject({ name: 'Robin', site: null, here: 'on-site', there: 'on-site' });
  const both = { ...robin, at: { ...robin.at, inland: 'aquarist' as const } };
  expect(value(await getRota(both, { site })).twoSites[0]).toMatchObject({ site: 'Inland Hall' });
});

test('with the way to the other site entered, reviews and the rota count it: the one says how far, the other who is there', async () => {
  const before = (await stored(site)).facility;
  const hash = async () => {
    const entry = await findSite(site);
    const found = entry && (await storedSite(entry, day));
    const people: readonly PersonApart[] = found?.reviewed.people ?? [];
    const away = people.find(({ key }) => key === 'robin')?.away ?? [];
    return { hash: found?.hashes.get('tank-1'), away };
  };
  const plain = await hash();
  expect(plain.away).toEqual([]);
  await keep({ ...before, site: { ...before.site, waysTo: [{ site: 'inland', min: 50 }] } });
  const apart = await hash();
  expect(apart.away.length).toBeGreaterThanOrEqual(5);
  expect(apart.away.every(({ wayS }) => wayS === 3000)).toBe(true);
  expect(apart.hash).not.toBe(plain.hash);
  expect(value(await getRota(robin, { site })).twoSites[0]).toMatchObject({ wayMin: 50, isBetween: false });
  expect((await stored(site)).facility.people.some((one) => 'away' in one)).toBe(false);
});
