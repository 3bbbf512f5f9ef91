import { expect, test } from 'vitest';
import type { ReviewSummary, SummaryCase } from '#core/review/summary';
import { type KnownNow, systemNow } from '#server/overview/system-now';

const known: KnownNow = {
  at: new Date('2026-11-25T18:00:00Z'),
  today: '2026-11-25',
  hours: [0, 1],
  alarms: new Map(),
  reads: new Map(),
  rounds: new Map(),
  states: [],
};
const worst = (verdict: SummaryCase['verdict']): SummaryCase => ({
  ...{ verdict, case: null, harm: null, spareS: null, unsure: false, rank: 0 },
});
const summary = (verdict: SummaryCase['verdict'], spareHours?: ReviewSummary['spareHours']): ReviewSummary => ({
  worst: { claimed: worst(verdict), tested: worst(verdict) },
  ...{ cases: 1, verdicts: { claimed: {}, tested: {} }, grades: { high: 0, medium: 0, low: 0 }, jobs: [] },
  ...(spareHours && { spareHours }),
});
const tonight = (of: ReviewSummary | null) => {
  const { tonight: least, isTonightKnown } = systemNow(known, { key: 'a', safeguards: [] }, 'id', of);
  return [isTonightKnown, least?.spareS];
};

test('a system that is not assessed, or not reviewed yet, is never said to be harmed by nothing tonight', () => {
  expect(tonight(null)).toEqual([false, undefined]);
  expect(tonight(summary('not-assessed'))).toEqual([false, undefined]);
  expect(tonight(summary('holds'))).toEqual([true, undefined]);
  expect(tonight(summary('some-hours', [60, -60, -600]))).toEqual([true, -60]);
});
