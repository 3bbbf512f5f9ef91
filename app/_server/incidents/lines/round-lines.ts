import 'server-only';
import type { SensorQuantity } from '#core/facility/system';
import { SENSOR_QUANTITIES } from '#core/facility/system';
import type { Doer, TimelineLine } from '#core/incidents/timeline';
import type { NearRoundEntry } from '#data/incidents/near-rounds';

/** What was recorded on rounds; entries that were corrected are left to their corrections. */
export function roundLines(
  entries: readonly NearRoundEntry[],
  doerOf: (id: string | null) => Doer | null,
): TimelineLine[] {
  return entries
    .filter(({ isCorrected }) => !isCorrected)
    .map((entry) => {
      const { id, at, by, round, what, notDone, note, photos } = entry;
      const figures = figuresOf(entry);
      const value =
        notDone === null ? (figures.length > 0 ? '' : valueSaid(entry.value)) : `not done, because ${notDone}`;
      const said = `${round}, ${what ?? 'a line of the sheet'}${value === '' ? '' : `: ${value}`}${note ? `. ${note}` : ''}`;
      return { id, atMs: at.getTime(), topic: 'round', what: said, who: doerOf(by), source: 'round', figures, photos };
    });
}

/** The number of a reading that was taken by hand, in the unit of its quantity. */
function figuresOf({ quantity, value }: NearRoundEntry): { quantity: SensorQuantity; value: number }[] {
  const known = SENSOR_QUANTITIES.find((one) => one === quantity);
  const number = numberIn(value);
  return known === undefined || number === undefined ? [] : [{ quantity: known, value: number }];
}

function numberIn(value: unknown): number | undefined {
  if (typeof value === 'number') return value;
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.values(value).find((one): one is number => typeof one === 'number');
}

/** What was entered, plainly. */
function valueSaid(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'as usual' : 'not as usual';
  if (typeof value !== 'object') return String(value);
  return Object.entries(value)
    .filter(([, part]) => typeof part !== 'object')
    .map(([name, part]) => (typeof part === 'boolean' ? `${name}: ${part ? 'yes' : 'no'}` : String(part)))
    .join(', ');
}
