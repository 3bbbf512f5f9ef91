import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Safeguard } from '#core/plans/safeguard';
import { canonicalText } from '#data/canonical';
import { nameIdFor } from '#data/facility/names';
import type { Saved } from '#data/facility/save-facility';
import type { RecordEntry } from '#data/records/seal';
import type { Transaction } from '#data/transaction';
import type { Who } from '../gate/who';

interface Placed {
  /** Key of its system; null for one of the site. */
  system: string | null;
  safeguard: Safeguard;
}

/**
 * What the record gains by safeguards that a file takes out of service, or puts back: the same as if it had been done on
 * screen.
 *
 * @param before   the site as it was; null for a new one
 * @param idOf     ids of what was saved
 */
export async function offEntries(
  tx: Transaction,
  who: Who,
  siteId: string,
  { before, after, idOf }: { before: Facility | null; after: Facility; idOf: Saved['idOf'] },
): Promise<RecordEntry[]> {
  const held = new Map(before ? placed(before).map((one) => [nameOf(one), one.safeguard.off]) : []);
  const entries: RecordEntry[] = [];
  for (const one of placed(after)) {
    const { off } = one.safeguard;
    const was = held.get(nameOf(one));
    if (canonicalText(off ?? null) === canonicalText(was ?? null)) continue;
    const body = { by: who.id, safeguard: idOf('safeguard', one.system, one.safeguard.key) };
    if (off) {
      const { by, why, since, until } = off;
      const owner = await nameIdFor(tx, siteId, by);
      entries.push({ kind: 'safeguard-off', body: { ...body, owner, why, since, until } });
    } else if (was) {
      entries.push({ kind: 'safeguard-back', body: { ...body, since: was.since, until: was.until } });
    }
  }
  return entries;
}

function placed({ safeguards, systems }: Facility): Placed[] {
  return [
    ...safeguards.map((safeguard) => ({ system: null, safeguard })),
    ...systems.flatMap((system) => system.safeguards.map((safeguard) => ({ system: system.key, safeguard }))),
  ];
}

function nameOf({ system, safeguard }: Placed): string {
  return `${system ?? ''}/${safeguard.key}`;
}
