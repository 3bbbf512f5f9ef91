import type { Verdict } from '../result';
import { gravity } from '../verdict';
import type { CoveredCase, SystemCover } from './system-cover';

/** What a change of people makes of one fault case. */
export interface CoverChange {
  system: string;
  case: Pick<CoveredCase, 'id' | 'title'>;
  from: Verdict;
  to: Verdict;
  /** Hours of the week with time to spare after the change, less those before. */
  hours: number;
  /** Least time to spare over the week, s; −Infinity where nobody ever comes. */
  fromS: number;
  toS: number;
}

/** Fault cases that a change of people makes less grave or graver, or at other hours; what stays is left out. */
export function coverChanges(before: SystemCover, after: SystemCover): CoverChange[] {
  const later = new Map(after.cases.map((one) => [one.id, one]));
  return before.cases.flatMap((one): CoverChange[] => {
    const other = later.get(one.id);
    if (!other) return [];
    const change: CoverChange = {
      system: before.system,
      case: { id: one.id, title: one.title },
      from: one.week.verdict,
      to: other.week.verdict,
      hours: hoursWithSpare(other) - hoursWithSpare(one),
      fromS: Math.min(...one.week.spareS),
      toS: Math.min(...other.week.spareS),
    };
    return change.from === change.to && change.hours === 0 ? [] : [change];
  });
}

/** Whether a change makes a case less grave (above 0) or graver (below 0): by its verdict, and of one verdict by the hours. */
export function worthOf({ from, to, hours }: CoverChange): number {
  return gravity(to) === gravity(from) ? hours : 1000 * (gravity(to) - gravity(from)) + hours;
}

function hoursWithSpare({ week }: CoveredCase): number {
  return week.spareS.filter((s) => s > 0).length;
}
