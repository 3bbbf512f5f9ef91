import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { listBrokers } from '#data/brokers/list-brokers';
import { gatewaysOf } from '#data/readings/gateways';
import { aliasesOf, sensorsAt, unknownNames } from '#data/readings/sensor-names';
import { listSources } from '#data/readings/sources';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import { env } from '../env';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { type BrokerSaid, brokerSaid } from './broker-said';

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
  /** What is said of the connection where it is a broker; null for one that sends with a token. */
  broker: BrokerSaid | null;
  /** Whether it is a broker, also one that was ended. */
  isBroker: boolean;
}

/** Who may send readings of a site, and what their names for its sensors mean. */
export interface SourcesPage {
  site: { key: string; name: string; zone: string };
  sources: SourceEntry[];
  gateways: { key: string; name: string }[];
  /** Where a source with a token sends to. */
  address: string;
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
  const [sources, gateways, sensors, aliases, unknown, brokers] = await Promise.all([
    listSources(siteId),
    gatewaysOf(siteId),
    sensorsAt(siteId),
    aliasesOf(siteId),
    unknownNames(siteId),
    listBrokers(siteId),
  ]);
  const at = now();
  const names = await accountNames(sources.map(({ createdBy }) => createdBy));
  return ok({
    site: { key, name, zone },
    address: new URL('/api/readings', env().HOLDFAST_ADDRESS ?? 'http://localhost:3200').href,
    sources: sources.map(({ gatewayId, createdBy, ...source }) => ({
      id: source.id,
      name: source.name,
      gateway: gateways.find(({ id }) => id === gatewayId)?.name ?? null,
      by: names.get(createdBy) ?? createdBy,
      createdAt: source.createdAt.toISOString(),
      endedAt: source.endedAt?.toISOString() ?? null,
      usedAt: source.usedAt?.toISOString() ?? null,
      isBroker: source.isBroker,
      broker: brokerSaid(
        brokers.find(({ sourceId }) => sourceId === source.id),
        at,
      ),
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
