import type { Facility } from '#core/facility/facility';
import { type Loaded, loadFacility } from '#data/facility/load-facility';
import { findSite } from '#data/sites';
import { LOCAL_PERSON } from '#server/gate/who';
import { type Imported, keepFacility } from '#server/facility/import-facility';

/** Keeps a facility as an import does. */
export async function keep(facility: Facility): Promise<Imported> {
  const kept = await keepFacility(LOCAL_PERSON, facility);
  if (!kept.ok) throw new Error(JSON.stringify(kept.reason));
  return kept.value;
}

/** What is stored under the key of a site. */
export async function stored(key: string): Promise<Loaded & { siteId: string }> {
  const site = await findSite(key);
  const loaded = site && (await loadFacility(site.id));
  if (!loaded) throw new Error(`no site ${key}`);
  return { ...loaded, siteId: site.id };
}
