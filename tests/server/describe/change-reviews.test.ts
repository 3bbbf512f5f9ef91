import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { NOTHING_MEASURED } from '#core/alarms/measured';
import type { Facility } from '#core/facility/facility';
import { reviewSystem } from '#core/review/review-system';
import { type ReviewNews, reviewsOfChange, touchedSystems } from '#server/describe/change-reviews';
import type { Compute } from '#server/reviews/compute';
import { inputHash } from '#server/reviews/input-hash';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';

freshDatabase();
const ON = '2026-06-01';

const here: Compute = async ({ facility, system, on }, told) => {
  const found = facility.systems.find(({ key }) => key === system);
  if (!found) throw new Error(`no ${system}`);
  return await Promise.resolve(reviewSystem(facility, found, on, told));
};
/** Never there, until it is broken off. */
const never: Compute = (_job, told, signal) => {
  told(3, 12);
  return new Promise((_, refuse) => {
    signal?.addEventListener('abort', () => refuse(new Error('broken off')));
  });
};
const breaks: Compute = () => Promise.reject(new Error('a fault of ours'));

function change(before: Facility, after: Facility, first?: string) {
  const hashes = new Map(before.systems.map((system) => [system.key, inputHash(before, system, ON)]));
  const systemIds = new Map(before.systems.map(({ key }) => [key, randomUUID()]));
  return {
    siteId: randomUUID(),
    stored: {
      facility: before,
      reviewed: before,
      asReviewed: (one: Facility) => one,
      facts: NOTHING_MEASURED,
      hashes,
      systemIds,
    },
    after,
    on: ON,
    first,
  };
}

async function told(news: AsyncIterable<ReviewNews>): Promise<ReviewNews[]> {
  const all: ReviewNews[] = [];
  for await (const one of news) all.push(one);
  return all;
}

/** The base system with a heater of so many watts. */
function heated(watts: number, key = 'tank-1') {
  const system = smallSystem(key, key);
  const equipment = system.equipment.map((one) =>
    one.type === 'heater' ? { ...one, ratedW: { value: watts, origin: 'entered' as const } } : one,
  );
  return { ...system, equipment };
}

describe('what a change does to the reviews', () => {
  test('is told for the systems it touches, and for no other', async () => {
    const before = smallFacility(heated(100, 'one'), heated(100, 'two'));
    const after = smallFacility(heated(100, 'one'), {
      ...heated(100, 'two'),
      feedGPerDay: { value: 5, origin: 'entered' },
    });
    const news = (await told(reviewsOfChange(change(before, after), here))).filter(({ is }) => is !== 'progress');
    expect(news).toMatchObject([{ is: 'system', key: 'two' }]);
  });

  test('names the fault cases that become graver', async () => {
    const news = await told(reviewsOfChange(change(smallFacility(heated(100)), smallFacility(heated(2000))), here));
    const [only] = news.filter(({ is }) => is === 'system');
    const cases = only?.is === 'system' ? only.difference.cases : [];
    expect(cases.find(({ id }) => id.startsWith('heater-on:'))).toMatchObject({ way: 'graver' });
  });

  test('begins with the system one is at', () => {
    const before = smallFacility(heated(100, 'one'), heated(100, 'two'));
    const after = smallFacility(heated(200, 'one'), heated(200, 'two'));
    expect(touchedSystems(change(before, after, 'two'))).toEqual(['two', 'one']);
  });

  test('that takes too long is said to be not known yet, with how far it was', async () => {
    const before = smallFacility(heated(100, 'one'), heated(100, 'two'));
    const after = smallFacility(heated(200, 'one'), heated(200, 'two'));
    const news = await told(reviewsOfChange(change(before, after), never, 600));
    expect(news.at(-1)).toEqual({ is: 'not-known', names: ['one', 'two'], why: 'late' });
    expect(news).toContainEqual({ is: 'progress', name: 'one', done: 0, of: 0 });
  });

  test('is not waited for longer than that, also while somebody else’s is computed', async () => {
    const before = smallFacility(heated(100));
    const others = reviewsOfChange(change(before, smallFacility(heated(300))), never, 10_000);
    await others.next();
    const news = await told(reviewsOfChange(change(before, smallFacility(heated(400))), here, 600));
    expect(news.at(-1)).toEqual({ is: 'not-known', names: ['tank-1'], why: 'late' });
    // Whoever asked first has gone: the next one is computed.
    await others.return(undefined);
    const next = await told(reviewsOfChange(change(before, smallFacility(heated(400))), here));
    expect(next.at(-1)).toMatchObject({ is: 'system', key: 'tank-1' });
  });

  test('that cannot be computed is said to be not known, and why is in the log', async () => {
    const news = await told(reviewsOfChange(change(smallFacility(heated(100)), smallFacility(heated(200))), breaks));
    expect(news.at(-1)).toEqual({ is: 'not-known', names: ['tank-1'], why: 'broken' });
  });

  test('of hours that nobody is there any more is told as a finding about the site', async () => {
    const before = smallFacility(heated(100));
    const news = await told(reviewsOfChange(change(before, { ...before, shifts: [] }), never, 50));
    expect(news[0]).toMatchObject({ is: 'site', findings: [{ id: 'do:rota-gap', before: null }, { before: null }] });
  });
});
