import 'server-only';
import type { System } from '#core/facility/system';
import { ok, type Result, refused } from '#core/result';
import { findSite, type SiteEntry } from '#data/sites';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { type StoredSite, storedSite } from './stored-site';

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
  const entry = may(who, 'see', site) ? await findSite(site) : null;
  if (!entry) return refused({ why: 'not-found', what: 'site' });
  const on = dayIn(entry.zone, now());
  const stored = await storedSite(entry, on);
  const found = stored?.facility.systems.find(({ key }) => key === system);
  const systemId = stored?.systemIds.get(system);
  if (!(stored && found && systemId)) return refused({ why: 'not-found', what: 'system' });
  return ok({ entry, on, stored, system: found, systemId });
}
