import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { loadFacility } from '#data/facility/load-facility';
import { saveFacility } from '#data/facility/save-facility';
import { findThings } from '#data/facility/thing-rows';
import { appendRecords } from '#data/records/append-records';
import { countRevision, holdSite, type SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { keepRequest } from '#shape/describe/edit';
import { now } from '../clock';
import { groupDifferences } from '../facility/compare';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import { changeEntries } from './change-entries';
import { findStoredSite } from '../reviews/find-stored-site';
import { type Prepared, prepareChange } from './prepare-change';

export const keepChangeShape = keepRequest;
type Keep = z.output<typeof keepChangeShape>;

/** What keeping a change did. */
export interface ChangeKept {
  site: string;
  /** Differences from what was stored; 0 when nothing was different. */
  changes: number;
  /** Revision of the site. */
  revision: number;
  /** Where the thing stands now; null for one that was retired. */
  thing: { noun: Keep['noun']; system: string | null; key: string } | null;
}

/**
 * Keeps a change of the description. All or nothing: the change, its entry in the record and the call for new reviews. When
 * somebody else has changed the site since the difference was looked at, nothing is kept.
 */
export async function keepChange(who: Who, edit: Keep): Promise<Result<ChangeKept, Refusal>> {
  const found = await findStoredSite(who, 'describe', edit.site);
  if (!found.ok) return found;
  const { entry, today } = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    const held = await holdSite(tx, entry, at);
    const loaded = held.revision === edit.basedOn ? await loadFacility(held.id, tx) : null;
    if (!loaded) return refused(changedMeanwhile(entry.name));
    const prepared = prepareChange(loaded.facility, edit, today);
    if (!prepared.ok) return prepared;
    return ok(await keep(tx, { who, edit, entry, before: loaded.facility, prepared: prepared.value, at }));
  });
}

interface Keeping {
  who: Who;
  edit: Keep;
  entry: SiteEntry;
  before: Prepared['after'];
  prepared: Prepared;
  at: Date;
}

async function keep(tx: Transaction, { who, edit, entry, before, prepared, at }: Keeping): Promise<ChangeKept> {
  const { after, edited } = prepared;
  const groups = groupDifferences(before, after);
  const [living] = edited.before ? await findThings(entry.id, edited.before, tx) : [];
  const saved = await saveFacility(tx, entry.id, after, { by: who.id, reason: edited.why ?? null }, at, edited.orders);
  const done: ChangeKept = {
    site: edit.site,
    changes: groups.reduce((sum, { changes }) => sum + changes.length, 0),
    revision: edit.basedOn,
    thing: placeOf(edit, edited.after),
  };
  if (!saved.isChanged) return done;
  const revision = await countRevision(tx, entry.id);
  const { table, system = null, key = '' } = edited.after ?? {};
  const thing = table ? saved.idOf(table, system, key) : (living?.id ?? null);
  const former = edit.act === 'replace' ? living?.id : undefined;
  const { why, on } = edited;
  const entries = changeEntries(who, { edit, before, after, groups, saved, revision, thing, former, why, on });
  await appendRecords(tx, entry.id, entries, at);
  await askForReviews(tx, { id: entry.id, zone: after.site.zone }, at);
  return { ...done, revision };
}

function placeOf({ noun, act }: Keep, after: Prepared['edited']['after']): ChangeKept['thing'] {
  if (act === 'retire' || !after) return null;
  return { noun, system: after.system, key: after.key };
}

function changedMeanwhile(name: string): Refusal {
  return {
    why: 'conflict',
    now: `${name} was changed since you looked at the difference. What you typed is still here: look at the difference again.`,
  };
}
