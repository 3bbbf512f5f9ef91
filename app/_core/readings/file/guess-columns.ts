import type { SensorQuantity } from '../../facility/system';

/** Words by which loggers and laboratories name what a column holds; the first that fits counts. */
const NAMED: readonly (readonly [RegExp, SensorQuantity])[] = [
  [/temp|^o?tmp|^t$|^t \(|wasser_?t/i, 'temperature'],
  [/sat|o2 ?%|do ?%|(oxygen|sauerstoff).*%/i, 'oxygen-saturation'],
  [/dissolved ox|oxygen|sauerstoff|^do\b|\bdo conc|^o2|o2ppm/i, 'oxygen'],
  [/\bph\b|^ph/i, 'ph'],
  [/salin|^sal\b|^psal/i, 'salinity'],
  [/cond|leitf/i, 'conductivity'],
  [/redox|\borp\b|^eh$/i, 'redox'],
  [/nh4|nh3|ammon/i, 'ammonia'],
  [/no23|no3|nitrat/i, 'nitrate'],
  [/no2|nitrit/i, 'nitrite'],
  [/po4|phosph/i, 'phosphate'],
  [/alkal|kh\b/i, 'alkalinity'],
  [/turb|trüb/i, 'turbidity'],
  [/press?\b|pressure|druck/i, 'pressure'],
  [/flow|durchfluss/i, 'flow'],
  [/watt|power/i, 'watts'],
  [/level|stage|pegel|wasserstand/i, 'level'],
  [/leak/i, 'leak'],
];

/** What a column measures, by its name. @returns null when the name says nothing that is known */
export function quantityNamed(name: string): SensorQuantity | null {
  return NAMED.find(([words]) => words.test(name))?.[1] ?? null;
}

const OF_ALL = /^(f|flags?|q|qc|quality|status|qual)( ?\(.*\))?$/i;

/**
 * The column that says how good the values of another are, by the names: `F_PO4` beside `PO4`, or one flag for all.
 *
 * @param head    names of all columns
 * @param place   of the column that is flagged
 * @returns       place of the flags; null when there are none
 */
export function flagColumnOf(head: readonly string[], place: number): number | null {
  const name = (head[place] ?? '').toLowerCase();
  const own = head.findIndex((other, i) => i !== place && isFlagOf(other.toLowerCase(), name));
  if (own >= 0) return own;
  const all = head.findIndex((other, i) => i !== place && OF_ALL.test(other.trim()));
  return all < 0 ? null : all;
}

function isFlagOf(flag: string, name: string): boolean {
  if (name === '') return false;
  return [
    `f_${name}`,
    `${name}_f`,
    `${name}_flag`,
    `flag_${name}`,
    `${name} flag`,
    `qc_${name}`,
    `${name}_qc`,
  ].includes(flag);
}
