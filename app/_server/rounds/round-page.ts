import 'server-only';
import type { Check } from '#core/rounds/check';
import type { ByTwo } from '#core/rounds/by-two';
import type { Entry, EntryValue } from '#core/rounds/entry';
import type { TooQuick } from '#core/rounds/pace';
import type { UsedRate } from '#core/rounds/rate';
import type { Unmoved } from '#core/rounds/unmoved';
import type { SheetPlace } from '#core/rounds/sheet';
import type { Stands } from './what-stands';

/** An entry with when it was made (UTC, ISO) and the name of who made it. */
export type ToldEntry = Omit<Entry, 'atMs'> & {
  at: string;
  /** Ids of its photos. */
  photos: string[];
  /** How far the clock of the telephone was off, s; null when it was not. */
  clockOffS: number | null;
};

/** A line of the sheet, what was recorded on it, and what was known of it before. */
export interface ToldLine {
  check: Check;
  /** In order, corrections among them: the last one stands. */
  entries: ToldEntry[];
  last: LastValue | null;
  /** What was seen on it before, the latest first. */
  before: LastValue[];
  isAbnormal: boolean;
  /** What is used a day, where the line notes it and two entries tell. */
  rate: UsedRate | null;
  /** Id of the next entry on it. */
  nextEntry: string;
  /** Id of the next photo. */
  nextPhoto: string;
}

/** What was known of a line before this round, and when that was (UTC, ISO). */
export interface LastValue {
  value: EntryValue;
  at: string;
  /** A sensor's own reading, or a round. */
  from: 'sensor' | 'round';
}

/** A place of a round. */
export interface ToldPlace extends Pick<SheetPlace, 'name' | 'system' | 'cleanness'> {
  /** From 1. */
  number: number;
  /** What stands at its system now. */
  stands: Stands;
  lines: ToldLine[];
}

interface Signed {
  id: string;
  at: string;
  by: string;
  note: string | null;
}

/** A round as it is walked, signed and looked at again. */
export interface RoundPage {
  site: { key: string; name: string; zone: string };
  round: {
    id: string;
    name: string;
    isBesides: boolean;
    dueAt: string;
    begun: { at: string; by: string };
    signed: Signed | null;
    /** The second signature, where its sheet asks for one. */
    second: Signed | null;
    byTwo: ByTwo | null;
    secondLook: Signed | null;
    /** Second looks that were taken back. */
    looksTaken: (Omit<Signed, 'id'> & { taken: { at: string; by: string; reason: string } })[];
  };
  places: ToldPlace[];
  /** The systems of the site, and the id of the next call for help. */
  systems: { key: string; name: string }[];
  nextCall: string;
  /** Lines whose number is the same to the last digit as on each of the three rounds before. */
  alike: string[];
  /** What stood still in a week of entries though it would be seen to move; told once it is signed. */
  unmoved: Unmoved[];
  /** Whether it was entered faster than it can be walked. */
  quick: TooQuick | null;
  /** Where whoever asks has last been on this round; null when nowhere yet. */
  wasAt: Pick<SheetPlace, 'name' | 'cleanness'> | null;
  /** Name of whoever asks. */
  self: string;
  isSigner: boolean;
  mayWalk: boolean;
  mayLook: boolean;
}
