import type { SensorQuantity } from '#core/facility/system';
import type { ByTwo } from '#core/rounds/by-two';
import type { Check } from '#core/rounds/check';
import type { Standing } from '#core/rounds/due';
import type { RoundCounts } from '#core/rounds/count';
import type { EntryValue } from '#core/rounds/entry';
import type { LastSeen } from '#core/rounds/pack';
import type { UsedRate } from '#core/rounds/rate';
import type { Cleanness } from '#core/rounds/places';

/** Somebody did something at an instant (UTC, ISO). */
export interface DoneView {
  at: string;
  by: string;
  note?: string | null;
}

/** A walk in the list of a site. */
export interface WalkView {
  slot: string | null;
  /** Key of the kept sheet; null for a walk of the timetable or besides. */
  sheet: string | null;
  name: string;
  dueAt: string;
  lateAt: string | null;
  standing: Standing;
  round: string | null;
  begun: DoneView | null;
  signed: DoneView | null;
  secondLook: DoneView | null;
  wantsSecond: boolean;
  systems: string[] | null;
}

/** A round that was begun and never signed, and stands in no list. */
export interface UnsignedView {
  round: string;
  name: string;
  of: 'sheet' | 'timetable' | 'besides';
  begun: DoneView;
  systems: string[];
}

/** The rounds of a site. */
export interface RoundsView {
  site: { key: string; name: string; zone: string };
  now: string;
  lines: WalkView[];
  slots: { key: string; name: string }[];
  waiting: (RoundCounts & { round: string })[];
  unsigned: { lines: UnsignedView[]; many: number };
  mayWalk: boolean;
  mayLook: boolean;
  nextRound: string;
}

/** An entry on a line. */
export interface EntryView {
  id: string;
  at: string;
  by: string;
  value: EntryValue | null;
  notDone: string | null;
  note: string | null;
  supersedes: string | null;
  reason: string | null;
  /** Ids of its photos. */
  photos: string[];
  /** How far the clock of the telephone was off, s; null when it was not. */
  clockOffS: number | null;
}

/** A line of a sheet. */
export interface LineView {
  check: Check;
  entries: EntryView[];
  last: LastSeen | null;
  /** What was seen on it before, the latest first; `last` among it. */
  before: LastSeen[];
  isAbnormal: boolean;
  /** What is used a day, where the line notes it; null where nothing tells. */
  rate: UsedRate | null;
  nextEntry: string;
  /** Id of the next photo. */
  nextPhoto: string;
}

/** What stands at a system: safeguards out of service, open alarms, states in force. */
export interface StandsView {
  off: { name: string; until: string }[];
  alarms: { id: string; name: string; raisedAt: string; isActive: boolean; isAcknowledged: boolean }[];
  states: { state: string; until: string; outstayed: boolean }[];
  suppressed: { run: string; name: string; how: string; until: string; isActive: boolean }[];
}

/** A place of a round. */
export interface PlaceView {
  number: number;
  name: string;
  system: { key: string; name: string } | null;
  cleanness: Cleanness;
  stands: StandsView;
  lines: LineView[];
}

/** A round. */
export interface RoundView {
  site: { key: string; name: string; zone: string };
  round: {
    id: string;
    name: string;
    isBesides: boolean;
    dueAt: string;
    begun: DoneView;
    signed: DoneView | null;
    /** The second signature, where its sheet asks for one. */
    second: DoneView | null;
    byTwo: ByTwo | null;
    secondLook: (DoneView & { id: string }) | null;
    /** Second looks that were taken back. */
    looksTaken: (DoneView & { taken: { at: string; by: string; reason: string } })[];
  };
  places: PlaceView[];
  /** The systems of the site, and the id of the next call for help. */
  systems: { key: string; name: string }[];
  nextCall: string;
  alike: string[];
  /** What stood still in a week of entries though it would be seen to move. */
  unmoved: { line: string; quantity: SensorQuantity | null; many: number; fromMs: number }[];
  quick: { places: number; tookS: number; leastS: number } | null;
  wasAt: { name: string; cleanness: Cleanness } | null;
  self: string;
  isSigner: boolean;
  mayWalk: boolean;
  mayLook: boolean;
}

/** Address of the rounds of a site, of one of them, or of a place of it. */
export function roundsAddress(site: string, round?: string, place?: number): string {
  const end = [round, place].filter((part) => part !== undefined).map((part) => `/${part}`);
  return `/sites/${encodeURIComponent(site)}/rounds${end.join('')}`;
}

/** Lines of a place that nobody has entered. */
export function blankOf({ lines }: PlaceView): LineView[] {
  return lines.filter(({ entries }) => entries.length === 0);
}

/** Address of a photo of an entry. */
export function photoAddress(site: string, photo: string): string {
  return `/api/rounds/${encodeURIComponent(site)}/photos/${photo}`;
}
