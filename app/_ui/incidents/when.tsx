import { clockFormat } from '../words/clock-format';

const SHOWN = { dateStyle: 'medium', timeStyle: 'short' } as const;

/** A moment as a log has it: "25 Nov 2026, 07:14". @param zone IANA zone it is told in */
export function whenSaid(atMs: number, zone: string): string {
  return clockFormat('en-GB', { ...SHOWN, timeZone: zone }).format(new Date(atMs));
}

/** A moment at a site. */
export function When({ atMs, zone }: { atMs: number; zone: string }) {
  return <time dateTime={new Date(atMs).toISOString()}>{whenSaid(atMs, zone)}</time>;
}

/** A moment as a field for day and time takes it: "2026-11-25T07:14". */
export function localMinute(atMs: number, zone: string): string {
  const shown = clockFormat('sv-SE', { dateStyle: 'short', timeStyle: 'short', timeZone: zone });
  return shown.format(new Date(atMs)).replace(' ', 'T');
}
