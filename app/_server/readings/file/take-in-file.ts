import 'server-only';
import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { proposeLayout } from '#core/readings/file/propose';
import { questionsOf, settled } from '#core/readings/file/questions';
import type { FileLayout } from '#core/readings/file/layout';
import { ok, type Result, refused } from '#core/result';
import { newId } from '#data/new-id';
import { keepImport, keepLayout } from '#data/readings/file-layouts';
import { type NamedSensor, sensorsAt } from '#data/readings/sensor-names';
import { appendRecords } from '#data/records/append-records';
import type { SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { takeInRequest } from '#shape/readings/file-requests';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';
import { fits, laidOver } from './layout-fits';
import { withIds } from './look-at-file';
import type { Outcome } from './outcome';
import { type LoggerFile, readLoggerFile } from './read-logger-file';
import { sensorFinder } from './sensor-finder';
import { storeRows } from './store-rows';

export const takeInFileShape = takeInRequest;

/** What came of a file. */
export interface TakenIn {
  site: { key: string; name: string; zone: string };
  name: string;
  layout: string;
  outcome: Outcome;
  sensors: { id: string; system: string; key: string; name: string; systemName: string }[];
}

/**
 * Takes the file of a logger in. Its readings are stored in parts, so what breaks off half-way is taken in again from the
 * start: what is stored already is a repeat then. The file itself is not kept.
 */
export async function takeInFile(
  who: Who,
  { site: key, file, draft, name }: z.output<typeof takeInFileShape>,
): Promise<Result<TakenIn, Refusal>> {
  const found = await siteFor(who, 'take-in-file', key);
  if (!found.ok) return found;
  const site = found.value;
  const read = await readLoggerFile(file.bytes, draft);
  if (!read.ok) return read;
  const sensors = await sensorsAt(site.id);
  const layout = layoutOf(draft, read.value, sensors);
  if (!layout.ok) return layout;
  const sha256 = new Uint8Array(createHash('sha256').update(file.bytes).digest());
  const outcome = await keep(who, site, {
    file: { name: file.name, sha256 },
    read: read.value,
    layout: layout.value,
    sensors,
    name,
  });
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    name: file.name,
    layout: name,
    outcome,
    sensors: sensors.filter(({ id }) => outcome.sensors.some((one) => one.sensor === id)),
  });
}

function layoutOf(
  said: z.output<typeof takeInFileShape>['draft'],
  { structure, facts, encoding }: LoggerFile,
  sensors: readonly NamedSensor[],
): Result<FileLayout, Refusal> {
  if (!fits(said, structure))
    return refused({
      why: 'invalid',
      faults: [{ path: 'file', message: 'its columns are others than those the layout speaks of: look at it again' }],
    });
  const { quantityOf, idOf } = sensorFinder(sensors);
  const draft = laidOver(withIds(said, idOf), proposeLayout(structure, facts, encoding, sensors));
  const open = questionsOf(draft, facts, quantityOf);
  if (open.length > 0)
    return refused({ why: 'invalid', faults: open.map(({ field, says }) => ({ path: field, message: says })) });
  return ok(settled(draft, facts));
}

interface Taken {
  file: { name: string; sha256: Uint8Array<ArrayBuffer> };
  read: LoggerFile;
  layout: FileLayout;
  sensors: readonly NamedSensor[];
  /** By which the layout is remembered. */
  name: string;
}

async function keep(who: Who, site: SiteEntry, { file, read, layout, sensors, name }: Taken): Promise<Outcome> {
  const at = now();
  const layoutId = await keepLayout(site.id, { name, layout }, who.id, at);
  const id = newId();
  const outcome = await storeRows(read, layout, sensors, { siteId: site.id, cameBy: id, receivedAt: at });
  await inTransaction(async (tx) => {
    const kept = { id, layoutId, fileName: file.name, sha256: file.sha256, at, by: who.id, outcome };
    await keepImport(tx, site.id, kept);
    const { stored, repeats, conflicts, refused: notTaken } = outcome;
    const counts = { stored, repeats, conflicts, refused: notTaken };
    const sha = Buffer.from(file.sha256).toString('hex');
    const body = { by: who.id, import: id, file: file.name, sha256: sha, ...counts };
    await appendRecords(tx, site.id, [{ kind: 'file-taken-in', body }], at);
  });
  return outcome;
}
