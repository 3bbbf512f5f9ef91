import 'server-only';
import type { FileLayout } from '#core/readings/file/layout';
import { loneZeros } from '#core/readings/file/lone-zeros';
import { followOrder } from '#core/readings/file/order-rows';
import { type RowFault, type RowValue, rowTurner, type TurnedRow } from '#core/readings/file/turn-row';
import { keptFrom } from '#data/readings/retire';
import { type NewReading, type Stored, storeReadings } from '#data/readings/store-readings';
import type { NamedSensor } from '#data/readings/sensor-names';
import { latestTaken } from './latest-taken';
import { emptyOutcome, type Outcome, TOLD } from './outcome';
import { type LoggerFile, rowsBelowHead } from './read-logger-file';
import { measuredBy } from './sensor-finder';

/** Readings stored in one transaction. */
const BATCH = 5000;

const RETIRED = 'lies in a month whose readings were retired';

/** A value with the row it came from. */
interface Placed {
  row: TurnedRow;
  value: RowValue;
}

/**
 * Stores the rows of a file, some thousand readings at a time.
 *
 * @param into   where, as what they came by, and when
 * @returns      what came of them
 */
export async function storeRows(
  { text, structure }: Pick<LoggerFile, 'text' | 'structure'>,
  layout: FileLayout,
  sensors: readonly NamedSensor[],
  into: { siteId: string; cameBy: string; receivedAt: Date },
): Promise<Outcome> {
  const quantityOf = measuredBy(sensors);
  const oldestMs = (await keptFrom())?.getTime() ?? -Infinity;
  const turn = rowTurner(layout, quantityOf, latestTaken(into.receivedAt));
  const { notes, follow } = followOrder();
  const zeros = loneZeros(quantityOf);
  const outcome = emptyOutcome(notes);
  let batch: Placed[] = [];
  const take = async (rows: TurnedRow[]) => {
    for (const row of rows) for (const value of row.values) batch.push({ row, value });
    if (batch.length >= BATCH) await flush();
  };
  const flush = async () => {
    const readings = batch.map(readingOf);
    count(outcome, batch, await storeReadings(into.siteId, readings, into));
    batch = [];
  };
  for await (const row of rowsBelowHead(text, structure)) {
    const turned = turn(row);
    if ('says' in turned) refuse(outcome, [turned]);
    else if (turned.moment.atMs < oldestMs) refuse(outcome, [{ line: turned.line, place: null, says: RETIRED }]);
    else {
      follow(turned);
      outcome.rows += 1;
      outcome.missing += turned.missing;
      refuse(outcome, turned.faults);
      await take(zeros.push(turned));
    }
  }
  await take(zeros.end());
  if (batch.length > 0) await flush();
  return outcome;
}

function readingOf({ row, value: { sensor, value, quality, reason, flag } }: Placed): NewReading {
  return {
    sensorId: sensor,
    at: new Date(row.moment.atMs),
    value,
    quality,
    ...(reason === undefined ? {} : { reason }),
    ...(flag === undefined ? {} : { flag: flag.slice(0, 200) }),
    origin: 'file',
  };
}

function refuse(outcome: Outcome, faults: readonly RowFault[]): void {
  outcome.refused += faults.length;
  outcome.firstRefused.push(...faults.slice(0, TOLD - outcome.firstRefused.length));
}

function count(outcome: Outcome, batch: readonly Placed[], became: readonly Stored[]): void {
  for (const [i, { row, value }] of batch.entries()) {
    const own = sensorOf(outcome, value.sensor);
    const at = new Date(row.moment.atMs).toISOString();
    if (outcome.from === null || at < outcome.from) outcome.from = at;
    if (outcome.to === null || at > outcome.to) outcome.to = at;
    if (value.quality === 'suspect') own.suspect += 1;
    if (value.quality === 'bad') own.bad += 1;
    const said = became[i] === 'stored' ? 'stored' : became[i] === 'conflict' ? 'conflicts' : 'repeats';
    outcome[said] += 1;
    own[said] += 1;
    if (said === 'conflicts' && outcome.firstConflicts.length < TOLD)
      outcome.firstConflicts.push({ line: row.line, sensor: value.sensor, at, value: value.value });
  }
}

function sensorOf(outcome: Outcome, sensor: string): Outcome['sensors'][number] {
  const known = outcome.sensors.find((one) => one.sensor === sensor);
  if (known) return known;
  const own = { sensor, stored: 0, repeats: 0, conflicts: 0, suspect: 0, bad: 0 };
  outcome.sensors.push(own);
  return own;
}
