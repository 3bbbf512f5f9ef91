import 'server-only';
import type { System } from '#core/facility/system';
import { ok, type Result, refused } from '#core/result';
import type { SiteEntry } from '#data/sites';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from './find-stored-site';
import type { StoredSite } from './stored-site';

/** A system in its site, as stored. */
export interface Place {
  entry: SiteEntry;
  /** The day at the site, ISO date. */
  on: string;
  stored: StoredSite;
  system: System;
  systemId: string;
}

/** Finds a system for somebody. What they may not see is not found. */
export async function findPlace(who: Who, site: string, system: string): Promise<Result<Place, Refusal>> {
  const place = await findStoredSite(who, 'see', site);
  if (!place.ok) return place;
  const { entry, stored, today: on } = place.value;
  const found = stored.facility.systems.find(({ key }) => key === system);
  const systemId = stored.systemIds.get(system);
  if (!(found && systemId)) return refused({ why: 'not-found', what: 'system' });
  return ok({ entry, on, stored, system: found, systemId });
}
