import 'server-only';
import type { Facility } from '#core/facility/facility';
import { loadFacility } from '#data/facility/load-facility';
import type { SiteEntry } from '#data/sites';
import { inputHash } from './input-hash';

/** A site as stored, with what its reviews depend on. */
export interface StoredSite {
  facility: Facility;
  systemIds: ReadonlyMap<string, string>;
  /** Input hash of each system by key, for the day last asked for. */
  hashes: ReadonlyMap<string, string>;
}

interface Kept extends StoredSite {
  revision: number;
  on: string;
}

/** Sites kept in memory. */
const MOST = 50;
const kept = new Map<string, Kept>();

/**
 * The facility of a site and what each of its reviews depends on. It is read once for each revision: whatever changes a
 * facility counts the revision up.
 *
 * @param on   ISO date in the site's zone
 * @returns    null when the site is gone
 */
export async function storedSite({ id, revision }: SiteEntry, on: string): Promise<StoredSite | null> {
  const known = kept.get(id);
  if (known?.revision === revision && known.on === on) return known;
  const loaded = known?.revision === revision ? known : await loadFacility(id);
  if (!loaded) return null;
  const { facility, systemIds } = loaded;
  const hashes = new Map(facility.systems.map((system) => [system.key, inputHash(facility, system, on)]));
  const fresh: Kept = { facility, systemIds, hashes, revision: loaded.revision, on };
  kept.delete(id);
  kept.set(id, fresh);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return fresh;
}
