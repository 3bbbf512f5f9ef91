import { numbersOf } from './random';

/**
 * The id of something of an instant: a UUIDv7 (RFC 9562 section 5.7) whose random bits come from words that tell it from all
 * else, so that the same rows have the same ids.
 *
 * @param atMs   ms since 1970
 */
export function idFor(atMs: number, ...words: readonly string[]): string {
  const next = numbersOf('id', ...words);
  const time = Math.floor(atMs).toString(16).padStart(12, '0');
  const [a, variant, b, c, d] = [
    bits(next, 3),
    (8 + Math.floor(next() * 4)).toString(16),
    bits(next, 3),
    bits(next, 6),
    bits(next, 6),
  ];
  return `${time.slice(0, 8)}-${time.slice(8)}-7${a}-${variant}${b}-${c}${d}`;
}

function bits(next: () => number, digits: number): string {
  return Math.floor(next() * 16 ** digits)
    .toString(16)
    .padStart(digits, '0');
}
