import 'server-only';
import { createHash } from 'node:crypto';
import type { Facility } from '#core/facility/facility';
import type { Saved } from '#data/facility/save-facility';
import type { RecordEntry } from '#data/records/seal';
import { writeFacility } from '#shape/facility/write-facility';
import type { Who } from '../gate/who';

/**
 * What the record of a site gains by an import: the import itself, each plan that came into force, each test of a
 * safeguard. No entry holds the name of a person: names are kept apart, so that one can be erased.
 *
 * @param revision   of the site after the import
 * @param changes    differences from what was stored
 */
export function importEntries(
  who: Who,
  facility: Facility,
  saved: Saved,
  { revision, changes }: { revision: number; changes: number },
): RecordEntry[] {
  const file = createHash('sha256').update(writeFacility(facility)).digest('hex');
  return [
    { kind: 'facility-imported', body: { by: who.id, revision, changes, file, rows: rowsOf(saved.written) } },
    ...savedEntries(who, saved),
  ];
}

/** What the record gains by whatever was saved with a facility: each plan that came into force, each test of a safeguard. */
export function savedEntries(who: Who, { plans, tests }: Pick<Saved, 'plans' | 'tests'>): RecordEntry[] {
  return [
    ...planEntries(who, plans),
    ...tests.map(({ id, safeguardId, on, result, withdraws, byId, steps, expected, seen }) => ({
      kind: result === 'withdrawn' ? 'test-withdrawn' : 'safeguard-tested',
      body: {
        by: who.id,
        safeguard: safeguardId,
        test: id,
        on,
        ...(result === 'withdrawn' ? { withdraws } : said({ result, looked: byId, steps, expected, seen })),
      },
    })),
  ];
}

/** What was said of a test; what nobody said is left out. */
function said(fields: Record<string, string | null>): Record<string, string | null> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
}

/** What the record gains by plans that came into force. */
export function planEntries(who: Who, plans: Saved['plans']): RecordEntry[] {
  return plans.map(({ equipmentId, version, body }) => ({
    kind: 'plan-in-force',
    body: { by: who.id, equipment: equipmentId, version, plan: body },
  }));
}

/** How many rows of which table were added, and which were changed or retired. */
function rowsOf(written: Saved['written']): Record<string, unknown> {
  const tables = Object.entries(written);
  return Object.fromEntries(tables.map(([table, { added, ...others }]) => [table, { added: added.length, ...others }]));
}
