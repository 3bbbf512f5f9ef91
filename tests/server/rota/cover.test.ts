import { beforeAll, describe, expect, test } from 'vitest';
import { demandOf } from '#core/review/people/demand-of';
import { leastOf } from '#core/review/people/site-cover';
import { reviewSystem } from '#core/review/review-system';
import { now } from '#server/clock';
import { dayIn } from '#server/local-day';
import { addDays } from '#core/time/add-days';
import { mondayOf } from '#core/time/monday-of';
import { instantOf } from '#core/time/zone';
import { LOCAL_PERSON } from '#server/gate/who';
import type { Compute } from '#server/reviews/compute';
import { reviewSite } from '#server/reviews/review-site';
import { getCover, getCoverShape } from '#server/rota/get-cover';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const TWO = smallFacility(smallSystem(), smallSystem('tank-2', 'Tank 2'));

/** As the thread does it, for the first system with what it asks of people and for the second without. */
const compute: Compute = async ({ facility, system: key, on, wantsDemand }) => {
  const system = facility.systems.find((one) => one.key === key);
  if (!system) throw new Error(`no ${key}`);
  const review = reviewSystem(facility, system, on);
  const isAsked = wantsDemand && key === 'tank-1';
  return await Promise.resolve(isAsked ? { ...review, demand: demandOf(facility, system, on, review) } : review);
};

const cover = async (given: Record<string, string> = {}) => {
  const found = await getCover(LOCAL_PERSON, getCoverShape.parse({ site: 'harbour', ...given }));
  if (!found.ok) throw new Error(JSON.stringify(found.reason));
  return found.value;
};

beforeAll(async () => {
  await keep(TWO);
  await reviewSite((await stored('harbour')).siteId, { compute });
});

describe('the cover of a site', () => {
  test('is told of the systems whose review says what is asked of people; the others are named', async () => {
    const page = await cover();
    expect(page.cover.systems.map(({ system }) => system)).toEqual(['tank-1']);
    expect(page.missing).toEqual(['Tank 2']);
    const [week] = page.cover.systems;
    expect(week?.claimed.spareS).toHaveLength(168);
    expect(page.cover.weakest.claimed[0]?.spareS).toBe(week && leastOf(week.claimed));
    expect(page.cover.whatIf).toBeNull();
  });

  test('is not in the review as it is read or kept', async () => {
    const rows = (await query(`SELECT body ? 'demand' AS inside, demand IS NULL AS none FROM review_result`)).rows;
    expect(rows.map(({ inside }) => inside)).toEqual([false, false]);
    expect(rows.filter(({ none }) => none)).toHaveLength(1);
  });

  test('with one more person at every hour no hour has less to spare, and nothing is kept', async () => {
    const before = await cover();
    const ask = { more: 'on-site', moreFrom: '00:00', moreTo: '00:00', check: '02:00' };
    const after = await cover(ask);
    const [was] = before.cover.systems;
    const changed = after.cover.systems[0]?.claimed.changedS;
    for (const [h, s] of (changed ?? []).entries())
      expect(s ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(was?.claimed.spareS[h] ?? Number.POSITIVE_INFINITY);
    expect(changed).not.toEqual(was?.claimed.spareS);
    expect(after.cover.whatIf?.claimed.lost).toEqual([]);
    expect(after.asked).toEqual(ask);
    expect((await cover()).cover).toEqual(before.cover);
  });

  test('says what is wrong with a question, and what was typed stays', async () => {
    const page = await cover({ check: 'at night' });
    expect(page.wrong).toEqual({ check: 'a time such as 02:00' });
    expect(page.asked).toEqual({ check: 'at night' });
    expect(page.cover.whatIf).toBeNull();
  });

  test('a coming week that leave makes weaker names the leave; taken back, neither is told', async () => {
    const { siteId } = await stored('harbour');
    const monday = addDays(mondayOf(dayIn('Europe/London', now())), 14);
    const [from, to] = [0, 7].map((days) => instantOf('Europe/London', addDays(monday, days), '00:00'));
    const { rows } = await query(
      `INSERT INTO rota_change (site_id, id, kind, person_id, from_at, to_at, asked_by, asked_at)
     SELECT site_id, gen_random_uuid(), 'leave', id, to_timestamp($2 / 1000.0), to_timestamp($3 / 1000.0), 'local', now()
       FROM person WHERE site_id = $1 RETURNING id, person_id`,
      [siteId, from, to],
    );
    const came = async (kind: string, number: number) => {
      for (const { id } of rows)
        await query(
          `INSERT INTO rota_change_event (site_id, change_id, number, kind, by, at) VALUES ($1, $2, $3, $4, 'local', now())`,
          [siteId, id, number, kind],
        );
    };
    await came('approved', 1);
    const weak = (await cover()).weeks.filter((week) => week.monday === monday);
    expect(weak.length).toBeGreaterThan(0);
    const named = weak.flatMap(({ behind }) => behind);
    expect(named.length).toBeGreaterThan(0);
    for (const one of named) expect(one).toMatchObject({ kind: 'leave', from, to });
    await came('taken-back', 2);
    expect((await cover()).weeks.filter((week) => week.monday === monday)).toEqual([]);
  });

  test('is not told while a review is out of date', async () => {
    await query(`UPDATE review_result SET input_hash = 'another'`);
    const page = await cover();
    expect(page.cover.systems).toEqual([]);
    expect(page.missing).toHaveLength(2);
  });
});
