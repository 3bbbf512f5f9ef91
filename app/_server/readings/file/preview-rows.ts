import 'server-only';
import type { FileLayout, FileRow } from '#core/readings/file/layout';
import { rowTurner } from '#core/readings/file/turn-row';
import type { Quality } from '#core/readings/reading';
import type { NamedSensor } from '#data/readings/sensor-names';
import { now } from '../../clock';
import { timeIn } from '../../local-day';
import { latestTaken } from './latest-taken';
import { measuredBy } from './sensor-finder';

/** One row as it would be stored. */
export interface PreviewRow {
  line: number;
  /** Why none of it would be; null when it would. */
  fault: string | null;
  /** UTC, ISO, and as the clocks of the site show it; null when the row has no time. */
  at: string | null;
  there: string | null;
  values: {
    sensor: string;
    raw: string;
    value: number;
    quality: Quality;
    reason: string | null;
    flag: string | null;
  }[];
  /** Why a value would not be. */
  faults: string[];
}

/**
 * Rows as they would be stored by a layout.
 *
 * @param zone   of the site
 */
export function previewRows(
  rows: readonly FileRow[],
  layout: FileLayout,
  sensors: readonly NamedSensor[],
  zone: string,
): PreviewRow[] {
  const turn = rowTurner(layout, measuredBy(sensors), latestTaken(now()));
  return rows.map((row) => {
    const turned = turn(row);
    if ('says' in turned)
      return { line: turned.line, fault: turned.says, at: null, there: null, values: [], faults: [] };
    const at = new Date(turned.moment.atMs);
    return {
      line: turned.line,
      fault: null,
      at: at.toISOString(),
      there: timeIn(zone, at),
      values: turned.values.map(({ sensor, raw, value, quality, reason = null, flag = null }) => ({
        sensor,
        raw,
        value,
        quality,
        reason,
        flag,
      })),
      faults: turned.faults.map(({ says }) => says),
    };
  });
}
