import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { findHead, listRecords, recordParties } from '#data/records/list-records';
import { recordPlace } from '#shape/record/record-place';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { kindTitle } from './entry-words';
import { type ToldEntry, toldEntries } from './told-entries';

/** A choice of a filter. */
export interface Choice {
  value: string;
  name: string;
}

/** One page of a site's record. */
export interface RecordPage {
  site: { key: string; name: string; zone: string };
  entries: ToldEntry[];
  /** The filter, as it was asked for. */
  asked: { kind?: string; by?: string; before?: number; times?: 'utc' };
  kinds: Choice[];
  people: Choice[];
  /** Asks for the entries before those shown; null when there are none. */
  olderBefore: number | null;
  /** Where the chain stands; null before the first entry. */
  head: { seq: number; seal: string } | null;
  /** Whether the person may have every seal worked out again. */
  mayVerify: boolean;
}

export const readRecordShape = recordPlace;

/** Entries on one page. */
const PAGE = 50;

/** What was done at a site, newest first, a page at a time. */
export async function readRecord(
  who: Who,
  { site, ...asked }: z.output<typeof readRecordShape>,
): Promise<Result<RecordPage, Refusal>> {
  const found = await siteFor(who, 'read-record', site);
  if (!found.ok) return found;
  const entry = found.value;
  const [links, parties, head] = await Promise.all([
    listRecords(entry.id, asked, PAGE + 1),
    recordParties(entry.id),
    findHead(entry.id),
  ]);
  const shown = links.slice(0, PAGE);
  const names = await accountNames(parties.by);
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    entries: await toldEntries(entry.id, shown),
    asked,
    kinds: byName(parties.kinds.map((kind) => ({ value: kind, name: kindTitle(kind) }))),
    people: byName(parties.by.map((id) => ({ value: id, name: names.get(id) ?? id }))),
    olderBefore: links.length > PAGE ? (shown.at(-1)?.seq ?? null) : null,
    head,
    mayVerify: may(who, 'audit', site),
  });
}

function byName(choices: Choice[]): Choice[] {
  return choices.sort((a, b) => a.name.localeCompare(b.name, 'en'));
}
