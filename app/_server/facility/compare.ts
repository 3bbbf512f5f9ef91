import 'server-only';
import { type Difference, difference } from '#core/facility/difference';
import type { Facility } from '#core/facility/facility';
import type { Custom } from '#core/units/shown';
import { loadFacility } from '#data/facility/load-facility';
import { findSite } from '#data/sites';
import { differenceWords } from './difference-words';

/** What importing a file would do. */
export interface ImportPreview {
  site: { key: string; name: string };
  /** No site of this key is stored. */
  isNew: boolean;
  /** Revision of the stored site, to be given with the import; 0 when it is new. */
  basedOn: number;
  /** Systems in the file. */
  systems: number;
  /** What would be different; empty when the file says what is stored. */
  groups: DifferenceGroup[];
}

/** Differences of one system, or of the site as a whole. */
export interface DifferenceGroup {
  /** Key of the system; null for the site. */
  system: string | null;
  name: string;
  changes: Change[];
}

export interface Change extends Difference {
  /** The change in words. */
  words: string;
}

/** Compares a facility with what is stored of its site. */
export async function compareWithStored(facility: Facility): Promise<ImportPreview> {
  const { key, name } = facility.site;
  const entry = await findSite(key);
  const loaded = entry && (await loadFacility(entry.id));
  return {
    site: { key, name },
    isNew: !loaded,
    basedOn: loaded?.revision ?? 0,
    systems: facility.systems.length,
    groups: loaded ? groupDifferences(loaded.facility, facility) : [],
  };
}

/** The difference between two facilities, the site's own first, then system by system. */
export function groupDifferences(before: Facility, after: Facility, custom: Custom = 'metric'): DifferenceGroup[] {
  const names = new Map([...before.systems, ...after.systems].map(({ key, name }) => [key, name]));
  const groups = new Map<string | null, DifferenceGroup>();
  for (const one of difference(before, after)) {
    const [list, key] = one.path.split('/');
    const system = list === 'systems' && key !== undefined ? key : null;
    const group = groups.get(system) ?? {
      system,
      name: system === null ? 'The site' : (names.get(system) ?? system),
      changes: [],
    };
    group.changes.push({ ...one, words: differenceWords(one, before, after, custom) });
    groups.set(system, group);
  }
  return [...groups.values()].sort((a, b) => Number(a.system !== null) - Number(b.system !== null));
}
