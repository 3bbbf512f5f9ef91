import type { Instant } from '../time/zone';
import type { SensorQuantity } from '../facility/system';
import type { Source } from './incident';

/** What a line of the timeline is about, by which lines can be left out. */
export const TOPICS = [
  'alarm',
  'call',
  'reading',
  'round',
  'state',
  'plan',
  'safeguard',
  'rota',
  'entry',
  'mark',
] as const;
export type Topic = (typeof TOPICS)[number];

/** Who did something: a person by name, and their role at the site; null for what nobody did. */
export interface Doer {
  name: string;
  role: string | null;
}

/** One line of the timeline. */
export interface TimelineLine {
  /** Unique among the lines. */
  id: string;
  atMs: Instant;
  topic: Topic;
  what: string;
  who: Doer | null;
  source: Source;
  /** Figures that it tells, in the unit of the facility file: shown in the person's own. */
  figures?: { quantity: SensorQuantity; value: number }[];
  /** Ids of photos of what was entered on a round. */
  photos?: string[];
  /** Something that ought not to be: a limit passed, a call that failed, a safeguard off. */
  isAbnormal?: boolean;
}

/** Lines of one moment stand in this order: what happened, then what was said of it. */
const RANK: Record<Topic, number> = Object.fromEntries(
  (['reading', 'alarm', 'call', 'state', 'safeguard', 'plan', 'rota', 'round', 'entry', 'mark'] as const).map(
    (topic, i) => [topic, i],
  ),
) as Record<Topic, number>;

/**
 * One timeline out of the parts of the record, in the order of time. The same lines in any order make the same timeline.
 *
 * @param parts   lines of each part, in any order
 */
export function mergeTimeline(parts: readonly (readonly TimelineLine[])[]): TimelineLine[] {
  return parts
    .flat()
    .sort((a, b) => a.atMs - b.atMs || RANK[a.topic] - RANK[b.topic] || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}
