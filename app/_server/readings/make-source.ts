import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { sensorsAt } from '#data/readings/sensor-names';
import { makeSource } from '#data/readings/sources';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { newSource } from '#shape/readings/source-requests';
import { now } from '../clock';
import { env } from '../env';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { gatewayNamed } from './gateway-named';

export const makeSourceShape = newSource;

/** What is shown once, when a source was made. */
export interface MadeSource {
  name: string;
  token: string;
  /** Where it sends to. */
  address: string;
  /** A sensor of the site as an example; null when there is none. */
  example: string | null;
}

/** Lets another source send readings of a site. Its token is shown once and kept nowhere. */
export async function makeReadingSource(
  who: Who,
  { site: key, name, gateway }: z.output<typeof makeSourceShape>,
): Promise<Result<MadeSource, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const named = await gatewayNamed(siteId, gateway);
  if (!named.ok) return named;
  const gatewayId = named.value;
  const at = now();
  const token = await inTransaction(async (tx) => {
    const made = await makeSource(tx, siteId, { name, gatewayId }, who.id, at);
    const body = { by: who.id, source: made.id, ...(gatewayId === null ? {} : { gateway: gatewayId }) };
    await appendRecords(tx, siteId, [{ kind: 'source-made', body }], at);
    return made.token;
  });
  const sensors = await sensorsAt(siteId);
  const example = sensors.find(({ quantity }) => quantity === 'temperature') ?? sensors[0];
  return ok({
    name,
    token,
    address: new URL('/api/readings', env().HOLDFAST_ADDRESS ?? 'http://localhost:3200').href,
    example: example ? `${example.system}/${example.key}` : null,
  });
}
