import 'server-only';
import { NOTHING_MEASURED, type PeopleFacts, withMeasured } from '#core/alarms/measured';
import type { Facility } from '#core/facility/facility';
import { type LastCalibration, withCalibrations } from '#core/rounds/calibrated';
import { withAway } from '#core/rota/away';
import { shiftsInForce } from '#core/rota/in-force';
import { isSafeguardLine, type Missed, withMissedTests } from '#core/plans/missed';
import { findMeasured } from '#data/calls/measured';
import { loadFacility } from '#data/facility/load-facility';
import { findCalibrations } from '#data/rounds/calibrations';
import { findMissedSheets } from '#data/rounds/missed-sheets';
import type { SiteEntry } from '#data/sites';
import { now } from '../clock';
import { awayUsually } from '../rota/away-people';
import { inputHash } from './input-hash';

/** A site as stored, with what its reviews depend on. */
export interface StoredSite {
  facility: Facility;
  /**
   * The same as reviews see it: with what was measured of its people, the shifts in force, when its people are at other sites,
   * tests that were missed and calibrations that were made on rounds. It is never written back.
   */
  reviewed: Facility;
  /** A change of the site as reviews would see it. */
  asReviewed: (facility: Facility) => Facility;
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
  /** What rounds and sheets say, as text. */
  walkedText: string;
  /** When its people are at other sites, as text. */
  awayText: string;
}

/** What rounds and sheets say of a site that its description does not. */
interface Walked {
  /** Sheets that were missed, by key. */
  missed: ReadonlyMap<string, Missed>;
  /** By the key of the line. */
  calibrations: ReadonlyMap<string, LastCalibration>;
}

const NOTHING_WALKED: Walked = { missed: new Map(), calibrations: new Map() };

/** Nothing is asked for where a site keeps no sheet: tests are missed and instruments calibrated on those alone. */
async function walkedOf(id: string, { site, sheets }: Facility): Promise<Walked> {
  if (!sheets) return NOTHING_WALKED;
  const testing = sheets.filter(({ lines }) => lines.some(({ key }) => isSafeguardLine(key))).map(({ key }) => key);
  const [missed, calibrations] = await Promise.all([
    findMissedSheets(id, site.zone, now(), testing),
    findCalibrations(id, site.zone),
  ]);
  return { missed, calibrations };
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
export async function storedSite({ id, revision, measuredAt }: SiteEntry, on: string): Promise<StoredSite | null> {
  const known = kept.get(id);
  const measuredMs = measuredAt?.getTime() ?? null;
  const loaded = known?.revision === revision ? known : await loadFacility(id);
  if (!loaded) return null;
  const { facility, systemIds } = loaded;
  const { missed, calibrations } = await walkedOf(id, facility);
  const walkedText = JSON.stringify([[...missed], [...calibrations]]);
  const away = await awayUsually(id, facility, on);
  const awayText = JSON.stringify([...away]);
  const isAsSaid = known?.walkedText === walkedText && known.awayText === awayText;
  if (known?.revision === revision && known.on === on && known.measuredMs === measuredMs && isAsSaid) return known;
  const facts = measuredMs === null ? NOTHING_MEASURED : ((await findMeasured(id)) ?? NOTHING_MEASURED);
  const asReviewed = (one: Facility) =>
    withCalibrations(
      withMissedTests(withMeasured(withAway(shiftsInForce(one, on), away), facts), missed),
      calibrations,
    );
  const reviewed = asReviewed(facility);
  const hashes = new Map(reviewed.systems.map((system) => [system.key, inputHash(reviewed, system, on)]));
  const fresh: Kept = {
    ...{ facility, reviewed, asReviewed, facts, systemIds, hashes },
    ...{ revision: loaded.revision, on, measuredMs, walkedText, awayText },
  };
  kept.delete(id);
  kept.set(id, fresh);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return fresh;
}
