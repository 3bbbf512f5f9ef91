import { withNuqsTestingAdapter } from 'nuqs/adapters/testing';
import { AppRouterContext } from 'next/dist/shared/lib/app-router-context.shared-runtime';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { SummaryCase } from '#core/review/summary';
import type { SystemLine } from '#server/reviews/list-systems';
import { SystemsOverview } from '#ui/systems/systems-overview';

const COLD: SummaryCase['harm'] = {
  class: 'animals',
  what: 'temperature',
  direction: 'below',
  tank: 'display',
  limit: 22,
  forMin: 0,
  groups: ['a'],
  atS: 60,
  afterS: 60,
};

/** What reviews say of one harm after the other: each fifth system has none, and of the others many are alike in one thing. */
function reviewed(n: number): SystemLine['review'] {
  if (!isReviewed || n % 5 === 0) return { state: 'broken' };
  const rank = (n * 7) % 4;
  const one: SummaryCase = {
    verdict: 'too-late',
    case: { id: 'a', title: 'A fault' },
    harm: n % 3 === 0 ? null : COLD,
    spareS: n % 7 === 0 ? null : -((n * 13) % 11),
    unsure: false,
    rank,
  };
  const summary = {
    worst: { claimed: one, tested: one },
    cases: 1,
    verdicts: { claimed: {}, tested: {} },
    grades: { high: 0, medium: 0, low: 0 },
    jobs: [],
  };
  return { state: 'current', summary, judgedOn: '2026-11-26', computedAt: '2026-11-26T12:00:00.000Z' };
}

let isReviewed = false;

/** A system by its number. */
const line = (n: number): SystemLine => ({
  site: { key: `site-${n % 3}`, name: `Site ${n % 3}`, zone: 'Europe/London' },
  key: `tank-${n}`,
  name: `Tank ${n}`,
  kind: n % 2 === 0 ? 'reef' : 'tropical-fresh',
  tanks: 1,
  animals: 0,
  volumeL: 400,
  review: reviewed(n),
  now: {
    tonight: null,
    isTonightKnown: false,
    alarms: { unacknowledged: 0, active: 0, suppressed: 0 },
    checks: { late: 0, missed: 0 },
    safeguards: { all: 0, untested: 0, off: 0 },
    states: [],
    last: null,
  },
});

const nothing = () => undefined;
const ROUTER = {
  back: nothing,
  forward: nothing,
  refresh: nothing,
  push: nothing,
  replace: nothing,
  prefetch: nothing,
  bfcacheId: 'none',
};

/** The page of so many systems, the last of which comes first by its name. */
function page(count: number, search: Record<string, string> = {}): string {
  const systems = Array.from({ length: count }, (_, n) => line(count - n));
  const overview = createElement(SystemsOverview, { systems, units: 'metric', at: '2026-11-26T12:00:00.000Z', search });
  const addressed = createElement(withNuqsTestingAdapter({ searchParams: search }), null, overview);
  return renderToStaticMarkup(createElement(AppRouterContext.Provider, { value: ROUTER }, addressed));
}

const names = (html: string) =>
  [...html.matchAll(/<a href="\/sites\/site-\d\/systems\/tank-\d+">([^<]*)</g)].map(([, name]) => name);

test('up to a hundred systems are all in the page, and nothing is left to ask for', () => {
  const html = page(100);
  expect(names(html)).toHaveLength(100);
  expect(html).toContain('100 of 100 systems');
  expect(html).not.toContain('Show the other');
});

test('of more the first are in the page, in order, with what all can be narrowed down by', () => {
  const html = page(250);
  expect(names(html)).toEqual(Array.from({ length: 30 }, (_, n) => `Tank ${n + 1}`));
  expect(html).toContain('250 of 250 systems');
  expect(html).toContain('Show the other 220 systems');
  for (const site of ['Site 0', 'Site 1', 'Site 2']) expect(html).toContain(`<option value="${site}">`);
  // What is not shown is not sent.
  expect(html).not.toContain('Tank 200');
});

test.each([
  [{ find: 'tank 240' }, ['Tank 240'], '1 of 250 systems'],
  [{ site: 'Site 1', sort: '-name' }, null, '84 of 250 systems'],
  [{ show: 'all' }, null, '250 of 250 systems'],
])('an address that asks %o is answered out of all of them', (search, shown, left) => {
  const html = page(250, search);
  if (shown) expect(names(html)).toEqual(shown);
  else expect(names(html)).toHaveLength(Number(left.split(' ')[0]));
  expect(html).toContain(left);
});

test('the first of an order that the address asks for are the first of all of them', () => {
  expect(names(page(250, { sort: '-name' }))[0]).toBe('Tank 250');
  expect(names(page(250, { sort: '-name' }))).toHaveLength(30);
});

test('what is sent first is what the table would show first of all of them', () => {
  isReviewed = true;
  const html = page(250);
  expect(names(html)).toEqual(names(page(250, { show: 'all' })).slice(0, 30));
  expect(names(html)[0]).not.toBe('Tank 1');
  expect(html).toContain('the 200 systems reviewed');
  isReviewed = false;
});
