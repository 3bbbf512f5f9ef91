import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { listRecords, type StoredLink } from '#data/records/list-records';
import { writeCsv } from '#shape/csv/write-csv';
import { recordPart } from '#shape/record/record-place';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { timeIn } from '../local-day';
import { toldEntries } from './told-entries';

export const exportRecordShape = recordPart;

/** Entries read at once. */
const PAGE = 1000;
const HEAD = ['number', 'at (UTC)', 'at the site', 'who', 'account', 'kind', 'what', 'entry', 'seal'];

/** The record of a site as CSV, newest first: each entry in words, and as it was sealed. */
export async function exportRecord(
  who: Who,
  { site, ...part }: z.output<typeof exportRecordShape>,
): Promise<Result<{ name: string; text: string }, Refusal>> {
  const found = await siteFor(who, 'read-record', site);
  if (!found.ok) return found;
  const entry = found.value;
  const rows = [];
  let page: StoredLink[];
  let before: number | undefined;
  do {
    page = await listRecords(entry.id, { ...part, before }, PAGE);
    before = page.at(-1)?.seq;
    for (const told of await toldEntries(entry.id, page)) {
      const { seq, at, by, byId, kind, what, body, seal } = told;
      const instant = new Date(at);
      rows.push([seq, instant, timeIn(entry.zone, instant), by, byId, kind, what, JSON.stringify(body), seal]);
    }
  } while (page.length === PAGE);
  return ok({ name: `${site}-record.csv`, text: writeCsv(HEAD, rows) });
}
