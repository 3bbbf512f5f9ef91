import type { OpenInput } from './result';

/** Where a figure that a review went by comes from: `default` for one that nobody gave. */
export function originSaid({ origin, source, value }: OpenInput): string {
  if (value === null) return 'unknown';
  if (origin !== undefined) return origin;
  // A review that was kept before origins were told names those without a source by them.
  return source === 'entered' || source === 'measured' ? source : 'default';
}

/** Who says so; empty where that says no more than the origin. */
export function sourceSaid(input: OpenInput): string {
  return input.source === originSaid(input) ? '' : input.source;
}

/** Which end of its range is the bad one, for which harm. */
export function badSaid({ bad }: OpenInput): string {
  if (!bad) return '';
  const { warm, cold } = bad;
  if (warm === 'value' && cold === 'value') return 'neither: the value is taken';
  if (warm === cold) return warm === 'high' ? 'the high end, for any harm' : 'the low end, for any harm';
  return [
    ...(warm === 'value' ? [] : [`${warm} for warmth and want of oxygen`]),
    ...(cold === 'value' ? [] : [`${cold} for cold and salt`]),
  ].join(', ');
}

/** What its range alone would change, in words; empty where it was not asked or changes nothing. */
export function changesSaid({ changes }: OpenInput): string {
  if (changes.length === 0) return '';
  return `${changes.length} ${changes.length === 1 ? 'verdict' : 'verdicts'}`;
}
