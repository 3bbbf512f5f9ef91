import { type Outcome, VERDICTS, type Verdict } from './result';

/**
 * Verdict of one class of harm over the hours of the week, first match: holds (no hour leads to it), no warning (every hour
 * leads to it and it is unavoidable before anything or anyone notices), too late (nothing to spare at any hour), some hours,
 * covered.
 */
export function verdictOf(outcome: Pick<Outcome, 'harmS' | 'lastChanceS' | 'noticeS' | 'putRightS'>): Verdict {
  const { harmS, lastChanceS, noticeS, putRightS } = outcome;
  const harmful = harmS.map((s, h) => (s === null ? -1 : h)).filter((h) => h >= 0);
  if (harmful.length === 0) return 'holds';
  const chance = (h: number) => lastChanceS[h] ?? 0;
  const unnoticed = harmful.filter((h) => (noticeS[h] ?? Number.POSITIVE_INFINITY) >= chance(h));
  const late = harmful.filter((h) => (putRightS[h] ?? Number.POSITIVE_INFINITY) >= chance(h));
  if (unnoticed.length === harmS.length) return 'no-warning';
  if (late.length === harmS.length) return 'too-late';
  return late.length > 0 ? 'some-hours' : 'covered';
}

/** How grave a verdict is: 0 the gravest. Not assessed ranks above what is known to be survivable. */
export function gravity(verdict: Verdict): number {
  const order: readonly Verdict[] = [
    'no-warning',
    'too-late',
    'some-hours',
    'not-assessed',
    'covered',
    'dormant',
    'holds',
  ];
  return order.indexOf(verdict);
}

/** Whether a text is a verdict. */
export function isVerdict(text: string): text is Verdict {
  return (VERDICTS as readonly string[]).includes(text);
}
