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
  { written, plans, tests }: Saved,
  { revision, changes }: { revision: number; changes: number },
): RecordEntry[] {
  const file = createHash('sha256').update(writeFacility(facility)).digest('hex');
  return [
    { kind: 'facility-imported', body: { by: who.id, revision, changes, file, rows: rowsOf(written) } },
    ...planEntries(who, plans),
    ...tests.map(({ id, safeguardId, on, result, withdraws }) => ({
      kind: result === 'withdrawn' ? 'test-withdrawn' : 'safeguard-tested',
      body: {
        by: who.id,
        safeguard: safeguardId,
        test: id,
        on,
        ...(result === 'withdrawn' ? { withdraws } : { result }),
      },
    })),
  ];
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
