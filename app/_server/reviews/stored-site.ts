import 'server-only';
import { NOTHING_MEASURED, type PeopleFacts, withMeasured } from '#core/alarms/measured';
import type { Facility } from '#core/facility/facility';
import { withAway } from '#core/rota/away';
import { shiftsInForce } from '#core/rota/in-force';
import { type Missed, withMissedTests } from '#core/plans/missed';
import { findMeasured } from '#data/calls/measured';
import { loadFacility } from '#data/facility/load-facility';
import { findMissedSheets } from '#data/rounds/missed-sheets';
import type { SiteEntry } from '#data/sites';
import { now } from '../clock';
import { awayUsually } from '../rota/away-people';
import { inputHash } from './input-hash';

/** A site as stored, with what its reviews depend on. */
export interface StoredSite {
  facility: Facility;
  /** The same as reviews see it: with what was measured of its people, the shifts in force, when its people are at other sites, and tests that were missed. It is never written back. */
  reviewed: Facility;
  /** What was measured of its people. */
  facts: PeopleFacts;
  systemIds: ReadonlyMap<string, string>;
  /** Input hash of each system by key, for the day last asked for. */
  hashes: ReadonlyMap<string, string>;
}

interface Kept extends StoredSite {
  revision: number;
  on: string;
  /** When its people were measured, ms since 1970; null: never. */
  measuredMs: number | null;
  /** Sheets that were missed, as text. */
  missedText: string;
  /** When its people are at other sites, as text. */
  awayText: string;
}

const NOTHING_MISSED: ReadonlyMap<string, Missed> = new Map();

/** Sheets of a site that were missed; none is asked for where it is known that it keeps no sheet. */
async function missedTests(id: string, zone: string, known: Facility | null): Promise<ReadonlyMap<string, Missed>> {
  if (known && !known.sheets) return NOTHING_MISSED;
  return await findMissedSheets(id, zone, now());
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
export async function storedSite(
  { id, zone, revision, measuredAt }: SiteEntry,
  on: string,
): Promise<StoredSite | null> {
  const known = kept.get(id);
  const measuredMs = measuredAt?.getTime() ?? null;
  const missed = await missedTests(id, zone, known?.revision === revision ? known.facility : null);
  const missedText = JSON.stringify([...missed]);
  const loaded = known?.revision === revision ? known : await loadFacility(id);
  if (!loaded) return null;
  const { facility, systemIds } = loaded;
  const away = await awayUsually(id, facility, on);
  const awayText = JSON.stringify([...away]);
  const texts = known?.missedText === missedText && known.awayText === awayText;
  const isSame = known?.on === on && known.measuredMs === measuredMs && texts;
  if (known?.revision === revision && isSame) return known;
  const facts = measuredMs === null ? NOTHING_MEASURED : ((await findMeasured(id)) ?? NOTHING_MEASURED);
  const reviewed = withMissedTests(withMeasured(withAway(shiftsInForce(facility, on), away), facts), missed);
  const hashes = new Map(reviewed.systems.map((system) => [system.key, inputHash(reviewed, system, on)]));
  const fresh: Kept = {
    ...{ facility, reviewed, facts, systemIds, hashes },
    ...{ revision: loaded.revision, on, measuredMs, missedText, awayText },
  };
  kept.delete(id);
  kept.set(id, fresh);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return fresh;
}
