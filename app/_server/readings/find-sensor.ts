import 'server-only';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { type DerivedSeries, isDerivedKey } from '#core/readings/derived/series';
import { derivedSeriesOf } from '#core/readings/derived/series-of';
import type { SeriesQuantity } from '#core/readings/figures';
import { ok, type Result, refused } from '#core/result';
import { findDerived } from '#data/readings/derived-series';
import { sensorsAt } from '#data/readings/sensor-names';
import type { SiteEntry } from '#data/sites';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

/** A sensor or a derived series as it is described, and the alarms that watch what it reads. */
export interface FoundSensor {
  site: SiteEntry;
  system: System;
  systemId: string;
  sensor: { key: string; name: string; quantity: SeriesQuantity };
  /** Id under which its readings stand; null for a series of which nothing was worked out yet. */
  id: string | null;
  /** How it follows from others; null for a sensor. */
  derived: DerivedSeries | null;
  alarms: AlarmDefinition[];
}

/** Finds a sensor or a derived series for somebody who wants to see its readings. */
export async function findSensor(
  who: Who,
  asked: { site: string; system: string; sensor: string },
): Promise<Result<FoundSensor, Refusal>> {
  const found = await findStoredSite(who, 'see', asked.site);
  if (!found.ok) return found;
  const { entry: site, stored } = found.value;
  const system = stored.facility.systems.find(({ key }) => key === asked.system);
  if (!system) return refused({ why: 'not-found', what: 'system' });
  const there = await seriesOf(site.id, stored.facility, system, asked.sensor);
  if (!there) return refused({ why: 'not-found', what: 'sensor' });
  const alarms = system.alarms.filter(
    ({ on }) => (on.kind === 'sensor' || on.kind === 'silent-sensor') && on.sensor === asked.sensor,
  );
  return ok({ site, system, ...there, alarms });
}

async function seriesOf(
  siteId: string,
  facility: Facility,
  system: System,
  key: string,
): Promise<Pick<FoundSensor, 'systemId' | 'sensor' | 'id' | 'derived'> | null> {
  const named = (await sensorsAt(siteId)).filter((one) => one.system === system.key);
  const systemId = named[0]?.systemId;
  if (systemId === undefined) return null;
  if (isDerivedKey(key)) {
    const derived = derivedSeriesOf(facility, system).find((one) => one.key === key);
    return derived ? { systemId, sensor: derived, id: await findDerived(siteId, systemId, key), derived } : null;
  }
  const sensor = system.sensors.find((one) => one.key === key);
  const id = named.find((one) => one.key === key)?.id;
  return sensor && id !== undefined ? { systemId, sensor, id, derived: null } : null;
}
