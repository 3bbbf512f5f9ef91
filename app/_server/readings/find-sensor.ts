import 'server-only';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { Sensor, System } from '#core/facility/system';
import { ok, type Result, refused } from '#core/result';
import { type NamedSensor, sensorsAt } from '#data/readings/sensor-names';
import type { SiteEntry } from '#data/sites';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

/** A sensor as it is described, and the alarms that watch what it reads. */
export interface FoundSensor {
  site: SiteEntry;
  system: System;
  systemId: string;
  sensor: Sensor;
  named: NamedSensor;
  alarms: AlarmDefinition[];
}

/** Finds a sensor for somebody who wants to see its readings. */
export async function findSensor(
  who: Who,
  asked: { site: string; system: string; sensor: string },
): Promise<Result<FoundSensor, Refusal>> {
  const found = await findStoredSite(who, 'see', asked.site);
  if (!found.ok) return found;
  const { entry: site, stored } = found.value;
  const system = stored.facility.systems.find(({ key }) => key === asked.system);
  if (!system) return refused({ why: 'not-found', what: 'system' });
  const sensor = system.sensors.find(({ key }) => key === asked.sensor);
  const named = (await sensorsAt(site.id)).find((one) => one.system === asked.system && one.key === asked.sensor);
  if (!sensor || !named) return refused({ why: 'not-found', what: 'sensor' });
  const alarms = system.alarms.filter(
    ({ on }) => (on.kind === 'sensor' || on.kind === 'silent-sensor') && on.sensor === sensor.key,
  );
  return ok({ site, system, systemId: named.systemId, sensor, named, alarms });
}
