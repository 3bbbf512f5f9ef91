import { type Random, randomOf } from './random';

/**
 * A UUIDv7 (RFC 9562 section 5.7) of an instant whose random bits come from a seed: the same rows have the same ids.
 *
 * @param atMs   ms since 1970
 */
function seededId(atMs: number, random: Random): string {
  const time = Math.floor(atMs).toString(16).padStart(12, '0');
  const bits = (digits: number) =>
    Math.floor(random.next() * 16 ** digits)
      .toString(16)
      .padStart(digits, '0');
  const variant = (8 + Math.floor(random.next() * 4)).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${bits(3)}-${variant}${bits(3)}-${bits(6)}${bits(6)}`;
}

/** The id of something of an instant, by words that tell it from all else. */
export function idFor(atMs: number, ...words: readonly string[]): string {
  return seededId(atMs, randomOf('id', ...words));
}
