/**
 * What this room knows: when somebody walks past, and what they look at.
 * What it leaves out: the sheets and entries themselves, which come with the record.
 * Where the numbers come from: the site's own timetable.
 */
import type { Day } from '../facility/site';

export const ASPECTS = ['equipment', 'temperature', 'level', 'salinity', 'oxygen', 'animals', 'floor'] as const;
export type Aspect = (typeof ASPECTS)[number];

/** A round that is walked every week on these days at this local time. */
export interface RoundSlot {
  key: string;
  name: string;
  days: Day[];
  at: string;
  /** Systems walked; absent means all. */
  systems?: string[];
  sees: Aspect[];
}
