import type { Standing } from '#core/rounds/due';
import type { Frequency } from '#core/rounds/frequency';
import type { QuietNote } from '#core/rounds/quiet-sheet';
import type { RoundSheet, Signer } from '#core/rounds/round-sheet';
import type { Schedule } from '#core/rounds/schedule';
import type { SheetPlace } from '#core/rounds/sheet';

interface SummaryView {
  key: string;
  name: string;
  schedule: Schedule;
  frequency: Frequency;
  lines: number;
  signedBy: Signer | null;
  second: boolean;
}

/** A sheet in force. Instants are UTC, ISO. */
export interface SheetInForceView extends SummaryView {
  version: number;
  since: string | null;
  gone: number;
  open: { standing: Standing; dueAt: string } | null;
  next: string | null;
  missed: number;
}

/** A sheet that is being written. */
export interface SheetDraftView extends SummaryView {
  basedOn: number | null;
  changed: { at: string; by: string };
}

/** The sheets of a site. */
export interface SheetsView {
  site: { key: string; name: string; zone: string };
  sheets: SheetInForceView[];
  drafts: SheetDraftView[];
  ahead: { sheet: string; dueAt: string }[];
  systems: { key: string; name: string }[];
  mayChange: boolean;
}

/** One sheet, as it is edited. */
export interface SheetView {
  site: { key: string; name: string; zone: string };
  sheet: RoundSheet;
  isDraft: boolean;
  version: number | null;
  basedOn: number | null;
  versions: { version: number; at: string; by: string; reason: string | null }[];
  places: SheetPlace[];
  systems: { key: string; name: string; tanks: { key: string; name: string }[] }[];
  gone: string[];
  /** Loud tests that would fall into quiet hours; null when none would. Instants are ms. */
  quiet: QuietNote | null;
  mayChange: boolean;
}

/** Address of the sheets of a site, or of one of them. */
export function sheetsAddress(site: string, sheet?: string): string {
  const end = sheet === undefined ? '' : `/${encodeURIComponent(sheet)}`;
  return `/sites/${encodeURIComponent(site)}/rounds/sheets${end}`;
}
