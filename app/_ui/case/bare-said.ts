import { hourWords } from '#core/review/words';
import { bareStretches, type CoverPoint } from './cover-points';

/** Stretches of the week that are named; the chart shows the rest. */
const NAMED = 4;

/** The hours with nothing to spare, in words. */
export function bareSaid(points: CoverPoint[]): string {
  const stretches = bareStretches(points);
  const hours = stretches.reduce((sum, [, length]) => sum + length, 0);
  if (hours === 0) return 'There is time to spare at every hour of the week.';
  if (hours === points.length) return 'There is nothing to spare at any hour of the week.';
  const longest = [...stretches].sort((a, b) => b[1] - a[1]).slice(0, NAMED);
  const named = longest
    .map(([from, length]) => `${hourWords(from)} to ${hourWords((from + length) % points.length)}`)
    .join('; ');
  return `At ${hours} of 168 hours there is nothing to spare (hatched): ${named}${stretches.length > NAMED ? '; and others' : ''}.`;
}
