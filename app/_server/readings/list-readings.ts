import 'server-only';
import { z } from 'zod';
import type { SeriesQuantity } from '#core/readings/figures';
import { isStale } from '#core/readings/age';
import { isLate } from '#core/readings/late';
import reasons from '#core/readings/reasons.json';
import type { Origin, Quality } from '#core/readings/reading';
import { ok, type Result } from '#core/result';
import { livingDerived } from '#data/readings/derived-series';
import { sensorsAt } from '#data/readings/sensor-names';
import { type Latest, latestOf } from '#data/readings/series';
import { now } from '../clock';
import { describedSeries } from './described-series';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** The newest reading of a sensor. */
export interface NewestReading {
  /** UTC, ISO. */
  at: string;
  /** s since then; below 0 when the clock of the source is ahead. */
  ageS: number;
  /** Too old to say how things stand. */
  isStale: boolean;
  /** In the facility file's unit. */
  value: number;
  quality: Quality;
  /** Why it is not good, in words. */
  why: string | null;
  origin: Origin;
  /** s it was on its way, of one that came late by itself; null otherwise. */
  lateS: number | null;
}

/** One sensor of a site and what it read last. */
export interface SensorLine {
  key: string;
  name: string;
  quantity: SeriesQuantity;
  /** Whether it follows from others by a law. */
  isDerived: boolean;
  newest: NewestReading | null;
}

/** What the sensors of a site read last, system by system. */
export interface SiteReadings {
  site: { key: string; name: string; zone: string };
  systems: { key: string; name: string; sensors: SensorLine[] }[];
  mayTakeIn: boolean;
  maySetSources: boolean;
}

export const listReadingsShape = z.object({ site: z.string() });

/** What every sensor of a site read last. */
export async function listReadings(
  who: Who,
  { site: key }: z.output<typeof listReadingsShape>,
): Promise<Result<SiteReadings, Refusal>> {
  const found = await siteFor(who, 'see', key);
  if (!found.ok) return found;
  const { id, name, zone } = found.value;
  const [sensors, latest, derived] = await Promise.all([sensorsAt(id), latestOf(id), derivedOf(id)]);
  const nowMs = now().getTime();
  const systems = new Map<string, SiteReadings['systems'][number]>();
  for (const sensor of sensors) {
    const system = systems.get(sensor.system) ?? { key: sensor.system, name: sensor.systemName, sensors: [] };
    systems.set(sensor.system, system);
    system.sensors.push(lineOf({ ...sensor, isDerived: false }, latest.get(sensor.id), nowMs));
  }
  for (const { system, ...series } of derived)
    systems.get(system)?.sensors.push(lineOf(series, latest.get(series.id), nowMs));
  return ok({
    site: { key, name, zone },
    systems: [...systems.values()],
    mayTakeIn: may(who, 'take-in-file', key),
    maySetSources: may(who, 'reading-sources', key),
  });
}

/** The derived series of a site that are kept, as they are described. */
async function derivedOf(siteId: string): Promise<(Omit<SensorLine, 'newest'> & { id: string; system: string })[]> {
  const kept = await livingDerived(siteId);
  const [first] = kept;
  const described = first ? await describedSeries(siteId, first.revision) : null;
  return kept.flatMap(({ id, system, systemId, key }) => {
    const found = described?.derived.find((one) => one.systemId === systemId && one.series.key === key);
    return found
      ? [{ id, system, key, name: found.series.name, quantity: found.series.quantity, isDerived: true }]
      : [];
  });
}

function lineOf(
  { key, name, quantity, isDerived }: Omit<SensorLine, 'newest'>,
  newest: Latest | undefined,
  nowMs: number,
): SensorLine {
  if (!newest) return { key, name, quantity, isDerived, newest: null };
  const { atMs, value, quality, reason, origin, receivedAtMs } = newest;
  const isHeldUp = origin === 'device' && !isDerived && isLate(atMs, receivedAtMs);
  const lateS = isHeldUp ? (receivedAtMs - atMs) / 1000 : null;
  const at = new Date(atMs).toISOString();
  const stands = { at, ageS: (nowMs - atMs) / 1000, isStale: isStale(origin, nowMs - atMs) };
  return { key, name, quantity, isDerived, newest: { ...stands, value, quality, why: whyNot(reason), origin, lateS } };
}

/** Why a reading is not good, in words; its word alone where there are none. */
export function whyNot(reason: string | null | undefined): string | null {
  if (reason === null || reason === undefined) return null;
  return Object.hasOwn(reasons, reason) ? reasons[reason as keyof typeof reasons] : reason;
}
