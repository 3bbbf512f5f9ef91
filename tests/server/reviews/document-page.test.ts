import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { coursesOfCases } from '#core/review/courses-of-cases';
import { leadingCases } from '#core/review/leading-cases';
import { reviewSystem } from '#core/review/review-system';
import type { Combination, Study, StudyState } from '#core/review/study';
import { DocumentPageBody } from '#ui/document/document-page';
import { smallFacility, smallSystem } from '../../_support/small-facility';

const ON = '2026-06-01';
/** Nobody is ever there: whatever does harm has a finding of its own. */
const SITE = { ...smallFacility(), shifts: [], rounds: [] };
const review = reviewSystem(SITE, smallSystem(), ON, undefined, true);
const [first] = leadingCases(review, 1);
if (!first) throw new Error('nothing leads a finding');

const combination: Combination = {
  id: 'heater-on:heater-1+dead:cut-out',
  kind: 'safeguard-dead',
  state: first.state,
  parts: [
    { kind: 'fault', fault: first.fault, title: first.title, thing: first.thing },
    { kind: 'safeguard', key: 'cut-out', name: 'High cut-out' },
  ],
  because: '',
  alone: 'covered',
  verdict: 'too-late',
  harm: first.claimed.outcomes[0]?.harm ?? null,
  spareS: -3600,
  perYear: 0.031,
};

const study: Study = {
  system: review.system,
  on: ON,
  combinations: [combination],
  minimalSets: [],
  cut: 'some-hours',
  fixFirst: {
    alone: [
      {
        id: 'cut-out:heater-1',
        remedy: 'cut-out',
        column: 'claimed',
        title: 'A high cut-out on Heater 1',
        wins: [
          {
            case: first.id,
            title: first.title,
            from: first.claimed.verdict,
            to: 'holds',
            befalls: { from: 'animals', to: null },
            gainS: null,
          },
        ],
        losses: [
          {
            case: 'x',
            title: 'Heater 1: heater dead',
            from: 'covered',
            to: 'some-hours',
            befalls: { from: 'animals', to: 'animals' },
            gainS: -7200,
          },
        ],
      },
    ],
    order: [{ fix: 'cut-out:heater-1', wins: 3, left: 2, losses: [] }],
    open: 5,
  },
  drift: [{ tank: 'display', unit: 'air', nowKg: 12, carriesKg: 9.5 }],
  tried: 40,
};

const courses = coursesOfCases(SITE, smallSystem(), ON, leadingCases(review, 3));

/** The words of the page, without its marks. */
function words(state: StudyState, units: 'metric' | 'us' = 'metric'): string {
  const origin = {
    computedAt: '2026-06-01T10:00:00.000Z',
    judgedOn: ON,
    engineVersion: '9',
    inputHash: 'ab'.repeat(32),
  };
  const held = { review, origin, isCurrent: true };
  const page = { facility: SITE, system: smallSystem(), siteFindings: [], study: state, held, courses, kept: [] };
  const html = renderToStaticMarkup(createElement(DocumentPageBody, { page, units }));
  return html
    .replace(/<[^>]+>/g, ' ')
    .replace(/&[a-z#0-9x]+;/g, ' ')
    .replace(/\s+/g, ' ');
}

const ready = words({ state: 'ready', study });

describe('the review as a document', () => {
  test('tells of a finding when and by what it is noticed, the last chance, who is harmed, and what would change it', () => {
    for (const told of ['time to notice', 'last chance', 'time to put right', 'to whom', 'What would change it'])
      expect(ready).toContain(told);
    expect(ready).toContain('There is nothing to spare at any hour of the week.');
    expect(ready).toContain('A high cut-out on Heater 1: then holds');
    expect(ready).toContain('The failure mode:');
    expect(ready).toMatch(/The course in words.* begins/);
  });

  test('says what to fix first, what it wins, what stays open, and what becomes graver', () => {
    expect(ready).toContain('What to fix first: A high cut-out on Heater 1. It wins 3 fault cases; 2 stay open.');
    expect(ready).toContain('5 fault cases are not covered today.');
    expect(ready).toContain('graver: Heater 1: heater dead: covered → some hours, 2.0 h less to spare');
  });

  test('tells combinations by their parts, how often only of the order of magnitude, and what stock the air carries', () => {
    expect(ready).toContain('High cut-out does not work');
    expect(ready).toContain('about once in 30 years');
    expect(ready).toContain('Holdfast has none built in');
    expect(ready).toContain('carries 9.5 kg through the night: less than there is');
    const unrated = { ...study, combinations: [{ ...combination, perYear: null }] };
    expect(words({ state: 'ready', study: unrated })).toContain('No frequency is told: no failure rate was entered');
    expect(words({ state: 'ready', study }, 'us')).toContain('carries 20.9 lb through the night');
  });

  test('says so where the longer look is under way or broke, and shows the one before a change', () => {
    expect(words({ state: 'under-way', before: null })).toContain('This is being computed');
    expect(words({ state: 'under-way', before: study })).toContain('What follows is as it was before the last change.');
    expect(words({ state: 'broken' })).toContain('Computing this broke.');
    expect(words({ state: 'broken' })).toContain('What to do first:');
  });

  test('says by which engine, when and from what it was computed', () => {
    expect(ready).toContain('Computed by Holdfast on 1 Jun 2026, 11:00:00 (Europe/London).');
    expect(ready).toContain('Engine 9.');
    expect(ready).toContain('with the seal abababababab');
  });
});
