import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { loadFacility } from '#data/facility/load-facility';
import { saveFacility } from '#data/facility/save-facility';
import { appendRecords } from '#data/records/append-records';
import { countRevision, holdSite } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { startKeep } from '#shape/start/start-request';
import { now } from '../clock';
import { savedEntries } from '../facility/import-entries';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import { readAnswers } from './read-answers';

export const keepStartShape = startKeep;

/** A system that was begun. */
export interface Started {
  site: string;
  system: string;
  name: string;
}

/** Keeps the system that the answers describe, its first plans in force, and calls for its review: all of it or nothing. */
export async function keepStart(
  who: Who,
  { site, units, draft, basedOn }: z.output<typeof keepStartShape>,
): Promise<Result<Started, Refusal>> {
  const found = await siteFor(who, 'describe', site);
  if (!found.ok) return found;
  const entry = found.value;
  return await inTransaction(async (tx) => {
    const at = now();
    const held = await holdSite(tx, entry, at);
    if (held.revision !== basedOn)
      return refused({ why: 'conflict', now: `${entry.name} was changed since you looked: look at it again.` });
    const loaded = await loadFacility(held.id, tx);
    if (!loaded) return refused({ why: 'not-found', what: 'site' });
    const read = readAnswers(loaded.facility, draft, units);
    if (!read.ok) return read;
    const { facility, system } = read.value;
    const saved = await saveFacility(tx, held.id, facility, { by: who.id, reason: 'begun with its first answers' }, at);
    const revision = await countRevision(tx, held.id);
    const [id] = saved.written.system?.added ?? [];
    const described = { by: who.id, system: id ?? system.key, revision };
    const entries = [{ kind: 'system-described', body: described }, ...savedEntries(who, saved)];
    await appendRecords(tx, held.id, entries, at);
    await askForReviews(tx, { id: held.id, zone: entry.zone }, at);
    return ok({ site, system: system.key, name: system.name });
  });
}
