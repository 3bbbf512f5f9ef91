import 'server-only';
import { now } from './clock';

/** Facts that go with a line of the log: plain values, and never what a person typed. */
export type Facts = Record<string, string | number | boolean | null>;

/**
 * One line of JSON on stdout: something happened that whoever looks after the machine may want to know.
 *
 * @param event   what happened, in a few words that stay the same
 * @param facts   what goes with it
 */
export function logInfo(event: string, facts: Facts = {}): void {
  console.log(JSON.stringify({ at: now().toISOString(), event, ...facts }));
}

/**
 * One line of JSON on stderr: something broke.
 *
 * @param event   what broke, in a few words that stay the same
 * @param error   what was thrown
 * @param facts   what goes with it
 */
export function logError(event: string, error: unknown, facts: Facts = {}): void {
  const reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
  console.error(JSON.stringify({ at: now().toISOString(), event, reason, ...facts }));
}
