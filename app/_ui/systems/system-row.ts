import type { SystemKind } from '#core/facility/system';
import type { Grade, HarmClass, Verdict } from '#core/review/result';
import type { ReviewSummary, SummaryCase } from '#core/review/summary';
import type { Custom } from '#core/units/shown';
import { KIND_WORDS } from '../words/kinds';
import { lasting } from '../words/lasting';
import { harmSaid, PLAIN_NAMES } from '../words/said';
import { type ListedNow, type RowNow, rowNow } from './row-now';

/** A verdict of a row, and whom it befalls. */
export interface RowVerdict {
  verdict: Verdict;
  befalls?: HarmClass;
  /** Lower is graver. */
  rank: number;
}

/** What a review says in one row. */
export interface RowReview {
  worst: { title: string; harm: string; case?: string };
  claimed: RowVerdict;
  tested: RowVerdict;
  /** Time to spare at the worst hour as claimed, s; null where nobody comes; undefined where nothing is harmed. */
  spareS: number | null | undefined;
  unsure: boolean;
  findings: Record<Grade, number>;
  /** What to do first. */
  first?: string;
  /** It was made before the last change; a new one is under way. */
  isOld: boolean;
}

/** One system in the table of all systems: plain values only, for it crosses into the browser. */
export interface SystemRow {
  site: string;
  siteName: string;
  system: string;
  name: string;
  kind: string;
  /** What stands under its name: its kind, after its site where there are several. */
  about: string;
  /** Why there is no review: it is under way, or computing it broke. */
  missing: 'under way' | 'broken';
  review?: RowReview;
  now: RowNow;
}

/** A system as a list of systems speaks of it. */
export interface ListedSystem {
  site: { key: string; name: string; zone: string };
  key: string;
  name: string;
  kind: SystemKind;
  review:
    | { state: 'current'; summary: ReviewSummary }
    | { state: 'under-way'; before: ReviewSummary | null }
    | { state: 'broken' };
  now: ListedNow;
}

/** What rows of the table have in common. */
export interface RowView {
  units: Custom;
  /** The instant they stand for, UTC, ISO. */
  at: string;
  /** Whether there are systems of several sites. */
  hasSites: boolean;
  /** Overdue rounds that stand above the table, by key of the site. */
  overdue: ReadonlyMap<string, ListedNow['checks']>;
}

/** A system as a row of the table. */
export function systemRow({ site, key, name, kind, review, now }: ListedSystem, view: RowView): SystemRow {
  const summary = summaryIn(review);
  return {
    site: site.key,
    siteName: site.name,
    system: key,
    name,
    kind: KIND_WORDS[kind],
    about: view.hasSites ? `${site.name}, ${KIND_WORDS[kind]}` : KIND_WORDS[kind],
    missing: review.state === 'broken' ? 'broken' : 'under way',
    review: summary ? { ...rowReview(summary, view.units), isOld: review.state === 'under-way' } : undefined,
    now: rowNow(now, view.at, site.zone, view.overdue.get(site.key) ?? { late: 0, missed: 0 }),
  };
}

/** What is said of a system by its review; while a new one is under way, by the one before. */
export function summaryIn(review: ListedSystem['review']): ReviewSummary | null {
  return review.state === 'current' ? review.summary : review.state === 'under-way' ? review.before : null;
}

function rowReview(
  { worst: { claimed, tested }, grades, jobs }: ReviewSummary,
  units: Custom,
): Omit<RowReview, 'isOld'> {
  const speech = { units, names: PLAIN_NAMES };
  const shown = claimed.harm ? claimed : tested;
  return {
    worst: {
      title:
        shown.case?.title ?? (claimed.verdict === 'not-assessed' ? 'Not assessed' : 'No fault case harms anything'),
      harm: shown.harm ? `${harmSaid(speech, shown.harm)}, after ${lasting(shown.harm.afterS)}` : '',
      case: shown.case?.id,
    },
    claimed: verdictOf(claimed),
    tested: verdictOf(tested),
    spareS: claimed.harm ? claimed.spareS : undefined,
    unsure: claimed.unsure,
    findings: grades,
    first: jobs[0]?.remedy,
  };
}

function verdictOf({ verdict, harm, rank }: SummaryCase): RowVerdict {
  return { verdict, befalls: harm?.class, rank };
}
