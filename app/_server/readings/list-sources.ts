import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { gatewaysOf } from '#data/readings/gateways';
import { aliasesOf, sensorsAt, unknownNames } from '#data/readings/sensor-names';
import { listSources } from '#data/readings/sources';
import { sitePlace } from '#shape/reviews/case-place';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** A source as it is shown. Instants are UTC, ISO. */
export interface SourceEntry {
  id: string;
  name: string;
  /** What the gateway it speaks for is called, if it was said. */
  gateway: string | null;
  by: string;
  createdAt: string;
  endedAt: string | null;
  usedAt: string | null;
}

/** Who may send readings of a site, and what their names for its sensors mean. */
export interface SourcesPage {
  site: { key: string; name: string; zone: string };
  sources: SourceEntry[];
  gateways: { key: string; name: string }[];
  /** Living sensors; `path` is what is always understood. */
  sensors: { id: string; path: string; name: string; systemName: string; quantity: string }[];
  aliases: { name: string; sensor: string }[];
  unknown: { name: string; seenAt: string; unit: string | null; value: number | null }[];
}

export const listSourcesShape = sitePlace;

/** The sources of readings of a site, and names they used that no sensor has. */
export async function listReadingSources(
  who: Who,
  { site: key }: z.output<typeof listSourcesShape>,
): Promise<Result<SourcesPage, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId, name, zone } = found.value;
  const [sources, gateways, sensors, aliases, unknown] = await Promise.all([
    listSources(siteId),
    gatewaysOf(siteId),
    sensorsAt(siteId),
    aliasesOf(siteId),
    unknownNames(siteId),
  ]);
  const names = await accountNames(sources.map(({ createdBy }) => createdBy));
  return ok({
    site: { key, name, zone },
    sources: sources.map(({ gatewayId, createdBy, ...source }) => ({
      id: source.id,
      name: source.name,
      gateway: gateways.find(({ id }) => id === gatewayId)?.name ?? null,
      by: names.get(createdBy) ?? createdBy,
      createdAt: source.createdAt.toISOString(),
      endedAt: source.endedAt?.toISOString() ?? null,
      usedAt: source.usedAt?.toISOString() ?? null,
    })),
    gateways: gateways
      .filter(({ isLiving }) => isLiving)
      .map(({ key: gateway, name: called }) => ({ key: gateway, name: called })),
    sensors: sensors.map(({ id, system, key: sensor, name: called, systemName, quantity }) => ({
      id,
      path: `${system}/${sensor}`,
      name: called,
      systemName,
      quantity,
    })),
    aliases: aliases.map(({ name: alias, sensorId }) => ({ name: alias, sensor: sensorId })),
    unknown: unknown.map(({ seenAt, ...one }) => ({ ...one, seenAt: seenAt.toISOString() })),
  });
}
