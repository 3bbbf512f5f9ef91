import type { SensorQuantity } from '../../facility/system';
import type { FileFacts } from './facts';
import type { ColumnDraft, ColumnLayout, FileLayout, LayoutDraft } from './layout';
import { isScale } from './propose';
import { fileUnits } from './unit-said';

/** Something that the file does not say and somebody has to. */
export interface Question {
  /** Field of the layout: `zone`, `columns.3.unit`. */
  field: string;
  says: string;
}

/** Quantities of which 0 is nothing out of the ordinary. */
const ZERO_IS_PLAIN: ReadonlySet<SensorQuantity> = new Set([
  'temperature',
  'level',
  'flow',
  'leak',
  'watts',
  'pressure',
]);

/** Whether what 0 means in a column has to be asked. */
export function asksZero(quantity: SensorQuantity, zeros: number): boolean {
  return zeros > 0 && !ZERO_IS_PLAIN.has(quantity);
}

/**
 * What has to be said before a file can be read by a layout.
 *
 * @param quantityOf   what a sensor measures; undefined when there is no such sensor
 */
export function questionsOf(
  draft: LayoutDraft,
  facts: FileFacts,
  quantityOf: (sensor: string) => SensorQuantity | undefined,
): Question[] {
  const asked: Question[] = [];
  const ask = (field: string, says: string) => asked.push({ field, says });
  if (draft.time.as === 'text' && draft.time.order === null && facts.orders.length !== 1)
    ask('time.order', 'Say which part of the date is the day: every date in the file can be read either way.');
  if (draft.zone === null) ask('zone', 'Say in which zone its clock ran: the file does not.');
  if (draft.midnight === null) ask('midnight', 'Say what 00:00 means: it stands in many rows.');
  const taken = draft.columns.filter(({ sensor }) => sensor !== null);
  if (taken.length === 0) ask('columns', 'Say of one column at least which sensor it is.');
  for (const column of taken) asked.push(...columnQuestions(column, draft, facts, quantityOf));
  const scales = taken.some(({ flag }) => flag !== null && isScaleAt(facts, flag));
  if (scales && draft.goodFrom === null) ask('goodFrom', 'Say from which number on a value is good.');
  return asked;
}

function columnQuestions(
  { place, sensor, unit, zero }: ColumnDraft,
  { columns }: LayoutDraft,
  facts: FileFacts,
  quantityOf: (sensor: string) => SensorQuantity | undefined,
): Question[] {
  const quantity = quantityOf(sensor ?? '');
  const field = (name: string) => `columns.${place}.${name}`;
  if (!quantity) return [{ field: field('sensor'), says: 'This sensor is no longer there: choose another.' }];
  const asked: Question[] = [];
  if (columns.some((other) => other.place < place && other.sensor === sensor))
    asked.push({ field: field('sensor'), says: 'This sensor is another column already.' });
  if (unit === null || !fileUnits(quantity).some((one) => one.unit === unit))
    asked.push({ field: field('unit'), says: 'Say in which unit this column is written.' });
  if (zero === null && asksZero(quantity, facts.columns[place]?.zeros ?? 0))
    asked.push({ field: field('zero'), says: 'Say what 0 means in this column.' });
  return asked;
}

function isScaleAt(facts: FileFacts, place: number): boolean {
  const column = facts.columns[place];
  return column !== undefined && isScale(column);
}

/** A layout of which everything is known. Call it when `questionsOf` asks nothing. */
export function settled({ zone, midnight, columns, goodFrom, ...rest }: LayoutDraft, facts: FileFacts): FileLayout {
  const taken = columns.flatMap(({ place, sensor, unit, zero, flag }): ColumnLayout[] =>
    sensor === null || unit === null
      ? []
      : [{ place, sensor, unit, zero: zero ?? 'real', ...(flag === null ? {} : { flag }) }],
  );
  const { time } = rest;
  const order = time.as === 'text' ? (time.order ?? facts.orders[0] ?? null) : null;
  return {
    ...rest,
    time: time.as === 'text' ? { ...time, order } : time,
    zone: zone ?? 'UTC',
    midnight: midnight ?? 'real',
    columns: taken,
    ...(goodFrom === null ? {} : { goodFrom }),
  };
}
