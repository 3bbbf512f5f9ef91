/** A number as a cell holds it. */
export interface CellNumber {
  value: number;
  /** Written with "<": the number is a limit that the value lies below. */
  isBelow: boolean;
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
/** Digits in threes, parted by whatever does not part the decimals. */
const THREES = {
  '.': /^[+-]?\d{1,3}([ ,'’\u00a0\u202f]\d{3})+(\.\d+)?$/,
  ',': /^[+-]?\d{1,3}([ .'’\u00a0\u202f]\d{3})+(,\d+)?$/,
};
const PARTING = { '.': /[ ,'’\u00a0\u202f]/g, ',': /[ .'’\u00a0\u202f]/g };

/** Characters of the longest number: what is longer is none, and not looked through. */
const LONGEST = 80;

/**
 * Reads a number as loggers write it: with plus signs, with a comma for the decimals, with digits in threes.
 *
 * @param cell      without blanks around it
 * @param decimal   what stands before the decimals
 * @returns         null for anything that is not one number, and for one beyond the range of a double
 */
export function readNumber(cell: string, decimal: '.' | ','): CellNumber | null {
  if (cell.length > LONGEST) return null;
  const isBelow = cell.startsWith('<');
  const bare = (isBelow ? cell.slice(1).trimStart() : cell).replace('\u2212', '-');
  const joined = THREES[decimal].test(bare) ? bare.replace(PARTING[decimal], '') : bare;
  // With a comma for the decimals a point parts nothing but threes.
  if (decimal === ',' && joined.includes('.')) return null;
  const written = decimal === ',' ? joined.replace(',', '.') : joined;
  if (!PLAIN.test(written)) return null;
  const value = Number(written);
  return Number.isFinite(value) ? { value, isBelow } : null;
}
