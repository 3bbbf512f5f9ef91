import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { removeAlias, sensorsAt, setAlias } from '#data/readings/sensor-names';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { namedSensor, sensorName } from '#shape/readings/source-requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const nameSensorShape = namedSensor;

/** Says which sensor a name is of that sources use. What came under it before was refused and has to be sent again. */
export async function nameSensor(
  who: Who,
  { site: key, name, sensor }: z.output<typeof nameSensorShape>,
): Promise<Result<{ name: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const sensors = await sensorsAt(siteId);
  if (!sensors.some(({ id }) => id === sensor))
    return refused({ why: 'invalid', faults: [{ path: 'sensor', message: 'is no sensor of this site' }] });
  if (sensors.some(({ system, key: own }) => `${system}/${own}` === name))
    return refused({ why: 'invalid', faults: [{ path: 'name', message: 'is understood as it is' }] });
  const at = now();
  await inTransaction(async (tx) => {
    await setAlias(tx, siteId, name, sensor);
    await appendRecords(tx, siteId, [{ kind: 'sensor-named', body: { by: who.id, sensor, name } }], at);
  });
  return ok({ name });
}

export const unnameSensorShape = sensorName;

/** Takes a name away: whatever comes under it is refused from then on. */
export async function unnameSensor(
  who: Who,
  { site: key, name }: z.output<typeof unnameSensorShape>,
): Promise<Result<{ name: string }, Refusal>> {
  const found = await siteFor(who, 'reading-sources', key);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    const sensor = await removeAlias(tx, siteId, name);
    if (sensor === null) return refused({ why: 'not-found', what: 'name' });
    await appendRecords(tx, siteId, [{ kind: 'sensor-unnamed', body: { by: who.id, sensor, name } }], at);
    return ok({ name });
  });
}
