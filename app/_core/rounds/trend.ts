import looks from '../readings/figures.json';
import type { Check } from './check';
import type { EntryValue } from './entry';

/** Which way the numbers of a line go. */
type Trend = 'rising' | 'falling' | 'steady';

/** Numbers that a trend is told from, at least. Common practice, no source. */
const LEAST = 3;

/**
 * Which way the numbers of a line went on the rounds before: each further than the one before it, by more than the last digit that
 * is shown; or all within that.
 *
 * @param seen   the latest first
 * @returns      null where there are too few, or they go up and down
 */
export function trendOf(check: Check, seen: readonly EntryValue[]): Trend | null {
  if (check.kind !== 'number') return null;
  const numbers = seen.flatMap((value) => (value.kind === 'number' ? [value.value] : []));
  if (numbers.length < LEAST) return null;
  const digit = lastDigit(check.quantity);
  if (Math.max(...numbers) - Math.min(...numbers) <= digit) return 'steady';
  const steps = numbers.slice(1).map((older, at) => (numbers[at] ?? older) - older);
  if (steps.every((step) => step >= digit)) return 'rising';
  return steps.every((step) => step <= -digit) ? 'falling' : null;
}

function lastDigit(quantity: string): number {
  const { decimals = 0 } = (looks as Record<string, { decimals?: number }>)[quantity] ?? {};
  return 10 ** -decimals;
}
