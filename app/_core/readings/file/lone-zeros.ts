import type { SensorQuantity } from '../../facility/system';
import type { RowValue, TurnedRow } from './turn-row';

/** Quantities that do not drop to exactly 0 and come back from one reading to the next; common practice, no source. */
const NEVER_LONE: ReadonlySet<SensorQuantity> = new Set([
  'oxygen',
  'oxygen-saturation',
  'ph',
  'salinity',
  'conductivity',
  'alkalinity',
]);
/** Zeros one after another that may still be a probe that was lifted out; more may be the water. Common practice, no source. */
const LONE = 3;
/** Rows held back, in which cells may be empty. */
const HELD = 4 * LONE;

interface Stretch {
  hadOther: boolean;
  zeros: RowValue[];
}

/**
 * Marks zeros between neighbours that are none: up to three one after another, whose probe was out of the water for a moment.
 * Longer stretches stay as they are, for a tank can be without oxygen.
 *
 * @param quantityOf   what a sensor measures
 * @returns            takes rows in the order of the file, which may be either way, and gives them on some rows later
 */
export function loneZeros(quantityOf: (sensor: string) => SensorQuantity): {
  push: (row: TurnedRow) => TurnedRow[];
  end: () => TurnedRow[];
} {
  const stretches = new Map<string, Stretch>();
  const held: TurnedRow[] = [];
  const push = (row: TurnedRow) => {
    held.push(row);
    for (const value of row.values) if (NEVER_LONE.has(quantityOf(value.sensor))) follow(stretches, value);
    return held.length > HELD ? held.splice(0, 1) : [];
  };
  return { push, end: () => held.splice(0) };
}

function follow(stretches: Map<string, Stretch>, value: RowValue): void {
  const stretch = stretches.get(value.sensor) ?? { hadOther: false, zeros: [] };
  stretches.set(value.sensor, stretch);
  if (value.value === 0) {
    stretch.zeros.push(value);
    return;
  }
  if (stretch.hadOther && stretch.zeros.length <= LONE) for (const zero of stretch.zeros) doubt(zero);
  stretch.zeros = [];
  stretch.hadOther = true;
}

function doubt(value: RowValue): void {
  if (value.quality !== 'good') return;
  value.quality = 'suspect';
  value.reason = 'probe-out';
}
