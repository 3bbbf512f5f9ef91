import type { Facility } from '#core/facility/facility';
import type { WeekAhead } from '#core/review/people/coming-weeks';
import type { DutyException } from '#core/rota/rota';
import type { SiteCover } from '#core/review/people/site-cover';
import type { Typed, WhatIfField } from '#core/review/people/what-if-fields';

/** A coming week that leaves less, and the swaps and leave behind it. */
export interface WeekBehindView extends WeekAhead {
  behind: DutyException[];
}

/** What the rota of a site leaves to spare. */
export interface CoverView {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  column: 'claimed' | 'tested';
  cover: SiteCover;
  weeks: WeekBehindView[];
  missing: string[];
  asked: Typed;
  wrong: Partial<Record<WhatIfField, string>>;
  mayDescribe: boolean;
}
