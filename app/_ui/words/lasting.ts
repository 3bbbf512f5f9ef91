import { span } from '#core/review/words';

/** A span of time in words, its number and unit on one line. */
export function lasting(seconds: number): string {
  return span(seconds).replace(' ', '\u00a0');
}

/** The same, where it may never come. */
export function lastingOrNever(seconds: number | null | undefined): string {
  return seconds === null || seconds === undefined ? 'never' : lasting(seconds);
}

/** How long a limit must hold: what people set by hand is said in whole numbers. */
export function lastingFor(minutes: number): string {
  return lasting(minutes * 60).replace('.0\u00a0', '\u00a0');
}
