import 'server-only';
import type { z } from 'zod';
import { readingSymbol } from '#core/readings/figures';
import { ok, type Result, refused } from '#core/result';
import { plainReadings } from '#data/readings/chart';
import { writeCsv } from '#shape/csv/write-csv';
import { sensorSpan } from '#shape/readings/sensor-place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { timeIn } from '../local-day';
import { findSensor } from './find-sensor';
import { spanOf } from './span-of';

export const exportReadingsShape = sensorSpan;

/** Readings of one file: sixty days, one every 20 s. */
const MOST = 260_000;
const HEAD = [
  'at (UTC)',
  'at the site',
  'value',
  'unit',
  'quality',
  'reason',
  'flag',
  'origin',
  'received (UTC)',
  'late',
];

/** Every reading of a sensor over a span of time as CSV, in the facility file's unit, oldest first. */
export async function exportReadings(
  who: Who,
  { span, until, ...place }: z.output<typeof exportReadingsShape>,
): Promise<Result<{ name: string; text: string }, Refusal>> {
  const found = await findSensor(who, place);
  if (!found.ok) return found;
  const { site, sensor, id } = found.value;
  const { from, to, first, last } = spanOf(site.zone, span, until, now());
  const readings = id === null ? [] : await plainReadings(site.id, id, { from, to, most: MOST + 1 });
  if (readings.length > MOST)
    return refused({
      why: 'invalid',
      faults: [{ path: 'span', message: `must be shorter: it holds more than ${MOST} readings` }],
    });
  const unit = readingSymbol(sensor.quantity, 'metric');
  const rows = readings.map(({ atMs, value, quality, reason, flag, origin, receivedMs, isLate }) => {
    const at = new Date(atMs);
    return [
      at,
      timeIn(site.zone, at),
      value,
      unit,
      quality,
      reason,
      flag,
      origin,
      new Date(receivedMs),
      isLate ? 'late' : null,
    ];
  });
  return ok({
    name: `${place.system}-${place.sensor.replaceAll(':', '-')}-${first}-${last}.csv`,
    text: writeCsv(HEAD, rows),
  });
}
