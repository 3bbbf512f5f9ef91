import type { Check, NearestLimits, Range } from './check';
import type { EntryValue } from './entry';

/** Beyond which limit of its alarms a number lies; null when within, or there is none. */
export function beyondLimit(line: { alarm?: NearestLimits }, value: number): 'above' | 'below' | null {
  const { above, below } = line.alarm ?? {};
  if (above !== undefined && value > above) return 'above';
  return below !== undefined && value < below ? 'below' : null;
}

/** On which side of what is usual a number lies; null when within, or nobody said what is usual. */
export function beyondUsual(usual: Range | undefined, value: number): 'above' | 'below' | null {
  if (usual?.to !== undefined && value > usual.to) return 'above';
  return usual?.from !== undefined && value < usual.from ? 'below' : null;
}

/**
 * Whether what was seen is other than usual: somebody has to look at it again.
 * @param rate   what is used a day on the line up to then (see `rate.ts`); null where none can be told
 */
export function isAbnormal(
  check: Check,
  value: EntryValue,
  rate: { perDay: number; usual?: Range } | null = null,
): boolean {
  switch (value.kind) {
    case 'number':
      return check.kind === 'number' && isBeside(check, value);
    case 'figure':
      return check.kind === 'figure' && beyondUsual(check.usual, value.value) !== null;
    case 'yes-no':
      return !value.asUsual;
    case 'choice':
      return check.kind === 'choice' && !(check.options.find(({ key }) => key === value.option)?.usual ?? false);
    case 'text':
    case 'photo':
      return false;
    case 'head-count':
      return check.kind === 'head-count' && value.count !== null && value.count !== check.expected;
    case 'used':
    case 'doses':
      return check.kind === value.kind && rate !== null && beyondUsual(rate.usual, rate.perDay) !== null;
    case 'water-test':
      return check.kind === 'water-test' && check.asks.some((asked) => isBeside(asked, value.figures[asked.quantity]));
    case 'test':
      return value.result === 'failed';
    case 'calibration':
      return !value.fit;
  }
}

function isBeside(
  line: { alarm?: NearestLimits; usual?: Range },
  measured: { value: number; quality: string } | undefined,
): boolean {
  if (!measured) return false;
  const { value, quality } = measured;
  return quality !== 'good' || beyondLimit(line, value) !== null || beyondUsual(line.usual, value) !== null;
}
