import type { ByTwo } from './by-two';
import type { Entry, EntryValue } from './entry';
import type { Signer } from './round-sheet';
import type { SheetPlace } from './sheet';

export const PACK_FORMAT = 'holdfast.walk/1';

/** All that a telephone takes along to walk the rounds of a site where there is no signal. Times are UTC, ISO. */
export interface WalkPack {
  format: typeof PACK_FORMAT;
  /** Who it was made for: nobody else is shown it on the same telephone. */
  account: { id: string; name: string };
  site: { key: string; name: string; zone: string };
  /** When it was put together. */
  at: string;
  /** Walks of the timetable and of kept sheets that may be begun, are begun, or come within a day and a half, in order. */
  walks: PackedWalk[];
  /** Sheets that can be walked besides the timetable. */
  besides: Pick<PackedWalk, 'slot' | 'name' | 'places'>[];
  /** The systems of the site, for a call for help. */
  systems?: { key: string; name: string }[];
  /** What stood at the systems, by their key; `-` for the site itself. */
  stands: Record<string, PackedStands>;
  /** What was seen on each line before, the latest first. */
  lasts: Record<string, LastSeen[]>;
}

/** A walk that can be walked out of reach. */
export interface PackedWalk {
  /** Key of the timetable's slot, or what `slotOfSheet` makes of a kept sheet's. */
  slot: string;
  name: string;
  due: string;
  opensAt: string;
  lateAt: string;
  closesAt: string;
  /** Its round, once somebody has begun it. */
  round: string | null;
  begun: { at: string; by: string } | null;
  /** Who signed it, where somebody else is to sign it as well. */
  signed?: { at: string; by: string; isOwn: boolean };
  /** What is asked of its signatures where that is more than one by whoever walked it, and whether this person has the role. */
  signing?: { byTwo: ByTwo | null; by: Signer | null; hasRole: boolean };
  places: SheetPlace[];
  /** What is on it already, in order. */
  entries: PackedEntry[];
}

/** An entry with the name of whoever made it. */
export type PackedEntry = Omit<Entry, 'atMs'> & { at: string };

/** What was known of a line at some time. */
export interface LastSeen {
  value: EntryValue;
  at: string;
  /** A sensor's own reading, or a round. */
  from: 'sensor' | 'round';
}

/** What stood at a system. */
interface PackedStands {
  off: { name: string; until: string }[];
  alarms: { id: string; name: string; raisedAt: string; isActive: boolean; isAcknowledged: boolean }[];
  states: { state: string; until: string; outstayed: boolean }[];
  suppressed: { run: string; name: string; how: string; until: string; isActive: boolean }[];
}

/** Nothing stands there, as far as is known. */
export const NOTHING_STANDS: PackedStands = { off: [], alarms: [], states: [], suppressed: [] };
