import type { DosesCheck, UsedCheck } from '#core/rounds/check';
import { beyondRate, type UsedRate } from '#core/rounds/rate';
import { rateSaid } from '#core/rounds/read/used';
import type { Custom } from '#core/units/shown';

type UsedLine = Pick<UsedCheck | DosesCheck, 'kind'>;

/** Rates before that are told. */
const TOLD = 4;

/** A rate with what it was before: "Of late 20 L a day, rising; before 8, 9, 9 L a day; above what is usual, 4 to 18 L a day". */
export function rateLine(check: UsedLine, rate: UsedRate, units: Custom): string {
  const before = rate.before.slice(0, TOLD).reverse();
  return [
    `Of late ${rateSaid(check, units, rate.perDay)}${rate.trend ? `, ${rate.trend}` : ''}`,
    before.length > 0
      ? `before ${rateSaid(
          check,
          units,
          before.map(({ perDay }) => perDay),
        )}`
      : null,
    usualSaid(check, rate, units),
  ]
    .filter((part) => part !== null)
    .join('; ');
}

/** What is usual, and on which side of it a rate lies; null where nothing tells. */
export function usualSaid(check: UsedLine, rate: UsedRate, units: Custom): string | null {
  const { from, to } = rate.usual ?? {};
  const said = (perDay: number) => rateSaid(check, units, perDay);
  const beyond = beyondRate(rate);
  const side = beyond === null ? 'usual' : `${beyond} what is usual,`;
  if (from !== undefined && to !== undefined) return `${side} ${rateSaid(check, units, [from, to], ' to ')}`;
  if (to !== undefined) return `${side} at most ${said(to)}`;
  return from === undefined ? null : `${side} at least ${said(from)}`;
}
