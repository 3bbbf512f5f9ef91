import { lastingSaid } from '../states/state-view';
import { clockFormat } from '../words/clock-format';

/** A stretch of time on the clocks of a place, with how long it lasts: "Saturday 28 Nov, 22:00 to Sunday 29 Nov, 06:00 (8 h)". */
export function spanSaid({ from, to }: { from: number; to: number }, zone: string): string {
  const shown = (options: Intl.DateTimeFormatOptions) => clockFormat('en-GB', { ...options, timeZone: zone });
  const day = shown({ weekday: 'long', day: 'numeric', month: 'short' });
  const time = shown({ hour: '2-digit', minute: '2-digit' });
  const [first, last] = [day.format(from), day.format(to)];
  const end = first === last ? time.format(to) : `${last}, ${time.format(to)}`;
  return `${first}, ${time.format(from)} to ${end} (${lastingSaid(Math.round((to - from) / 60_000))})`;
}
