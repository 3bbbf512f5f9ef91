import type { Result } from '../result';

/** A reading as a source sent it, before it is known whose it is. */
export interface Arrived {
  /** What the source calls the sensor. */
  name: string;
  /** When it was taken, ms since 1970. */
  atMs: number;
  /** True or false for wet or dry. */
  value: number | boolean;
  /** As it was written; absent: the sensor's own. */
  unit?: string;
  /** Whether it is only for the record and calls nobody: of the past, sent once the line was back. */
  isOfPast?: boolean;
  /** Whether it may have waited on its way and has no time of its own, so that it may be older than it says. */
  mayHaveWaited?: boolean;
}

/** What is wrong with one record that was sent. */
export interface RecordFault {
  /** The field as the format calls it. */
  field: string;
  /** What is wrong with it, as a sentence's end. */
  why: string;
  /** What the source calls the sensor, where that much was understood. */
  name?: string;
}

/** A record that was understood, or what is wrong with it. */
export type ReadRecord = Result<Arrived, RecordFault>;

/** Records that one body may hold. */
export const MOST_RECORDS = 20_000;

/** What is wrong with a body as a whole: nothing of it is stored. */
export interface BodyFault {
  /** Too many records, or not to be understood. */
  kind: 'too-large' | 'malformed';
  /** The field, such as `[3].bt`; empty for the whole. */
  field: string;
  why: string;
}
