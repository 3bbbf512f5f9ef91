import type { MarkName } from './incident';
import type { Mark } from './marks';

/** A time between two marks: a range where the first is not known to the minute. */
export interface Interval {
  name: 'noticed' | 'told' | 'acknowledged' | 'on-scene' | 'put-right';
  /** The mark that ended it. */
  to: MarkName;
  /** s after the fault began: at least, and at most. */
  leastS: number;
  mostS: number;
  /** s after the mark before it in this list; null for the first, or where none is known. */
  sinceS: number | null;
  since: MarkName | null;
}

/** Two marks that cannot both be right as they stand, or that want to be explained. */
export interface Contradiction {
  earlier: MarkName;
  later: MarkName;
  /** s by which the later comes before the earlier. */
  byS: number;
}

/** What ends each time. Somebody notices by the first alarm; where none was raised, by whatever a person did first. */
const ENDS: Record<Interval['name'], readonly MarkName[]> = {
  noticed: ['first-alarm', 'acknowledged', 'on-scene', 'hands-on'],
  told: ['told'],
  acknowledged: ['acknowledged'],
  'on-scene': ['on-scene', 'hands-on'],
  'put-right': ['put-right'],
};
const NAMES = Object.keys(ENDS) as Interval['name'][];

/** Pairs of marks of which the first ought to come before the second. */
const ORDERED: readonly (readonly [MarkName, MarkName])[] = [
  ['fault-began', 'first-abnormal'],
  ['first-abnormal', 'first-alarm'],
  ['first-alarm', 'told'],
  ['told', 'acknowledged'],
  ['on-scene', 'hands-on'],
  ['fault-began', 'hands-on'],
  ['hands-on', 'put-right'],
  ['put-right', 'normal'],
  ['put-right', 'stood-down'],
];

/** How long it took, from when the fault began, to be noticed, told, acknowledged, reached and put right. */
export function intervalsOf(marks: readonly Mark[]): Interval[] {
  const by = new Map(marks.map((mark) => [mark.mark, mark]));
  const began = by.get('fault-began');
  if (!began) return [];
  const found: Interval[] = [];
  let before: Mark | null = null;
  for (const name of NAMES) {
    const end = ENDS[name].map((mark) => by.get(mark)).find((mark) => mark !== undefined);
    if (!end) continue;
    found.push({
      name,
      to: end.mark,
      leastS: (end.atMs - began.latestMs) / 1000,
      mostS: (end.atMs - began.atMs) / 1000,
      sinceS: before && (end.atMs - before.atMs) / 1000,
      since: before?.mark ?? null,
    });
    before = end;
  }
  return found;
}

/** Marks that stand in the wrong order. A fault that began at some time between two contradicts nothing between them. */
export function contradictionsIn(marks: readonly Mark[]): Contradiction[] {
  const by = new Map(marks.map((mark) => [mark.mark, mark]));
  return ORDERED.flatMap(([earlier, later]) => {
    const [first, second] = [by.get(earlier), by.get(later)];
    if (!first || !second || second.latestMs >= first.atMs) return [];
    return [{ earlier, later, byS: (first.atMs - second.latestMs) / 1000 }];
  });
}
