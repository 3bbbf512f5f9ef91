import { readingSaid } from '#core/readings/figures';
import { type Check, WATER_QUANTITIES, type WaterTestCheck } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import { impliedBy } from '#core/rounds/implied';
import type { Custom } from '#core/units/shown';
import { QUANTITY_WORDS } from '../readings/words';
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
    case 'figure':
      return check.kind === 'figure' ? `${value.value}\u00a0${check.unit}` : String(value.value);
    case 'choice':
      return optionSaid(check, value.option);
    case 'text':
      return value.text;
    case 'photo':
      return value.photos.length === 1 ? 'a photo' : `${value.photos.length} photos`;
    case 'doses':
      return `${value.doses} doses`;
    case 'water-test':
      return waterSaid(check, value.figures, units);
    case 'calibration':
      return value.fit ? 'calibrated: it may go on' : 'calibrated: it may not go on';
    case 'test':
      return value.result === 'worked' ? 'tested: it worked' : 'tested: it failed';
  }
}

function optionSaid(check: Check, option: string): string {
  const chosen = check.kind === 'choice' ? check.options.find(({ key }) => key === option) : undefined;
  return chosen?.name ?? option;
}

function waterSaid(
  check: Check,
  figures: Extract<EntryValue, { kind: 'water-test' }>['figures'],
  units: Custom,
): string {
  const measuredSaid = WATER_QUANTITIES.flatMap((quantity) => {
    const measured = figures[quantity];
    return measured ? [`${QUANTITY_WORDS[quantity]} ${readingSaid(quantity, units, measured.value)}`] : [];
  });
  return [...measuredSaid, ...(check.kind === 'water-test' ? impliedSaid(check, figures, units) : [])].join(', ');
}

/** What the figures of a water test imply, and what was taken as the system is kept. */
function impliedSaid(
  { given }: WaterTestCheck,
  figures: Extract<EntryValue, { kind: 'water-test' }>['figures'],
  units: Custom,
): string[] {
  const plain = Object.fromEntries(Object.entries(figures).map(([quantity, { value }]) => [quantity, value]));
  return impliedBy(plain, given).map(({ is, value, taken }) => {
    const as = taken.length > 0 ? ` (with the ${taken.join(' and ')} it is kept at)` : '';
    return `so ${QUANTITY_WORDS[is]} ${readingSaid(is, units, value)}${as}`;
  });
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
