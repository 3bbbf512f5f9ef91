import 'server-only';
import type { Facility } from '#core/facility/facility';
import { checkReferences } from '#core/facility/check-references';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { ok, type Result, refused } from '#core/result';
import { loadFacility } from '#data/facility/load-facility';
import { saveFacility } from '#data/facility/save-facility';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import type { RecordEntry } from '#data/records/seal';
import { type SheetDraft, listSheetDrafts } from '#data/rounds/sheet-drafts';
import { listSheetsInForce, type SheetInForce } from '#data/rounds/sheet-versions';
import { countRevision, holdSite, type SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { wake } from '#data/wake';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';
import { askForReviews } from '../../reviews/ask-for-reviews';

/** The sheets of a site while a transaction holds it. */
export interface HeldSheets {
  tx: Transaction;
  site: SiteEntry;
  facility: Facility;
  drafts: Map<string, SheetDraft>;
  inForce: SheetInForce[];
  at: Date;
}

/** What changing sheets answers: where they are. */
export type SheetsChanged = Result<{ site: string }, Refusal>;

/** Does something with the sheets of a site, or their drafts, in one transaction. */
export async function changeSheets(
  who: Who,
  key: string,
  work: (held: HeldSheets) => Promise<Result<unknown, Refusal>>,
): Promise<SheetsChanged> {
  const found = await siteFor(who, 'describe', key);
  if (!found.ok) return found;
  const at = now();
  return await inTransaction(async (tx) => {
    const site = await holdSite(tx, found.value, at);
    const loaded = await loadFacility(site.id, tx);
    if (!loaded) return refused({ why: 'not-found', what: 'site' });
    const [drafts, inForce] = [await listSheetDrafts(site.id, tx), await listSheetsInForce(site.id, tx)];
    const done = await work({ tx, site: found.value, facility: loaded.facility, drafts, inForce, at });
    if (!done.ok) return done;
    await news(tx, site.id, 'rounds');
    return ok({ site: found.value.key });
  });
}

/** What is said of the sheets that a change touches. */
export interface SheetChange {
  sheets: RoundSheet[];
  why: string | null;
  /** What the record gains, once it is known which ids and versions they have. */
  told: (inForce: readonly SheetInForce[]) => RecordEntry[];
}

/** Makes these the sheets of a site; what follows from them is worked out by a worker. */
export async function keepSheets(
  who: Who,
  { tx, site, facility, at }: HeldSheets,
  { sheets, why, told }: SheetChange,
): Promise<Result<null, Refusal>> {
  const { sheets: _before, ...rest } = facility;
  const after: Facility = sheets.length > 0 ? { ...rest, sheets } : rest;
  const problems = checkReferences(after).filter(({ path }) => path[0] === 'sheets');
  if (problems.length > 0) {
    const faults = problems.map(({ path, message }) => ({
      path: path.slice(2).join('.'),
      message: `${sheets[Number(path[1])]?.name}: ${message}`,
    }));
    return refused({ why: 'invalid', faults });
  }
  const saved = await saveFacility(tx, site.id, after, { by: who.id, reason: why }, at);
  if (!saved.isChanged) return ok(null);
  await countRevision(tx, site.id);
  await appendRecords(tx, site.id, told(await listSheetsInForce(site.id, tx)), at);
  await askForReviews(tx, site, at);
  await wake(tx, 'sheets-due', { site: site.id }, { key: `sheets-due:${site.id}` });
  return ok(null);
}
