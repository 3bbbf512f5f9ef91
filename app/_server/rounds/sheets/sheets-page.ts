import 'server-only';
import type { Standing } from '#core/rounds/due';
import type { Frequency } from '#core/rounds/frequency';
import type { QuietNote } from '#core/rounds/quiet-sheet';
import type { RoundSheet, Signer } from '#core/rounds/round-sheet';
import type { Schedule } from '#core/rounds/schedule';
import type { SheetPlace } from '#core/rounds/sheet';

/** What tells one sheet from another. */
interface Summary {
  key: string;
  name: string;
  schedule: Schedule;
  frequency: Frequency;
  lines: number;
  signedBy: Signer | null;
  second: boolean;
}

/** The sheets of a site. Instants are UTC, ISO. */
export interface SheetsPage {
  site: { key: string; name: string; zone: string };
  sheets: (Summary & {
    version: number;
    since: string | null;
    /** Lines whose thing is no longer described. */
    gone: number;
    open: { standing: Standing; dueAt: string } | null;
    next: string | null;
    missed: number;
  })[];
  drafts: (Summary & { basedOn: number | null; changed: { at: string; by: string } })[];
  /** What is due in the sixty days to come, in order. */
  ahead: { sheet: string; dueAt: string }[];
  systems: { key: string; name: string }[];
  mayChange: boolean;
}

/** One sheet, as it is edited. */
export interface SheetPage {
  site: { key: string; name: string; zone: string };
  /** As it is to be edited: the draft, else what is in force. */
  sheet: RoundSheet;
  isDraft: boolean;
  /** Version in force; null where there is none. */
  version: number | null;
  /** Version that the draft was begun from. */
  basedOn: number | null;
  versions: { version: number; at: string; by: string; reason: string | null }[];
  /** Every line that the description offers, place by place. */
  places: SheetPlace[];
  systems: { key: string; name: string; tanks: { key: string; name: string }[] }[];
  gone: string[];
  /** Loud tests that would fall into quiet hours; null when none would. Instants are ms. */
  quiet: QuietNote | null;
  mayChange: boolean;
}
