import { clockFormat } from './clock-format';

const SHOWN = { dateStyle: 'medium', timeStyle: 'medium' } as const;

/**
 * An instant as a log has it: "25 Nov 2026, 18:30:00".
 *
 * @param at     UTC, ISO
 * @param zone   IANA zone it is told in
 */
export function instantSaid(at: string, zone: string): string {
  return clockFormat('en-GB', { ...SHOWN, timeZone: zone }).format(new Date(at));
}
