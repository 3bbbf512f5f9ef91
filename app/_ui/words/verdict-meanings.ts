import type { Verdict } from '#core/review/result';

/** What each verdict means, gravest first: the legend, and the order of the pages. */
export const VERDICT_MEANINGS: readonly { verdict: Verdict; meaning: string }[] = [
  { verdict: 'no-warning', meaning: 'At every hour harm is unavoidable before anything or anyone notices.' },
  { verdict: 'too-late', meaning: 'It is noticed, but there is nothing to spare at any hour of the week.' },
  { verdict: 'some-hours', meaning: 'There is nothing to spare at some hours of the week.' },
  {
    verdict: 'not-assessed',
    meaning: 'A figure is unknown and has no defensible default, or the model cannot carry it.',
  },
  { verdict: 'covered', meaning: 'At every hour somebody has it put right before the last chance.' },
  { verdict: 'dormant', meaning: 'Harmless by itself, but it puts a safeguard out of action.' },
  { verdict: 'holds', meaning: 'No harm within seven days though nobody comes.' },
];
