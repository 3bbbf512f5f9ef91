import 'server-only';
import type { MeterFigure } from '#core/incidents/incident';
import { judge } from '#core/readings/judge';
import { sensorsNamed } from '#data/incidents/sensors';
import { storeReadingsIn } from '#data/readings/store-readings';
import type { Fault } from '../gate/refusal';
import type { Held } from './change-incident';

/**
 * Keeps what a meter showed as readings by hand of the sensors it was read for. A figure for which no sensor is described
 * stays in the entry alone.
 *
 * @param entry   id of the entry they come by
 * @param atMs    when they were read
 * @returns       what is wrong; null when they are kept
 */
export async function keepFigures(
  { tx, site, at }: Pick<Held, 'tx' | 'site' | 'at'>,
  entry: string,
  atMs: number,
  figures: readonly MeterFigure[],
): Promise<Fault | null> {
  const wanted = figures.flatMap(({ sensor }) => (sensor === undefined ? [] : [sensor]));
  const sensors = await sensorsNamed(tx, site.id, wanted);
  const readings = [];
  for (const { sensor, quantity, value } of figures) {
    if (sensor === undefined) continue;
    if (sensors.get(sensor)?.quantity !== quantity)
      return { path: `figure.${quantity}.${sensor}`, message: 'is of no such sensor' };
    readings.push({
      sensorId: sensor,
      at: new Date(atMs),
      value,
      origin: 'hand' as const,
      ...judge(quantity, value, { value }),
    });
  }
  await storeReadingsIn(tx, site.id, readings, { cameBy: entry, receivedAt: at, correct: true });
  return null;
}
