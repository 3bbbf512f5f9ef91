import type { SensorQuantity } from '#core/facility/system';
import type { DateOrder, FileRow, LayoutDraft } from '#core/readings/file/layout';
import type { Question } from '#core/readings/file/questions';
import type { Quality } from '#core/readings/reading';

/** A sensor that a column can be. */
export interface SensorOption {
  id: string;
  key: string;
  name: string;
  system: string;
  systemName: string;
  quantity: SensorQuantity;
}

/** One column of a file. */
export interface ColumnView {
  place: number;
  name: string;
  unit: string;
  filled: number;
  zeros: number;
  examples: string[];
  isScale: boolean;
  isTime: boolean;
}

/** One row as it would be stored. */
export interface PreviewView {
  line: number;
  fault: string | null;
  at: string | null;
  there: string | null;
  values: {
    sensor: string;
    raw: string;
    value: number;
    quality: Quality;
    reason: string | null;
    flag: string | null;
  }[];
  faults: string[];
}

/** What is known of a file, and what has to be said of it. */
export interface LookView {
  name: string;
  rows: number;
  preamble: string[];
  draft: LayoutDraft;
  columns: ColumnView[];
  orders: DateOrder[];
  needsZone: boolean;
  alike: { id: string; name: string }[];
  from: { id: string; name: string } | null;
  questions: Question[];
  raw: { first: FileRow[]; last: FileRow[] };
  preview: PreviewView[] | null;
  sensors: SensorOption[];
  zone: string;
  before: string | null;
}

interface OrderView {
  skipped: number;
  repeated: number;
  second: number;
  jumps: number;
  jumpLines: number[];
  isNewestFirst: boolean;
}

/** What came of a file. */
export interface TakenView {
  site: { key: string; name: string; zone: string };
  name: string;
  layout: string;
  outcome: {
    rows: number;
    stored: number;
    repeats: number;
    conflicts: number;
    refused: number;
    missing: number;
    from: string | null;
    to: string | null;
    order: OrderView;
    sensors: { sensor: string; stored: number; repeats: number; conflicts: number; suspect: number; bad: number }[];
    firstConflicts: { line: number; sensor: string; at: string; value: number }[];
    firstRefused: { line: number; place: number | null; says: string }[];
  };
  sensors: Omit<SensorOption, 'quantity'>[];
}
