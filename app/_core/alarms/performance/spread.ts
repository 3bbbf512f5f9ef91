import { groupBy } from '../../group-by';
import { mostFirst, type Often } from './nuisance';
import type { Raise } from './raise';

/** Alarms listed of the most frequent. */
const TOP = 10;

/** The ten most frequent alarms, and what share of all they make up, 0 to 1. */
export function topTen(raises: readonly Raise[]): { top: Often[]; share: number } {
  const counted = [...groupBy(raises, ({ alarm }) => alarm)].map(([alarm, all]) => ({ alarm, times: all.length }));
  const top = counted.sort(mostFirst).slice(0, TOP);
  const sum = top.reduce((all, { times }) => all + times, 0);
  return { top, share: raises.length === 0 ? 0 : sum / raises.length };
}

/** How many there are of each priority, the most first, and what share of all, 0 to 1. */
export function prioritySpread(raises: readonly Raise[]): { priority: string | null; count: number; share: number }[] {
  return [...groupBy(raises, ({ priority }) => priority)]
    .map(([priority, all]) => ({ priority, count: all.length, share: all.length / raises.length }))
    .sort((a, b) => b.count - a.count);
}
