import { readingSaid } from '#core/readings/figures';
import type { Check } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import type { Custom } from '#core/units/shown';
import { inUnits, symbolOf } from '../units/figures';

/** What was seen on a line, in a few words and the person's units. */
export function valueSaid(check: Check, value: EntryValue, units: Custom): string {
  switch (value.kind) {
    case 'number':
      return check.kind === 'number' ? readingSaid(check.quantity, units, value.value) : String(value.value);
    case 'yes-no':
      return value.asUsual ? 'as usual' : 'not as usual';
    case 'head-count':
      return value.count === null ? 'all seen, as usual' : `${value.count} counted`;
    case 'used':
      return `${litresSaid(units, value.litres)} used`;
    case 'test':
      return value.result === 'worked' ? 'tested: it worked' : 'tested: it failed';
  }
}

/** What is used between two rounds is little: it is told to a tenth. */
function litresSaid(units: Custom, litres: number): string {
  return `${Number(inUnits(units, 'volume', litres).toFixed(1))} ${symbolOf(units, 'volume')}`;
}

/** Why a line is other than usual, where a word is not enough. */
export function qualitySaid(value: EntryValue | null): string {
  if (value?.kind !== 'number' || value.quality === 'good') return '';
  return value.quality === 'bad' ? 'cannot be right' : 'doubtful';
}
