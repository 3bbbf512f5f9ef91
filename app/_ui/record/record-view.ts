/** An entry of the record, in words. */
export interface EntryView {
  seq: number;
  /** UTC, ISO. */
  at: string;
  title: string;
  what: string;
  by: string | null;
  body: Record<string, unknown>;
  seal: string;
}

/** A choice of a filter. */
export interface Choice {
  value: string;
  name: string;
}

/** What of the record was asked for. */
export interface Asked {
  kind?: string;
  by?: string;
  before?: number;
  times?: 'utc';
}

/** One page of a site's record. */
export interface RecordView {
  site: { key: string; name: string; zone: string };
  entries: EntryView[];
  asked: Asked;
  kinds: Choice[];
  people: Choice[];
  olderBefore: number | null;
  head: { seq: number; seal: string } | null;
  mayVerify: boolean;
}

/**
 * The end of an address that asks for a part of the record.
 *
 * @param asked   what to ask for
 * @returns       beginning with a question mark, or empty
 */
export function askingFor(asked: Asked): string {
  const fields = Object.entries(asked).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]]));
  return fields.length === 0 ? '' : `?${new URLSearchParams(fields)}`;
}
