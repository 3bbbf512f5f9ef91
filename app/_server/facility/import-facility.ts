import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { ok, type Result, refused } from '#core/result';
import { loadFacility } from '#data/facility/load-facility';
import { saveFacility } from '#data/facility/save-facility';
import { appendRecords } from '#data/records/append-records';
import { countRevision, holdSite } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { importRequest } from '#shape/facility/file-request';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import { groupDifferences } from './compare';
import { importEntries } from './import-entries';
import { offEntries } from './off-entries';
import { readFile } from './read-file';

export const importFacilityShape = importRequest;

/** What an import did. */
export interface Imported {
  site: { key: string; name: string };
  isNew: boolean;
  /** Systems in the file. */
  systems: number;
  /** Differences from what was stored; 0 for a new site and for a file that says what is stored. */
  changes: number;
  /** Revision of the site, 1 after its first import. */
  revision: number;
}

/**
 * Imports a facility file: a new site, or the site of its key made to be as the file says. All or nothing: the change, its
 * entries in the record and the call for new reviews are kept together.
 */
export async function importFacility(
  who: Who,
  { text, format, basedOn }: z.output<typeof importFacilityShape>,
): Promise<Result<Imported, Refusal>> {
  const read = readFile(text, format, now());
  if (!read.ok) return read;
  if (!may(who, 'import', read.value.site.key)) return refused({ why: 'not-allowed' });
  return await keepFacility(who, read.value, basedOn);
}

/**
 * Keeps a facility that was read and may be imported.
 *
 * @param basedOn   revision the person looked at; with another one stored, nothing is kept
 * @param isDemo    whether the site, if it is new, is one of the demonstration
 */
export async function keepFacility(
  who: Who,
  facility: Facility,
  basedOn?: number,
  isDemo = false,
): Promise<Result<Imported, Refusal>> {
  const at = now();
  return await inTransaction(async (tx) => {
    const { site } = facility;
    const held = await holdSite(tx, { ...site, isDemo }, at);
    if (basedOn !== undefined && basedOn !== held.revision) return refused(changedMeanwhile(site.name));
    return ok(await keep(tx, { who, facility, held, at }));
  });
}

async function keep(
  tx: Transaction,
  { who, facility, held, at }: { who: Who; facility: Facility; held: { id: string; revision: number }; at: Date },
): Promise<Imported> {
  const { site, systems } = facility;
  const before = await loadFacility(held.id, tx);
  const groups = before ? groupDifferences(before.facility, facility) : [];
  const saved = await saveFacility(tx, held.id, facility, { by: who.id, reason: 'import' }, at);
  const done = {
    site: { key: site.key, name: site.name },
    isNew: before === null,
    systems: systems.length,
    changes: groups.reduce((sum, { changes }) => sum + changes.length, 0),
  };
  if (before !== null && !saved.isChanged) return { ...done, revision: held.revision };
  const revision = await countRevision(tx, held.id);
  const change = { before: before?.facility ?? null, after: facility, idOf: saved.idOf };
  const entries = [
    ...importEntries(who, facility, saved, { revision, changes: done.changes }),
    ...(await offEntries(tx, who, held.id, change)),
  ];
  await appendRecords(tx, held.id, entries, at);
  await askForReviews(tx, { id: held.id, zone: site.zone }, at);
  return { ...done, revision };
}

function changedMeanwhile(name: string): Refusal {
  return { why: 'conflict', now: `${name} was changed since you looked at the difference: look at it again.` };
}
