import 'server-only';
import { createHash } from 'node:crypto';
import type { Around, Condition } from '#core/alarms/condition';
import { conditionOf } from '#core/alarms/condition-of';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { daySecondIn } from '#core/time/day-second';
import { isDerivedKey } from '#core/readings/derived/series';
import { type Defined, loadDefined } from '#data/alarms/defined';
import { canonicalText } from '#data/canonical';
import type { Transaction } from '#data/transaction';
import type { KeptDefinition } from '#shape/alarms/kept-definition';

/** An alarm that may call: what is needed to call for it. */
export interface CallableAlarm {
  id: string;
  systemId: string;
  definition: Pick<AlarmDefinition, 'answeredBy' | 'escalateAfterMin' | 'latched'>;
  /** What stands with each time it is raised: the definition as it is, and the sensor it is held to, if it is one. */
  kept: KeptDefinition;
}

/** An alarm as it is judged. */
export interface DefinedAlarm extends CallableAlarm {
  system: System;
  definition: AlarmDefinition;
  /** Null when there is nothing to hold it to. */
  condition: Condition | null;
  /** Fingerprint of the condition: another one is another alarm to whoever waits for it. */
  print: string;
}

/** What is defined at a site. */
export interface DefinedSite {
  facility: Facility;
  revision: number;
  alarms: ReadonlyMap<string, DefinedAlarm>;
  /** `system/key` of sensors and derived series by id. */
  sensorNames: ReadonlyMap<string, string>;
  /** Seconds since local midnight at an instant. */
  daySecond: Around['daySecond'];
  /** Whether nothing is missing: a derived series that an alarm is held to may still have to be made. */
  isWhole: boolean;
}

/** Sites kept in memory. */
const MOST = 200;
const kept = new Map<string, DefinedSite>();

/** The alarms of a site, read once for each revision. @returns null when the site is gone */
export async function definedAlarms(tx: Transaction, siteId: string, revision: number): Promise<DefinedSite | null> {
  const known = kept.get(siteId);
  if (known?.revision === revision && known.isWhole) return known;
  const loaded = await loadDefined(tx, siteId);
  if (!loaded) return null;
  const { facility, sensorNames } = loaded;
  const alarms = new Map(
    facility.systems.flatMap((system) => system.alarms.flatMap((alarm) => definedOf(loaded, system, alarm))),
  );
  const daySecond = daySecondIn(facility.site.zone);
  const isWhole = loaded.settledBy === loaded.revision || !facility.systems.some(watchesDerived);
  const fresh = { facility, revision: loaded.revision, alarms, sensorNames, daySecond, isWhole };
  kept.delete(siteId);
  kept.set(siteId, fresh);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return fresh;
}

function watchesDerived({ alarms }: System): boolean {
  return alarms.some(({ on }) => Object.values(on).some((word) => typeof word === 'string' && isDerivedKey(word)));
}

function definedOf(loaded: Defined, system: System, definition: AlarmDefinition): [string, DefinedAlarm][] {
  const id = loaded.alarmIds.get(`${system.key}/${definition.key}`);
  const systemId = loaded.systemIds.get(system.key);
  if (id === undefined || systemId === undefined) return [];
  const condition = conditionOf(loaded.facility, system, definition);
  const print = createHash('sha256').update(canonicalText(condition)).digest('hex');
  const kept = { ...definition, answeredBy: answeredBy(loaded, definition), ...watchedBy(loaded, system, condition) };
  return [[id, { id, systemId, system, definition, condition, print, kept }]];
}

/** Keys of people are made of their names: with what is never changed again they stand by their ids, as in the record. */
function answeredBy({ personIds }: Defined, { answeredBy: by }: AlarmDefinition): AlarmDefinition['answeredBy'] {
  return typeof by === 'string' ? by : by.map((key) => personIds.get(key) ?? key);
}

/** The sensor an alarm is held to, and the limits; those of what is worked out stand in its definition. */
function watchedBy(
  { sensorNames }: Defined,
  system: System,
  condition: Condition | null,
): Pick<KeptDefinition, 'sensorId' | 'quantity' | 'limits'> {
  if (condition?.kind !== 'limits' && condition?.kind !== 'still') return {};
  const quantity = system.sensors.find(({ key }) => `${system.key}/${key}` === condition.sensor)?.quantity;
  const sensorId = [...sensorNames].find(([, name]) => name === condition.sensor)?.[0];
  if (condition.kind === 'still' || (condition.of && condition.of.kind !== 'watts')) return { sensorId, quantity };
  return { sensorId, quantity, limits: { above: condition.above, below: condition.below } };
}
