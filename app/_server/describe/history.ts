import 'server-only';
import { findThings } from '#data/facility/thing-rows';
import { thingRecords } from '#data/records/thing-records';
import { type ToldEntry, toldEntries } from '../record/told-entries';
import type { ThingAddress } from './find-thing';
import { THING_KINDS } from './things';

/** What became of a thing so far. */
export interface History {
  /** Instants at which one that had its key before was retired, ISO 8601 in UTC, the latest first. */
  before: string[];
  /** Entries of the record about it and about those before it, newest first. */
  entries: Pick<ToldEntry, 'seq' | 'at' | 'by' | 'what'>[];
}

/** Entries that are shown of one thing; the whole record has its own page. */
const MOST = 50;

/** The history of a thing: its entries in the record, and those of whatever had its key before. */
export async function historyOf(siteId: string, { noun, system, key = '' }: ThingAddress): Promise<History> {
  const { table } = THING_KINDS[noun];
  if (table === undefined) return { before: [], entries: [] };
  const rows = await findThings(siteId, { table, system: system ?? null, key });
  const links = await thingRecords(
    siteId,
    rows.map(({ id }) => id),
    MOST,
  );
  const told = await toldEntries(siteId, links);
  return {
    before: rows.flatMap(({ retiredAt }) => (retiredAt ? [retiredAt.toISOString()] : [])),
    entries: told.map(({ seq, at, by, what }) => ({ seq, at, by, what })),
  };
}
